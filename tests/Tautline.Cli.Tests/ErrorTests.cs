
namespace Tautline.Cli.Tests;

/// <summary>What goes wrong is told on the message stream, with its place, and nothing stands on the data stream.</summary>
public sealed class ErrorTests
{
    [Fact]
    public void AHeightNoFabricComesIn() => Refused(
        Jobs.With("1.8288", "1.8796"),
        """
        error: job.json, specs[0].height, line 3, column 40: No 2" 9-ga fabric is made 6' 2" high.
        hint: It comes in 36", 42", 48", 60", 72", 84", 96", 108", 120", 144".
        """);

    [Fact]
    public void AGateWiderThanItsRun() => Refused( // 24 ft of opening and, for leaves of 12 ft, 4-in posts
        Jobs.With("\"lines\":", """
            "gates": [{ "id": "g", "leg": "ab", "kind": "double", "nearFace": 0, "opening": 30.48 }], "lines":
            """).Replace("30.48 }]", "7.3152 }]", StringComparison.Ordinal).Replace("\"north\": 30.48", "\"north\": 6.096", StringComparison.Ordinal),
        """
        error: job.json, gates[0], line 5, column 13, line main at 0+00.00: The gate needs 24' 4" with its posts and the leg is 20' 0" long.
        hint: Choose a smaller opening or put the gate on a longer leg.
        """);

    [Fact]
    public void AGateThatStartsBeforeItsLeg() => Refused(
        Jobs.With("\"lines\":", """
            "gates": [{ "id": "g", "leg": "ab", "kind": "walk", "nearFace": -1.524, "opening": 1.2192 }], "lines":
            """),
        """
        error: job.json, gates[0], line 5, column 13, line main at -0+05.00: The gate starts -5' 0" along a leg that is 100' 0" long.
        hint: The near face lies between the start of the leg and its end, less the opening.
        """);

    [Fact]
    public void ALegWithoutLength() => Refused(
        Jobs.With("\"north\": 30.48", "\"north\": 0"),
        """
        error: job.json, lines[0].vertices[0], line 7, column 7: The leg is 0" long.
        hint: A leg is at least 6" and runs between two different points.
        """);

    [Fact]
    public void AnUnknownUnitInTheJob()
    {
        using var folder = new CliFolder(Jobs.With("\"name\"", "\"units\": \"furlongs\", \"name\""));
        var ran = folder.Run("plan", "@job.json");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: job.json, $.units (line 2, column ", ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("hint: See docs/job.schema.json for what belongs here.\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TextWhereANumberBelongs() => Refused(
        Jobs.With("1.8288", "\"6 ft\""),
        """
        error: job.json, line 3, column 40: A value does not fit: the text "6 ft" where a number of metres belongs.
        hint: See docs/job.schema.json for what belongs here.
        """);

    [Fact]
    public void AJobThatStopsHalfWay()
    {
        using var folder = new CliFolder(Jobs.Line100[..Jobs.Line100.IndexOf("\"calibrations\"", StringComparison.Ordinal)]);
        var ran = folder.Run("plan", "@job.json");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: job.json, line 4, column 3: The file stops being JSON: ", ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("\nhint: Mend it there, or take the last saved version of the job.\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ATapeBookWithANegativeLegAndAnUnknownUnit()
    {
        using var folder = new CliFolder().Put("walk.tape", "spec yard height 6' brace no\nline yard\nleg -60'\nleg 90 furlongs\n");
        var ran = folder.Run("plan", "@walk.tape");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: walk.tape, line 3, column 5: ", ran.Error, StringComparison.Ordinal);
        Assert.Contains("error: walk.tape, line 4, column 8: 'furlongs' is not a unit.\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AMissingFile()
    {
        using var folder = new CliFolder();
        var ran = folder.Run("plan", "@none.json");
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.Equal("error: none.json: There is no such file.\nhint: Check the name and the folder.\n", ran.Error);
    }

    [Fact]
    public void AFolderInsteadOfAFile()
    {
        using var folder = new CliFolder();
        Directory.CreateDirectory(folder.Of("jobs.json"));
        var ran = folder.Run("check", "@jobs.json");
        Assert.Equal("error: jobs.json: This is a folder, not a file.\nhint: Name one file in it.\n", ran.Error);
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
    }

    [Fact]
    public void AFileOf100MegabytesIsRefusedByItsLength()
    {
        using var folder = new CliFolder();
        using (var file = File.Create(folder.Of("big.json"))) file.SetLength(100L << 20);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var ran = folder.Run("plan", "@big.json");
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20L << 20);
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
        Assert.Equal(
            "error: big.json: The file is 100 MB; a job file is at most 64 MB.\n"
            + "hint: Check that this is a job file. Ground files are attached, not pasted into the job.\n", ran.Error);
    }

    [Fact]
    public void AKindOfFileNobodyKnows()
    {
        using var folder = new CliFolder().Put("fence.dwg", "");
        var ran = folder.Run("check", "@fence.dwg");
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
        Assert.Equal(
            "error: fence.dwg: A file ending in '.dwg' is not known.\n"
            + "hint: A job ends in .json, a tape book in .tape or .txt, an outline in .geojson.\n", ran.Error);
    }

    [Fact]
    public void ARuleSetThatIsNone()
    {
        using var folder = new CliFolder(Jobs.Line100).Put("rules.json", "{}");
        var ran = folder.Run("plan", "@job.json", "--rules", "@rules.json");
        Assert.Equal((ExitCode.Unreadable, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("error: rules.json: This is no rule set: ", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("error: --units cannot be 'furlongs': write us or metric.", "plan", "job.json", "--units", "furlongs")]
    [InlineData("error: --crs cannot be 'EPSG:x': write EPSG:2992, local-m, local-ft or local-ftus.", "plan", "a.geojson", "--crs", "EPSG:x")]
    [InlineData("error: --spec cannot be 'tall': write a height such as 6ft, 72in or 1.8288m.", "plan", "a.geojson", "--spec", "tall")]
    [InlineData("error: --csv cannot be 'job.json': write takeoff, posts, runs or quantities, and FILE before --csv.", "plan", "--csv", "job.json")]
    [InlineData("error: --by cannot be 'post': write line or run.", "plan", "job.json", "--by", "post")]
    [InlineData("error: --csv cannot be 'foo': write takeoff, posts, runs or quantities, and FILE before --csv.", "plan", "job.json", "--csv", "foo", "--by", "run")]
    [InlineData("error: --by has nothing to do with the table posts: write --csv quantities.", "plan", "job.json", "--csv", "posts", "--by", "run")]
    [InlineData("error: --json and --csv exclude each other.", "plan", "job.json", "--json", "--csv")]
    [InlineData("error: Name one FACT, or ask for all with --list.", "why", "job.json")]
    [InlineData("error: The catalogue has no part 'nails': write fabrics, sections, gate-posts, posts, parts, rules, rule-sets or rule-keys.", "catalog", "nails")]
    public void AWrongCommandLine(string message, params string[] args)
    {
        using var folder = new CliFolder();
        var ran = folder.Run(args);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Contains(message + "\n", ran.Error, StringComparison.Ordinal);
        Assert.Contains($"hint: 'tautline {args[0]} --help' shows what belongs here.", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnknownCommandNamesTheCommands()
    {
        using var folder = new CliFolder();
        var ran = folder.Run("plann", "job.json");
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Contains("error: Unrecognized command or argument 'plann'.\n", ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("hint: 'tautline --help' shows what belongs here. Commands: plan, why, check, compare, attach, hang, papers, card, field, mesh, profile, stakes, catalog, schema.\n", ran.Error, StringComparison.Ordinal);
    }

    private static void Refused(string job, string message)
    {
        using var folder = new CliFolder(job);
        var ran = folder.Run("plan", "@job.json");
        Assert.Equal(message.ReplaceLineEndings("\n") + "\n", ran.Error);
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
    }
}
