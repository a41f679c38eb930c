using System.Text.Json;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>The field file among the samples: as its script makes it, and as samples/README.md tells it.</summary>
public sealed class FieldSampleTests
{
    /// <summary>Compared as this program writes both, so that a field more in the format is no difference.</summary>
    [Fact]
    public void TheSampleIsWhatItsScriptMakes()
    {
        var made = ExchangeFile.Write(FieldSample.Made);
        if (Environment.GetEnvironmentVariable("TAUTLINE_WRITE_SAMPLES") == "1") File.WriteAllBytes(Samples.Field, made);
        var read = ExchangeFile.Read(File.ReadAllBytes(Samples.Field));
        Assert.Empty(read.Faults);
        Assert.True(made.AsSpan().SequenceEqual(ExchangeFile.Write(read.Exchange!)), "The sample is not what its script makes: run this test with TAUTLINE_WRITE_SAMPLES=1 and read what changed.");
    }

    [Theory]
    [InlineData("2610-0447, which runs from 2026-10-12 to 2026-10-26", "Ticket 2610-0447, 2026-10-12 to 2026-10-26, in force")]
    [InlineData("clear, a breeze, 48 °F", "clear, wind breeze, 48 °F")]
    [InlineData("1.5 hours of jackhammer at 98.00, 147.00 in all", "1.5 hour  98.00  147.00  The owner")]
    [InlineData("the fourth 8\" ahead of where it was drawn", "A4     0+27.94    0+28.61  8\" ahead")]
    [InlineData("75 hours and corrects it to 7.5", "no longer  75 hours Drill")]
    [InlineData("75 hours and corrects it to 7.5", "Tomas   Drill        7.5")]
    [InlineData("the one edit of the job", "1 edit of the job since it was shared, 0 open conflicts")]
    [InlineData("22 bags of concrete", "22 bag concrete")]
    [InlineData("half a degree", "Posts out of plumb  0.5 degrees  as it should be")]
    [InlineData("the log has 19 entries and 18 of them stand", "19 entries, 18 of them stand, 2026-10-12 06:50 to 2026-10-13 15:32 (UTC-06:00)")]
    [InlineData("7 posts of 19 are set", "Posts set    7 of 19, 36 %")]
    [InlineData("29.5 hours are written down", "29.5 hours in all")]
    [InlineData("no photo is named", "photos  none")]
    public void WhatThePageSaysIsShown(string page, string shown)
    {
        Assert.Contains(page, File.ReadAllText(Path.Combine(Samples.Folder, "README.md")), StringComparison.Ordinal);
        using var folder = new CliFolder();
        var ran = folder.Run("field", "show", Samples.Field, "--today", "2026-10-13", "--zone", "-06:00", "--entries");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.Contains(shown, ran.Output, StringComparison.Ordinal);
    }

    /// <summary>The measured slope is in the job that comes out, and the job plans.</summary>
    [Fact]
    public void TheJobThatComesOutHasTheSlopeThatWasMeasured()
    {
        using var folder = new CliFolder();
        Assert.Equal(ExitCode.Fine, folder.Run("field", "job", Samples.Field, "-o", "@job.json").Exit);
        using var job = JsonDocument.Parse(File.ReadAllText(folder.Of("job.json")));
        var leg = job.RootElement.GetProperty("lines")[0].GetProperty("vertices")[1].GetProperty("leg");
        Assert.Equal(("side/leg2", 0.04), (leg.GetProperty("id").GetString(), leg.GetProperty("grade").GetDouble()));
        Assert.Equal(ExitCode.Fine, folder.Run("plan", "@job.json").Exit);
    }

    /// <summary>The page's list of samples is made of the files beside each other; this one is in a folder below.</summary>
    [Fact]
    public void NoFieldFileLiesAmongTheJobsOfThePage()
        => Assert.All(Directory.GetFiles(Samples.Folder, "*.json"), path => Assert.Null(ExchangeFile.Read(File.ReadAllBytes(path)).Exchange));
}
