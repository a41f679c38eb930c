namespace Tautline.Cli.Tests;

/// <summary>The hang plan and the cards of a terminal, as a crew gets them.</summary>
public sealed class HangTests
{
    private static string Sample(string name)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent!;
        return Path.Combine(root.FullName, "samples", name);
    }

    [Fact]
    public void AHillsideSaysWhereItIsTiedAndWhichRollsItTakes()
    {
        using var folder = new CliFolder();
        var text = folder.Run("hang", Sample("goat-hill.json"), "--out", "@hang.txt");
        Assert.Equal(ExitCode.Fine, text.Exit);
        var plan = File.ReadAllText(folder.Of("hang.txt"));
        // Steeper than the practice of 25 % for a machine: by hand, with a puller above and one below.
        Assert.Contains("steeper than a machine works on; tie off at A22, then to A18 (39' 0\"), to A14 (39' 0\")", Words(plan), StringComparison.Ordinal);
        Assert.Contains("by hand, pull bar about 42\" wide, an upper and a lower puller", Words(plan), StringComparison.Ordinal);
        Assert.Contains("never to a line post", Words(plan), StringComparison.Ordinal);
        Assert.Contains("left-of-spring", plan, StringComparison.Ordinal);
        Assert.Contains("no plan in this order opens less", plan, StringComparison.Ordinal);
        Assert.Contains("stand clear of the line of pull", plan.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    /// <summary>The words of a wrapped paper in one line.</summary>
    private static string Words(string text) => string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    [Fact]
    public void TwentyNineHundredFeetUseTheLongRollsAndGiveTheOtherCoilBack()
    {
        using var folder = new CliFolder();
        Assert.Equal(ExitCode.Fine, folder.Run("hang", Sample("ridge-road.json"), "--out", "@hang.txt").Exit);
        var lines = File.ReadAllLines(folder.Of("hang.txt"));
        Assert.Equal(20, lines.Count(l => l.Contains(" long-rolls ", StringComparison.Ordinal)));
        Assert.Contains(lines, l => l.Contains("Back unopened: 2 of other-coil, lot Q-7.", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("missing", StringComparison.Ordinal));
    }

    /// <summary>reference/check_jobs.md 4 and trade_practice row 10: 24 rows to the third picket step over at 8 and 16 (common practice, no source).</summary>
    [Fact]
    public void TheCutCardOfThreePicketsStepsOverAtEightAndSixteen()
    {
        using var folder = new CliFolder(Jobs.Slope12.Replace("0.12", "0.05", StringComparison.Ordinal).Replace("1.8288", "2.1336", StringComparison.Ordinal));
        var card = folder.Run("card", "@job.json", "--post", "A1").Output;
        Assert.Contains("Count 8 down, step over one picket", card, StringComparison.Ordinal);
        Assert.Contains("Count 8 more, to 16, step over one picket", card, StringComparison.Ordinal);
        Assert.Contains("1 cap: last, over all bands", card, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoReadingsGiveTheCutOfTheFarEnd()
    {
        using var folder = new CliFolder();
        var card = folder.Run("card", Sample("sloped-lot.json"), "--post", "A10", "--toward", "A1", "--top", "13.5in", "--bottom", "8in");
        Assert.Equal(ExitCode.Fine, card.Exit);
        Assert.Contains("Top and bottom differ by 5 1/2\"", card.Output, StringComparison.Ordinal);
        var swapped = folder.Run("card", Sample("sloped-lot.json"), "--post", "A10", "--toward", "A1", "--top", "8in", "--bottom", "13.5in");
        Assert.Contains("exchanged", swapped.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A3")]
    [InlineData("Z1")]
    public void APostWithoutAnEndOfFabricIsTold(string post)
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("card", "@job.json", "--post", post);
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Contains("Terminals with fabric are A1, A", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OneReadingAloneIsRefused()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Assert.Equal(ExitCode.Usage, folder.Run("card", "@job.json", "--post", "A1", "--top", "4in").Exit);
    }

    /// <summary>Common practice, no source: 1/4 to 1/2 in between two pinched wires.</summary>
    [Theory]
    [InlineData("0.1in", "Bar-tight: right is 1/4\" to 1/2\"")]
    [InlineData("3/8in", "Tight enough: 1/4\" to 1/2\"")]
    [InlineData("1in", "Slack: right is 1/4\" to 1/2\"")]
    public void ASqueezedMeshIsJudged(string gap, string words)
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("mesh", "@job.json", "--squeeze", gap);
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains(words, ran.Output, StringComparison.Ordinal);
        Assert.Contains("stand clear of the line of pull", Words(ran.Output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--ten", "30in", "Ten pickets over 2' 6\" cannot be this mesh.")]
    [InlineData("--squeeze", "-1in", "A gap of -1\" cannot be left between two wires pinched together.")]
    public void AReadingThatCannotBeIsRefused(string option, string value, string words)
    {
        using var folder = new CliFolder(Jobs.Line100);
        var ran = folder.Run("mesh", "@job.json", $"{option}={value}");
        Assert.Equal((ExitCode.Problems, ""), (ran.Exit, ran.Output));
        Assert.Contains(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AMeshNobodyMeasuredOrOfNoSpecIsTold()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Assert.Contains("Nothing was measured on the fabric.", folder.Run("mesh", "@job.json").Error, StringComparison.Ordinal);
        var other = folder.Run("mesh", "@job.json", "--squeeze", "3/8in", "--fabric", "no-such");
        Assert.Equal(ExitCode.Problems, other.Exit);
        Assert.Contains("The job has no spec 'no-such'.", other.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsCutPulledOrDugIsCautioned()
    {
        using var folder = new CliFolder();
        Assert.Contains("cut ends and released pickets spring", Words(folder.Run("card", Sample("sloped-lot.json"), "--post", "A10").Output), StringComparison.Ordinal);
        Assert.Contains("have every buried line located and marked before the first hole", Words(folder.Run("stakes", Sample("sloped-lot.json")).Error), StringComparison.Ordinal);
        Assert.Contains("have every buried line located and marked before the first hole", Words(folder.Run("profile", Sample("sloped-lot.json")).Output), StringComparison.Ordinal);
    }
}
