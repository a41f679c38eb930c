using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Tests;

public sealed class WhyTests
{
    [Fact]
    public void HoleDepthIsExplainedToItsSources()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("why", "@job.json", "post/main/7/hole-depth");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.Equal(
            """
            hole depth of post 7 of line main = 30 in = 2' 6" = 0.7620 m
              hole-depth  = hole.depth + hole.depthPerHeight x (larger(fence height, hole.depthFrom) - hole.depthFrom)
                          = 24 in + 0.25 x (larger(72 in, 48 in) - 48 in)
                          = 30 in = 2' 6" = 0.7620 m
              (larger( ) takes the larger of two)

            Where the numbers come from
              number               value  from
              hole.depth           24 in  ASTM F567, 5.1, 2007 (published)
              hole.depthPerHeight   0.25  ASTM F567, 5.1, 2007 (published)
              fence height         72 in  the job, or the layout made from it
              hole.depthFrom       48 in  Village of Byesville, Ohio, Codified Ordinances, chain link fence (derived from
                                          ASTM F567 and F761), Ord. 01-08, 11 July 2001 (published)

            """.ReplaceLineEndings("\n"), ran.Output);
    }

    /// <summary>Concrete of one terminal hole: first-light.md has 3,198.1659 cu in, 1.85079 cu ft.</summary>
    [Fact]
    public void ConcreteIsWorkedInInchesAndSaidInCubicFeet()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var text = folder.Run("why", "@job.json", "post/main/1/concrete").Output;
        Assert.Contains("= pi / 4 x (12 in x 12 in - 2.875 in x 2.875 in) x 30 in\n", text, StringComparison.Ordinal);
        Assert.Contains("= 3198.1659 cu in = 1.85079 cu ft = 0.05241 cu m\n", text, StringComparison.Ordinal);
        Assert.Contains("ask post/main/1/hole-diameter", text, StringComparison.Ordinal);
    }

    [Fact]
    public void EqualTermsOfASumAreGrouped()
    {
        using var folder = new CliFolder(Jobs.Line100);
        var takeoff = CsvBack.Rows(folder.Run("plan", "@job.json", "--csv").Output);
        var ties = takeoff.Single(r => r["part"] == "post-tie")["number"];
        var bags = takeoff.Single(r => r["part"] == "concrete-bag")["number"];
        Assert.Contains("= 9 x 6\n", folder.Run("why", "@job.json", $"takeoff/{ties}/net").Output, StringComparison.Ordinal);
        var purchase = folder.Run("why", "@job.json", $"takeoff/{bags}/purchase").Output;
        Assert.Contains("= 11 x bags\n", purchase, StringComparison.Ordinal);
        Assert.Contains("= 2 x 4 + 9 x 3\n", purchase, StringComparison.Ordinal);
    }

    [Fact]
    public void AFigureFromMemorySaysVerify()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Assert.Contains(
            "UFGS-02821A / UFGS 32 31 13.53, Part 3, 2004 to 2008 text (from", folder.Run("why", "@job.json", "end/main/1/start/bands").Output,
            StringComparison.Ordinal);
        Assert.Contains("memory: verify)", folder.Run("why", "@job.json", "end/main/1/start/bands").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void MetricPutsInMillimetres()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Assert.Contains(
            "= 609.6 mm + 0.25 x (larger(1828.8 mm, 1219.2 mm) - 1219.2 mm)\n",
            folder.Run("why", "@job.json", "post/main/7/hole-depth", "--units", "metric").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("post/main/7/hole-depht", "'hole-depht' is no fact of this.", "Nearest first: post/main/7/hole-depth, ")]
    [InlineData("post/main/12/bags", "'12' is no post; they are numbered 1 to 11.", "post/main/11/")]
    [InlineData("post/mian/1/bags", "'mian' is no line.", "post/main")]
    [InlineData("gate/main/1/leaf", "There is no gate here.", "")]
    [InlineData("end/main/1/middle/bands", "'middle' is no end of a run.", "end/main/1/start")]
    [InlineData("spec/fence", "'spec/fence' names no single fact.", "spec/fence/advance-low")]
    [InlineData("depth", "'depth' is no kind of fact.", "spec/..., post/..., run/...")]
    public void AnUnknownFactSaysWhatExistsNearIt(string fact, string message, string near)
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("why", "@job.json", fact);
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.StartsWith($"error: {message}\nhint: ", ran.Error, StringComparison.Ordinal);
        Assert.Contains(near, ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("'tautline why job.json --list' lists all.\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheListHoldsEveryFactOnceAndEachCanBeAsked()
    {
        using var folder = new CliFolder(Jobs.Yard);
        var names = folder.Run("why", "@job.json", "--list").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.Contains("gate/yard/2/leaf", names);
        var plan = PlanOf(Jobs.Yard);
        Assert.Equal(Facts.All(plan).Count(), names.Length);
        Assert.All(names, n => Assert.Equal(n, FactText.Format(plan, FactText.Parse(plan, n).Key!.Value)));
        Assert.All(
            names.Where((_, i) => i % 37 == 0), n => Assert.Equal(ExitCode.Fine, folder.Run("why", "@job.json", n).Exit));
    }

    [Fact]
    public void AnIdWithASlashOrPercentIsNamedAndFoundAgain()
    {
        var plan = PlanOf(Jobs.Line100.Replace("\"main\"", "\"50% a/b\"", StringComparison.Ordinal));
        var key = Facts.All(plan).First(k => k.Kind == Engine.Reasons.FactKind.Bags);
        Assert.Equal("post/50%25 a%2Fb/1/bags", FactText.Format(plan, key));
        Assert.Equal(key, FactText.Parse(plan, "post/50%25 a%2Fb/1/bags").Key);
    }

    private static Engine.Plans.Plan PlanOf(string job) => JobPlanner.Plan(
        JobFile.Read(System.Text.Encoding.UTF8.GetBytes(job)).Job!, FenceCatalog.BuiltIn(), Rules.BuiltIn(), BuiltFacts.None);
}
