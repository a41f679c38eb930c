using System.IO.Compression;
using System.Text.Json;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>Field files of one job put together, and the job taken out.</summary>
public sealed class FieldMergeTests
{
    private static CliFolder TwoPhones() => new CliFolder().Put("c.json", ExchangeFile.Write(FieldSample.Of(FieldSample.First))).Put("k.json", ExchangeFile.Write(FieldSample.Of(FieldSample.Second)));

    [Fact]
    public void WhatTwoPhonesWroteIsTheSample()
    {
        using var folder = TwoPhones();
        var ran = folder.Run("field", "merge", "@c.json", "@k.json", "-o", "@all.json");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        Assert.Equal(ExchangeFile.Write(FieldSample.Made), File.ReadAllBytes(folder.Of("all.json")));
        // The columns are as wide as the whole path of a file.
        Assert.Equal(
            ["Merged into all.json", "file entries new known edits new known", "c.json 10 10 0 0 0 0", "k.json 9 9 0 1 1 0", "", "together 19 entries, 1 edit, 0 open conflicts", ""],
            ran.Output.Split('\n').Select(l => string.Join(' ', l.Split(' ', StringSplitOptions.RemoveEmptyEntries))));
    }

    [Fact]
    public void WhatIsKnownAlreadyIsTold()
    {
        using var folder = TwoPhones();
        var ran = folder.Run("field", "merge", "@c.json", Samples.Field, "@c.json", "-o", "@all.json");
        Assert.Equal([["10", "10", "0", "0", "0", "0"], ["19", "9", "10", "1", "1", "0"], ["10", "0", "10", "0", "0", "0"]], ran.Output.Split('\n').Skip(2).Take(3).Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..]));
    }

    [Fact]
    public void TenTimesIsOnceAndTheOrderDoesNotMatter()
    {
        using var folder = TwoPhones().Put("x.json", FieldFiles.Of(FieldFiles.Opening("x", 3), FieldFiles.Entry("x", 2, "one"), FieldFiles.Entry("phone-c1", 4, "from a backup")));
        folder.Put("y.json", FieldFiles.Of(FieldFiles.Opening("y", 5)));
        string[] names = ["@c.json", "@k.json", "@x.json", "@y.json"];
        Assert.Equal(ExitCode.Fine, folder.Run(["field", "merge", .. names, "-o", "@once.json"]).Exit);
        var once = File.ReadAllBytes(folder.Of("once.json"));
        Gen.Int[0, 3].Select(i => names[i]).Array[6].Always(
            more =>
            {
                var again = $"{Guid.NewGuid():N}.json"; // the cases run side by side
                Assert.Equal(ExitCode.Fine, folder.Run(["field", "merge", .. more, .. names.Reverse(), .. more, "-o", "@" + again]).Exit);
                Assert.Equal(once, File.ReadAllBytes(folder.Of(again)));
            },
            iter: 20);
        Assert.Equal(ExitCode.Fine, folder.Run(["field", "merge", .. Enumerable.Repeat("@once.json", 10), "-o", "@ten.json"]).Exit);
        Assert.Equal(once, File.ReadAllBytes(folder.Of("ten.json")));
    }

    [Fact]
    public void OneNumberWithTwoContentsIsKeptTwiceAndTold()
    {
        using var folder = new CliFolder().Put("a.json", FieldFiles.Of(FieldFiles.Entry("a", 4, "before"))).Put("b.json", FieldFiles.Of(FieldFiles.Entry("a", 4, "after the backup")));
        var ran = folder.Run("field", "merge", "@a.json", "@b.json", "-o", "@c.json");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Equal("warning: The number a/4 is carried by two different entries, as after a restored backup: both are kept, and both stand.\n", ran.Error);
        Assert.Equal(["after the backup", "before"], ExchangeFile.Read(File.ReadAllBytes(folder.Of("c.json"))).Exchange!.Log.Select(e => e.Text).Order());
    }

    [Fact]
    public void AConflictIsToldAndStaysOpen()
    {
        using var folder = new CliFolder().Put("a.json", FieldFiles.Of(FieldFiles.Opening("a", 3))).Put("b.json", FieldFiles.Of(FieldFiles.Opening("b", 5)));
        var ran = folder.Run("field", "merge", "@a.json", "@b.json", "-o", "@c.json");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains("together 0 entries, 2 edits, 1 open conflict\n", ran.Output, StringComparison.Ordinal);
        Assert.Equal("warning: Open conflict, Gate side-gate: opening: 3' 0\" stands meanwhile; could be 5' 0\".\nhint: Settle it on a phone or in the browser: Field, Hand over.\n", ran.Error);
        Assert.Single(ExchangeFile.Read(File.ReadAllBytes(folder.Of("c.json"))).Exchange!.Shared.Conflicts);
    }

    /// <summary>What the office gets meanwhile is what stands, and it is told so.</summary>
    [Fact]
    public void AJobWithAnOpenConflictHasWhatStandsMeanwhile()
    {
        using var folder = new CliFolder().Put("c.json", FieldFiles.Of(FieldFiles.Opening("a", 3).Merge(FieldFiles.Opening("b", 5))));
        var ran = folder.Run("field", "job", "@c.json", "-o", "@job.json");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Output));
        Assert.StartsWith("note: Open conflicts are not settled here: the job has what stands meanwhile", ran.Error, StringComparison.Ordinal);
        Assert.Contains("warning: Open conflict, Gate side-gate: opening: 3' 0\" stands meanwhile; could be 5' 0\".\n", ran.Error, StringComparison.Ordinal);
        Assert.Equal(3, JobFile.Read(File.ReadAllBytes(folder.Of("job.json"))).Job!.Gates[0].Opening.Feet, 9);
    }

    /// <summary>The plan of that job is the plan as drawn that the field file itself has.</summary>
    [Fact]
    public void TheJobPlansAsTheFieldFileHasItAsDrawn()
    {
        using var folder = new CliFolder();
        Assert.Contains("note: This is the job as drawn and edited: what is built is not in a job", folder.Run("field", "job", Samples.Field, "-o", "@job.json").Error, StringComparison.Ordinal);
        var (shown, planned) = (folder.Run("field", "show", Samples.Field, "--json").Output, folder.Run("plan", "@job.json", "--by", "line", "--json").Output);
        using var field = JsonDocument.Parse(shown);
        using var plan = JsonDocument.Parse(planned);
        Assert.Equal(plan.RootElement.GetProperty("planHash").GetString(), field.RootElement.GetProperty("built").GetProperty("planHashAsDrawn").GetString());
        Assert.NotEqual(plan.RootElement.GetProperty("planHash").GetString(), field.RootElement.GetProperty("built").GetProperty("planHashNow").GetString());
    }

    [Fact]
    public void AJobWhosePlanHasErrorsIsWrittenForMending()
    {
        using var folder = new CliFolder().Put("f.json", FieldFiles.Of(FieldFiles.Opening("a", 90)));
        var ran = folder.Run("field", "job", "@f.json", "-o", "@job.json");
        Assert.Equal(ExitCode.Problems, ran.Exit);
        Assert.StartsWith("error: f.json, the job as it is now, gates[0]", ran.Error, StringComparison.Ordinal);
        Assert.Equal(90, JobFile.Read(File.ReadAllBytes(folder.Of("job.json"))).Job!.Gates[0].Opening.Feet, 9);
    }

    [Fact]
    public void FilesOfTwoJobsAreRefused()
    {
        using var folder = new CliFolder().Put("a.json", FieldFiles.Sample).Put("b.json", FieldFiles.Of(SharedJob.Begin(FieldFiles.Other)));
        var ran = folder.Run("field", "merge", "@a.json", "@b.json", "-o", "@c.json");
        Assert.Equal((ExitCode.Usage, ""), (ran.Exit, ran.Output));
        Assert.Equal("error: b.json: This is of the job 'elm-lane' and a.json of 'cedar-lane': two jobs are not merged.\nhint: Merge the files of each job by themselves.\n", ran.Error);
        Assert.Equal(["a.json", "b.json"], folder.Names);
    }

    [Fact]
    public void OneFileThatCannotBeReadStopsTheMerge()
    {
        using var folder = new CliFolder().Put("a.json", FieldFiles.Sample).Put("b.json", "{");
        Assert.Equal(ExitCode.Unreadable, folder.Run("field", "merge", "@a.json", "@b.json", "@none.json", "-o", "@c.json").Exit);
        Assert.Equal(["a.json", "b.json"], folder.Names);
    }

    [Fact]
    public void OneFileAloneIsNotMerged()
    {
        using var folder = new CliFolder();
        var ran = folder.Run("field", "merge", Samples.Field, "-o", "@c.json");
        Assert.Equal((ExitCode.Usage, "error: Only one file is named: name two or more to merge.\nhint: 'tautline field merge --help' shows what belongs here.\n"), (ran.Exit, ran.Error));
    }

    [Fact]
    public void PhotosGoAlongIntoAZipAndAreMissedAloudElsewhere()
    {
        var (one, two) = (FieldFiles.Picture("one"), FieldFiles.Picture("two"));
        using var folder = new CliFolder().Put("a.zip", FieldFiles.ZipOf(FieldFiles.Of(FieldFiles.Entry("a", 1, "one")), one)).Put("b.zip", FieldFiles.ZipOf(FieldFiles.Of(FieldFiles.Entry("b", 1, "two")), one, two));
        Assert.StartsWith("note: The photos are not in it.\n", folder.Run("field", "merge", "@a.zip", "@b.zip", "-o", "@c.json").Error, StringComparison.Ordinal);
        var ran = folder.Run("field", "merge", "@a.zip", "@b.zip", "-o", "@c.zip");
        Assert.Equal((ExitCode.Fine, ""), (ran.Exit, ran.Error));
        using var zip = ZipFile.OpenRead(folder.Of("c.zip"));
        Assert.Equal(["field.json", .. new[] { one, two }.Select(p => $"photos/{FieldFiles.Digest(p)}.jpg").Order(StringComparer.Ordinal)], zip.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal));
        Assert.Contains("photos  2 in the ZIP", folder.Run("field", "show", "@c.zip").Output, StringComparison.Ordinal);
    }

    /// <summary>A photo damaged in one file and whole in another is whole; damaged in all it is told and the rest is there.</summary>
    [Fact]
    public void ADamagedPhotoIsLookedForInTheOtherFiles()
    {
        var one = FieldFiles.Picture("one");
        var broken = FieldFiles.Zip(FieldFiles.Of(), ($"photos/{FieldFiles.Digest(one)}.jpg", FieldFiles.Picture("other")));
        using var folder = new CliFolder().Put("a.zip", broken).Put("b.zip", FieldFiles.ZipOf(FieldFiles.Of(), one));
        Assert.Equal((ExitCode.Fine, ""), folder.Run("field", "merge", "@a.zip", "@b.zip", "-o", "@c.zip") is var ran ? (ran.Exit, ran.Error) : default);
        var alone = folder.Run("field", "merge", "@a.zip", "@a.zip", "-o", "@d.zip");
        Assert.Equal(ExitCode.Problems, alone.Exit);
        Assert.Contains("The photo is damaged or larger than 8 MB: it was left out.", alone.Error, StringComparison.Ordinal);
        Assert.Contains("Merged into d.zip", alone.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.Of("d.zip")));
    }
}
