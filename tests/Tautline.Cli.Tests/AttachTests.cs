using System.Globalization;
using Tautline.Engine.Jobs;

namespace Tautline.Cli.Tests;

/// <summary>Ground laid under a job, from the command line: the guide's walk, real surfaces, and what goes wrong.</summary>
public sealed class AttachTests
{
    private static string Root
    {
        get
        {
            var root = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent!;
            return root.FullName;
        }
    }

    private static string Sample(string name) => Path.Combine(Root, "samples", name);

    private static string Shared(string name)
    {
        var folder = Environment.GetEnvironmentVariable("TAUTLINE_SHARED") is { Length: > 0 } stated ? stated : Path.Combine(Root, "..", "shared");
        var file = Path.Combine(folder, "data", name);
        if (!File.Exists(file)) Assert.Skip($"The shared file {name} is not here.");
        return file;
    }

    /// <summary>The stakes of a job as rows of cells.</summary>
    private static List<List<string>> Stakes(CliFolder folder, string job, params string[] more)
    {
        var ran = folder.Run(["stakes", job, .. more]);
        Assert.Equal(ExitCode.Fine, ran.Exit);
        return CsvBack.Lines(ran.Output);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [Fact]
    public void TheSampleTerrainIsWhatOurGeneratorMakes() => Assert.Equal(SampleTerrain.AsciiGrid(), File.ReadAllText(Sample("larkspur.asc")));

    [Fact]
    public void WhatTheFileDoesNotSayIsAskedAllAtOnce()
    {
        using var folder = new CliFolder();
        var asked = folder.Run("attach", Sample("larkspur.json"), Sample("larkspur.asc"), "--out", "@with.json");
        Assert.Equal(ExitCode.Problems, asked.Exit);
        Assert.Contains("Answer with --crs.", asked.Error, StringComparison.Ordinal);
        Assert.Contains("Answer with --height-unit.", asked.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void TheGuidesWalk()
    {
        using var folder = new CliFolder();
        var attached = folder.Run("attach", Sample("larkspur.json"), Sample("larkspur.asc"), "--crs", "local-m", "--height-unit", "metre", "--out", "@with.json");
        Assert.Equal(ExitCode.Fine, attached.Exit);
        Assert.Equal(File.ReadAllText(Sample("larkspur-ground.json")), File.ReadAllText(folder.Of("with.json")));
        var profile = folder.Run("profile", "@with.json").Output;
        Assert.Contains("Over measured ground: smooth", profile, StringComparison.Ordinal);
        Assert.Contains("The ground does not suit the fabric here:", profile, StringComparison.Ordinal);
        var stakes = Stakes(folder, "@with.json");
        Assert.Equal(["point", "northing_ft", "easting_ft", "elevation_ft", "description", "top_over_stake_ft"], stakes[0]);
        Assert.Equal("A1", stakes[1][0]);
        Assert.Equal(63, stakes.Count);
        var first = CsvBack.Lines(folder.Run("profile", "@with.json", "--csv").Output);
        Assert.Equal("gap_in", first[0][5]);
    }

    /// <summary>data/terrain/README.md: bilinear at (559770, 4380400) = 1712.681020.</summary>
    [Fact]
    public void ARealGridUnderALine()
    {
        var grid = Shared("terrain/west-bijou-gully-3m.asc");
        using var folder = new CliFolder();
        folder.Put("line.geojson", """{"type":"LineString","coordinates":[[559760,4380372],[559770,4380400],[559776,4380428]]}""");
        var attached = folder.Run("attach", "@line.geojson", grid, "--outline-crs", "EPSG:26913", "--crs", "EPSG:26913", "--height-unit", "metre", "--units", "metric", "--out", "@job.json");
        Assert.Equal(ExitCode.Fine, attached.Exit);
        var stakes = Stakes(folder, "@job.json");
        Assert.Equal("northing_m", stakes[0][1]);
        var corner = stakes.Skip(1).MinBy(s => Math.Abs(Number(s[1]) - 4380400) + Math.Abs(Number(s[2]) - 559770))!;
        Assert.Equal(559770, Number(corner[2]), 2e-3);
        Assert.Equal(1712.681, Number(corner[3]), 2e-3);
        var source = JobFile.Read(File.ReadAllBytes(folder.Of("job.json"))).Job!.Ground!.Source;
        Assert.Equal(("west-bijou-gully-3m.asc", "EPSG:26913"), (source.File, source.System));
        Assert.Equal(64, source.Sha256.Length);
    }

    /// <summary>
    /// data/plans/README.md: heights of surface EG at (N, E) (1500, 0) = 246.667871 ft. The line begins on two sides of the file's Lot #3.
    /// </summary>
    [Fact]
    public void ARealLotOnItsOwnSurveyedGround()
    {
        var survey = Shared("plans/subdivision-1.1-feet.xml");
        using var folder = new CliFolder();
        folder.Put("lot.geojson", """{"type":"LineString","coordinates":[[-150.82018578,1845.20740892],[-440.75395769,1772.79979823],[-253.09277185,1548.07375908],[0,1500]]}""");
        var attached = folder.Run("attach", "@lot.geojson", survey, "--outline-crs", "local-ft", "--crs", "local-ft", "--height-unit", "foot", "--surface", "EG", "--out", "@job.json");
        Assert.Equal(ExitCode.Fine, attached.Exit);
        var last = Stakes(folder, "@job.json")[^1];
        Assert.Equal(1500, Number(last[1]), 2e-3);
        Assert.Equal(0, Number(last[2]), 2e-3);
        Assert.Equal(246.667871, Number(last[3]), 2e-3);
        Assert.Contains("Over measured ground", folder.Run("plan", "@job.json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void GroundThatIsNowhereNearIsToldAndNothingWritten()
    {
        using var folder = new CliFolder();
        var job = File.ReadAllText(Sample("larkspur.json")).Replace("\"east\": 125", "\"east\": 9125", StringComparison.Ordinal)
            .Replace("\"east\": 10,", "\"east\": 9010,", StringComparison.Ordinal).Replace("\"east\": 60", "\"east\": 9060", StringComparison.Ordinal)
            .Replace("\"east\": 128", "\"east\": 9128", StringComparison.Ordinal);
        folder.Put("far.json", job);
        var ran = folder.Run("attach", "@far.json", Sample("larkspur.asc"), "--crs", "local-m", "--height-unit", "metre", "--out", "@with.json");
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.Contains("None of the ground lies within 10 m of a line.", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["far.json"], folder.Names);
    }

    [Fact]
    public void CancellingLeavesNothing()
    {
        using var folder = new CliFolder();
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        var ran = folder.Run(cancelled.Token, "attach", Sample("larkspur.json"), Sample("larkspur.asc"), "--crs", "local-m", "--height-unit", "metre", "--out", "@with.json");
        Assert.Equal(ExitCode.Cancelled, ran.Exit);
        Assert.Empty(folder.Names);
    }

    [Theory]
    [InlineData("--height-unit", "yard")]
    [InlineData("--columns", "PQRST")]
    [InlineData("--place-holders", "perhaps")]
    [InlineData("--width", "far")]
    [InlineData("--crs", "somewhere")]
    public void AWrongAnswerIsRefused(string flag, string value)
    {
        using var folder = new CliFolder();
        var ran = folder.Run("attach", Sample("larkspur.json"), Sample("larkspur.asc"), flag, value);
        Assert.Equal(ExitCode.Usage, ran.Exit);
        Assert.Contains($"{flag} cannot be '{value}'", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsNotThereIsTold()
    {
        using var folder = new CliFolder();
        var ran = folder.Run("attach", Sample("larkspur.json"), "@none.tif");
        Assert.Equal(ExitCode.Unreadable, ran.Exit);
        Assert.Contains("cannot be read", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AJobWithoutGroundSaysSoInItsProfile()
    {
        using var folder = new CliFolder(Jobs.Line100);
        Assert.Contains("no ground was measured", folder.Run("profile", "@job.json").Output, StringComparison.Ordinal);
        var stakes = Stakes(folder, "@job.json", "--no-header");
        Assert.Equal("", stakes[0][3]);
    }
}
