using System.Text.Json;

namespace Tautline.Cli.Tests;

/// <summary>Naming rule sets on the command line, and comparing two of them.</summary>
public sealed class RuleSetTests
{
    private const string County = """
        {
          "name": "county", "title": "Invented county", "extends": "caltrans",
          "sources": { "c": { "title": "Invented county standard", "edition": "3" } },
          "rules": [{ "key": "bay.max", "value": 8, "unit": "ft", "condition": "", "source": "c", "clause": "2.1", "confidence": "published" }]
        }
        """;

    private static string Caltrans => Jobs.With("\"name\"", "\"ruleSet\": \"caltrans\", \"name\"");

    /// <summary>Bands on the 100-ft line: 2 bars of 6 by the base set, of 8 by Caltrans (12 in: 3 diamonds).</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(16, "--rule-set", "caltrans")]
    [InlineData(16, "--rules", "@county.json")]
    public void ARuleSetIsNamedByFlag(int bands, params string[] flags) => Bands(Jobs.Line100, bands, flags);

    [Theory]
    [InlineData(16)]
    [InlineData(12, "--rule-set", "base")]
    public void ARuleSetIsNamedByTheJobAndAFlagGoesOverIt(int bands, params string[] flags) => Bands(Caltrans, bands, flags);

    private static void Bands(string job, int bands, string[] flags)
    {
        using var folder = new CliFolder(job).Put("county.json", County);
        var ran = folder.Run(["plan", "@job.json", "--json", .. flags]);
        Assert.Equal(ExitCode.Fine, ran.Exit);
        using var json = JsonDocument.Parse(ran.Output);
        var line = json.RootElement.GetProperty("takeoff").EnumerateArray().Single(t => t.GetProperty("part").GetString() == "tension-band");
        Assert.Equal(bands, line.GetProperty("purchase").GetInt32());
    }

    [Fact]
    public void ThePlanNamesTheSetOfEachLimitAndWhatToVerify()
    {
        using var folder = new CliFolder(Jobs.Line100).Put("county.json", County);
        var own = folder.Run("plan", "@job.json", "--rules", "@county.json").Output;
        Assert.Matches("bay.max +8 ft +10 ft +county", own);
        Assert.Matches("band.max +12 in +15 in +caltrans", own);
        Assert.Contains("bay.max: Invented county standard, 3 (published)", own, StringComparison.Ordinal);
        var faa = folder.Run("plan", "@job.json", "--rule-set", "faa").Output;
        Assert.Matches(@"gap.max +4 in +2 in +faa +verify", faa);
        Assert.DoesNotContain("Limits not of the base set", folder.Run("plan", "@job.json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhyNamesTheSet()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("why", "@job.json", "post/main/2/hole-depth", "--rule-set", "navy");
        Assert.Matches("hole.lineDepthMin +36 in", ran.Output);
        Assert.Contains("rule set navy", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ATapeBookNamesItsSet()
    {
        using var folder = new CliFolder().Put("line.tape", "rules caltrans\nspec fence height 6'\nline main\nleg 100'\n");
        Assert.Contains("caltrans: California DOT, chain link fence", folder.Run("plan", "@line.tape").Output, StringComparison.Ordinal);
        folder.Put("moon.tape", "rules moon\nspec fence height 6'\nline main\nleg 100'\n");
        var ran = folder.Run("plan", "@moon.tape");
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Contains("The rule set 'moon' is not known.", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoSetsAreComparedForReading()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("compare", "@job.json", "--rule-set", "base", "--rule-set", "caltrans");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.Matches("band.max +15 in +verify +12 in", ran.Output);
        Assert.Matches(@"wire.topBelow \* +not stated +2 in", ran.Output);
        Assert.Matches("bands +12 +16", ran.Output);
        Assert.Matches("rings +53 +71", ran.Output);
        Assert.Matches("the same: +posts 11, terminals 2", ran.Output);
        Assert.Matches("hog ring +53 +53 +71 +71", ran.Output);
    }

    /// <summary>One set is compared with the job's own, which comes first; a set from a file takes the place of one.</summary>
    [Theory]
    [InlineData("base", "navy", "--rule-set", "navy")]
    [InlineData("base", "county", "--rules", "@county.json")]
    [InlineData("county", "navy", "--rules", "@county.json", "--rule-set", "navy")]
    public void TwoSetsAreComparedAsJson(string a, string b, params string[] flags)
    {
        using var folder = new CliFolder(Jobs.Line100).Put("county.json", County);
        var ran = folder.Run(["compare", "@job.json", "--json", .. flags]);
        using var json = JsonDocument.Parse(ran.Output);
        Assert.Equal((a, b), (json.RootElement.GetProperty("a").GetString(), json.RootElement.GetProperty("b").GetString()));
        Assert.NotEmpty(json.RootElement.GetProperty("limits").EnumerateArray());
        Assert.Equal(14, json.RootElement.GetProperty("figures").GetArrayLength());
        var posts = json.RootElement.GetProperty("figures")[0];
        Assert.Equal("posts", posts.GetProperty("figure").GetString());
        Assert.Equal(a == "county" ? 14 : 11, posts.GetProperty("a").GetDouble()); // 100 / 8 = 12.5: 13 bays
    }

    [Theory]
    [InlineData("error: --rule-set cannot be 'moon': known are base, caltrans, faa, missouri-dot, navy, ohio-dot, tremonton, usace.", "plan", "--rule-set", "moon")]
    [InlineData("error: --rule-set cannot be 'moon': known are base, caltrans, faa, missouri-dot, navy, ohio-dot, tremonton, usace.", "compare", "--rule-set", "moon")]
    [InlineData("error: --rules and --rule-set exclude each other.", "check", "--rule-set", "faa", "--rules", "x.json")]
    [InlineData("error: Two rule sets are compared, or one with the job's own; 0 were given.", "compare")]
    [InlineData("error: Two rule sets are compared, or one with the job's own; 3 were given.", "compare", "--rule-set", "faa", "--rule-set", "navy", "--rule-set", "base")]
    public void AWrongChoiceIsToldOnTheCommandLine(string message, string command, params string[] flags)
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run([command, "@job.json", .. flags]);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Contains(message + "\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AJobWithErrorsIsNotCompared()
    {
        using var folder = new CliFolder(Jobs.With("1.8288", "1.9"));
        var ran = folder.Run("compare", "@job.json", "--rule-set", "navy");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.Single(ran.Error.Split('\n'), l => l.StartsWith("error: job.json, specs[0].height", StringComparison.Ordinal));
    }

    /// <summary>Leaves of 20 ft at 6 ft: common practice lists no post, Ohio's table has no end.</summary>
    [Fact]
    public void AnErrorThatArisesByOneSetNamesIt()
    {
        var gate = """ "gates": [{ "id": "g", "leg": "ab", "kind": "double", "nearFace": 6, "opening": 12.192 }], "lines": [""";
        using var folder = new CliFolder(Jobs.With("\"lines\": [", gate));
        var ran = folder.Run("compare", "@job.json", "--rule-set", "ohio-dot");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.Matches("^error: job.json, gates.0.*, by base: No gate post is listed for a leaf of 20' 0\"", ran.Error);
    }

    [Fact]
    public void TheCatalogueListsSetsAndKeys()
    {
        using var folder = new CliFolder();
        Assert.Matches("ohio-dot +Ohio DOT, 607 and 710 +base +11 rows", folder.Run("catalog", "rule-sets").Output);
        Assert.Matches("hole.concreteBelow +m +if stated +allowed +concrete under", folder.Run("catalog", "rule-keys").Output);
        Assert.Matches("hole.concreteBelow +6 in +under the bottom", folder.Run("catalog", "rules", "--rule-set", "tremonton").Output);
    }
}
