using System.Globalization;
using System.Text.Json;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Tests;

/// <summary>Figures are those of docs/checks/first-light.md, parts A and B.</summary>
public sealed class PlanTests
{
    [Fact]
    public void TextSaysTheRunInCrewWords()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("plan", "@job.json");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains(
            """
            Run 1: post 1 (end) to post 11 (end), 100' 0" along the ground
              bays       10, the largest 10' 0"
              rail       99' 9 1/8": 5 pieces, 4 sleeves; 53 ties, every 8 diamonds (22 3/8")
              wire       101' 9 1/8"; 53 rings, every 8 diamonds (22 3/8")
              fabric     99' 7 1/8" between the bars, 854 pickets
              post ties  6 on each line post: 1 down, then every 4, last one 2 1/2
              each end   bar 70", 6 bands: 1 down, then every 4, last one 2 1/2
            """.ReplaceLineEndings("\n"), ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TextListsEveryPostWithItsHole()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var lines = folder.Run("plan", "@job.json").Output.Split('\n').Select(Words).ToList();
        Assert.Contains("A1 0+00.00 0\" end 2.875-sch40 8' 8\" 9' 0\" 12 x 30 in 1.85 cu ft 4", lines);
        Assert.Contains("A2 0+10.00 10' 0\" line 2.375-sch40 8' 4\" 8' 6\" 10 x 30 in 1.29 cu ft 3", lines);
        Assert.Contains("A11 1+00.00 100' 0\" end 2.875-sch40 8' 8\" 9' 0\" 12 x 30 in 1.85 cu ft 4", lines);
    }

    [Fact]
    public void TextTakesOffNetAndPurchaseAndMarksWhatToVerify()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var lines = folder.Run("plan", "@job.json").Output.Split('\n').Select(Words).ToList();
        Assert.Contains(lines, l => l.Contains("concrete, 80-lb bag 15.28 cu ft 35 bags 26 by total volume", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.EndsWith("1.660-sch40 99' 9 1/8\" 5 sticks 226.5 lb verify", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("fabric spec fence 99' 7 1/8\" 2 rolls 390.9 lb 4 7/8\" left over", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutATopRailTheTextHasTwoWires()
    {
        using var folder = new CliFolder(Jobs.With("\"brace\": \"no\"", "\"brace\": \"no\", \"top\": \"wire\""));
        var text = folder.Run("plan", "@job.json").Output;
        Assert.Contains("  2 wires, each  101' 9 1/8\"; 53 rings, every 8 diamonds (22 3/8\")\n", text, StringComparison.Ordinal);
        Assert.Contains("top tension wire, no top rail, bottom tension wire, no braces", Words(text.ReplaceLineEndings(" ")), StringComparison.Ordinal);
    }

    [Fact]
    public void TextTellsGates()
    {
        using var folder = new CliFolder(Jobs.Yard);
        Assert.Contains(
            """
            Gate 2 (drive): double gate, post 20 to post 21
              opening  16' 0" face to face, near face at 1+80.00 (180' 0")
              centres  16' 2 7/8" apart, posts 2.875-sch40
              leaf     2 leaves of 7' 8 3/4"
            """.ReplaceLineEndings("\n"), folder.Run("plan", "@job.json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TextCarriesTheCautionsAndTheHash()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var text = Words(folder.Run("plan", "@job.json").Output.ReplaceLineEndings(" "));
        Assert.Contains("have every buried line located and marked before the first hole", text, StringComparison.Ordinal);
        Assert.Contains("stand clear of the line of pull", text, StringComparison.Ordinal);
        Assert.Contains("Local codes go first", text, StringComparison.Ordinal);
        Assert.Contains("for a licensed engineer", text, StringComparison.Ordinal);
        Assert.Contains($"Plan hash {PlanFile.Hash(PlanOf(Jobs.Line100))}", text, StringComparison.Ordinal);
    }

    /// <summary>12 % on 6-ft fabric: 72 x 0.12 = 8.64 in; / 1.40 = 6.17, so 6 columns, stepping over at sixths of 20 rows.</summary>
    [Fact]
    public void TextTellsTheBiasOnASlope()
    {
        using var folder = new CliFolder(Jobs.Slope12);
        var text = Words(folder.Run("plan", "@job.json").Output.ReplaceLineEndings(" "));
        Assert.Contains(
            "bias: 6 columns, step over 3 1/2, 6 1/2, 10, 13 1/2, 16 1/2 diamonds down, the bottom edge of a square end would pass the terminal by 8 5/8\" and is cut back", text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void WarningsStandInTheTextAndOnTheMessageStream()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("plan", "@job.json");
        Assert.Contains("warning: job.json, take-off line 12: fence fabric", ran.Error, StringComparison.Ordinal);
        Assert.Contains("fence fabric: the rolls end 4 7/8\" past the last terminal.", ran.Error, StringComparison.Ordinal);
        Assert.Contains("the rolls end 4 7/8\" past the last terminal", Words(ran.Output.ReplaceLineEndings(" ")), StringComparison.Ordinal);
    }

    [Fact]
    public void PlainTextHasNoColourAndKeepsItsWidth()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var ran = folder.Run("plan", "@job.json");
        Assert.DoesNotContain('\u001b', ran.Output + ran.Error);
        Assert.All(ran.Output.Split('\n'), l => Assert.InRange(l.Length, 0, Terminal.CliHost.PlainWidth));
        Assert.All(ran.Output.Split('\n'), l => Assert.Equal(l.TrimEnd(), l));
    }

    [Fact]
    public void MetricLengthsAreMetresAndMillimetres()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var text = folder.Run("plan", "@job.json", "--units", "metric").Output;
        Assert.Contains("Line main: 30.480 m level, 30.480 m along the ground, open", text, StringComparison.Ordinal);
        Assert.Contains("254 x 762 mm", text, StringComparison.Ordinal);
        Assert.DoesNotContain("cu ft", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AManyPostLineIsSummedUpUnlessAllIsAsked()
    {
        using var folder = new CliFolder(Jobs.Long);
        var brief = folder.Run("plan", "@job.json").Output;
        Assert.Contains("301 posts and 6 runs summed up; --all lists every one.", brief, StringComparison.Ordinal);
        Assert.DoesNotContain("Run 1:", brief, StringComparison.Ordinal);
        Assert.Contains("Run 6:", folder.Run("plan", "@job.json", "--all").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void CsvTakeoffReadsBackWithTheHandCount()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("plan", "@job.json", "--csv");
        var rows = CsvBack.Rows(ran.Output).ToDictionary(r => (r["part"], r["section"]));
        Assert.Equal("35", rows[("concrete-bag", "")]["purchase"]);
        Assert.Equal("26", rows[("concrete-bag", "")]["bags_by_total"]);
        Assert.Equal(15.2812, double.Parse(rows[("concrete-bag", "")]["net"], CultureInfo.InvariantCulture), 4);
        Assert.Equal("ft3", rows[("concrete-bag", "")]["net_unit"]);
        Assert.Equal("53", rows[("rail-tie", "1.660-sch40")]["net"]);
        Assert.Equal("102", rows[("post", "2.375-sch40")]["size_in"]);
        Assert.Equal("12", rows[("tension-band", "2.875-sch40")]["net"]);
        Assert.Equal("99.760417", rows[("rail", "1.660-sch40")]["net"]); // 1197.125 in / 12
    }

    [Fact]
    public void CsvPostsAndRunsReadBackWithTheHandCount()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var posts = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "posts").Output);
        Assert.Equal(["0", "10", "20", "30", "40", "50", "60", "70", "80", "90", "100"], posts.Select(p => p["station_ft"]));
        Assert.Equal("100", posts[1]["cut_length_in"]);
        Assert.Equal("12", posts[0]["hole_diameter_in"]);
        var run = Assert.Single(CsvBack.Rows(folder.Run("plan", "@job.json", "--csv=runs").Output));
        Assert.Equal(("10", "854", "854", "53"), (run["bays"], run["pickets_low"], run["pickets_high"], run["rings"]));
    }

    [Fact]
    public void CsvQuotesWhatNeedsQuotes()
    {
        using var folder = new CliFolder(Jobs.Line100.Replace("\"main\"", "\"a, \\\"b\\\"\"", StringComparison.Ordinal));
        var posts = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "posts").Output);
        Assert.All(posts, p => Assert.Equal("a, \"b\"", p["line"]));
    }

    /// <summary>Names come from other people's files; a coordinate below zero is no formula.</summary>
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@sum", "'@sum")]
    [InlineData("\\tx", "'\tx")]
    [InlineData("a=b", "a=b")]
    [InlineData("'a", "'a")]
    public void CsvTextThatCouldBeAFormulaGetsAnApostrophe(string id, string cell)
    {
        var job = Jobs.Line100.Replace("\"main\"", $"\"{id}\"", StringComparison.Ordinal).Replace("\"north\": 30.48", "\"north\": -30.48", StringComparison.Ordinal);
        using var folder = new CliFolder(job);
        var posts = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv", "posts").Output);
        Assert.All(posts, p => Assert.Equal(cell, p["line"]));
        Assert.Equal("-100", posts[^1]["north_ft"]);
    }

    [Fact]
    public void JsonIsThePlanFile()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var ran = folder.Run("plan", "@job.json", "--json");
        Assert.Equal(System.Text.Encoding.UTF8.GetString(PlanFile.Indented(PlanOf(Jobs.Yard))), ran.Output);
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal("yard-job", json.RootElement.GetProperty("job").GetString());
    }

    [Fact]
    public void NumbersDoNotFollowTheCulture()
    {
        using var folder = new CliFolder(Jobs.Slope12);
        string[][] commands =
        [
            ["plan", "@job.json"], ["plan", "@job.json", "--csv"], ["plan", "@job.json", "--csv", "posts"], ["plan", "@job.json", "--json"],
            ["why", "@job.json", "post/main/1/concrete"], ["catalog"],
        ];
        var before = commands.Select(c => folder.Run(c)).ToList();
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        var (was, wasDefault) = (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture);
        (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (comma, comma);
        try
        {
            Assert.Equal("1,5", $"{1.5}");
            Assert.Equal(before, commands.Select(c => folder.Run(c)));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.DefaultThreadCurrentCulture) = (was, wasDefault);
        }
    }

    [Fact]
    public void ARuleSetFromAFileIsPlannedBy()
    {
        using var folder = new CliFolder(Jobs.Line100);
        using var built = typeof(Rules).Assembly.GetManifestResourceStream("rules-base.json")!;
        var rules = new StreamReader(built).ReadToEnd();
        folder.Put("rules.json", rules.Replace("\"bay.max\", \"value\": 10,", "\"bay.max\", \"value\": 8,", StringComparison.Ordinal));
        var ran = folder.Run("plan", "@job.json", "--rules", "@rules.json");
        Assert.Contains("bays       13, the largest 7' 8 5/16\"", ran.Output, StringComparison.Ordinal); // 100 / 8 = 12.5; 100 / 13 = 7.6923 ft
    }

    [Fact]
    public void AnOutlineIsPlannedWithTheHeightAsked()
    {
        using var folder = new CliFolder().Put(
            "lot.geojson", """{ "type": "LineString", "coordinates": [[0, 0], [0, 100], [50, 100]] }""");
        var ran = folder.Run("plan", "@lot.geojson", "--crs", "local-ft", "--spec", "4ft");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains(": 150' 0\" level, 150' 0\" along the ground, open", ran.Output, StringComparison.Ordinal);
        Assert.Contains(
            "An outline names no fence: planned is 4' 0\" fabric, 2-in mesh, 9 gauge, top rail, bottom wire, no gates.", ran.Error,
            StringComparison.Ordinal);
    }

    /// <summary>The yard of docs/tape-book.md is part B of the hand counts: 29 bays and 23 line posts beside 8 terminals.</summary>
    [Fact]
    public void ATapeBookIsPlanned()
    {
        using var folder = new CliFolder().Put(
            "yard.tape",
            """
            job "Back yard"
            spec yard height 6' line-post 2.375-sch40 terminal-post 2.875-sch40 rail 1.660-sch40 brace no
            ten pickets 14"
            line yard
            leg 60'
            gate walk 4' from 20'
            R 90
            leg 90'
            R 90
            leg 60'
            gate double 16' from 30'
            R 90
            leg 90'
            close
            """);
        var ran = folder.Run("plan", "@yard.tape", "--csv", "posts");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Equal(8 + 23, CsvBack.Rows(ran.Output).Count);
    }

    [Fact]
    public void CancellingEndsWith130()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run(new CancellationToken(true), "plan", "@job.json");
        Assert.Equal((ExitCode.Cancelled, "", "cancelled\n"), (ran.Exit, ran.Output, ran.Error));
        Assert.Equal(130, (int)ran.Exit);
    }

    private static Engine.Plans.Plan PlanOf(string job) => JobPlanner.Plan(
        JobFile.Read(System.Text.Encoding.UTF8.GetBytes(job)).Job!, FenceCatalog.BuiltIn(), Rules.BuiltIn(), BuiltFacts.None);

    private static string Words(string line) => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
