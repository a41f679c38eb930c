using System.Text;
using System.Text.Json;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Tests;

/// <summary>
/// --built: the plan goes through what stands. In the sample A4 is drawn at 27.94 ft and stands 8" ahead, at 28.61 ft (samples/README.md); A5 and A6 were set where
/// the plan then had them, by hand at 28.607 + (55.880 - 28.607) / 3 = 37.698 ft and at 46.789 ft.
/// </summary>
public sealed class BuiltTests
{
    private const string Through = "note: f.json: The plan goes through the 5 line posts that stand by this log; terminals are where the job has them.\n";

    private static LogEntry Set(long number, double feet, double offInches, Func<PostDone, PostDone>? change = null)
    {
        var post = new PostDone
        {
            Leg = new("side/leg1"),
            At = Length.FromFeet(feet),
            East = Length.FromInches(offInches),
            North = Length.FromFeet(feet),
            Number = 4,
            Line = true,
        };
        return FieldFiles.Entry("a", number, "", LogEntry.Work) with { Done = new() { Operation = Operations.Set, Count = 1, Posts = [change?.Invoke(post) ?? post] } };
    }

    private static string Station(string plan, string mark)
        => plan.Split('\n').Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)).First(w => w.Length > 1 && w[0] == mark)[1];

    [Theory]
    [InlineData("A3", "0+18.63", "0+18.63")]
    [InlineData("A4", "0+27.94", "0+28.61")]
    [InlineData("A5", "0+37.25", "0+37.70")]
    [InlineData("A6", "0+46.57", "0+46.79")]
    [InlineData("A7", "0+55.88", "0+55.88")]
    public void ThePlanHasEachPostWhereItStands(string mark, string drawn, string stands)
    {
        using var folder = BuiltJob.Folder();
        Assert.Equal(drawn, Station(folder.Run("plan", "@job.json").Output, mark));
        Assert.Equal(stands, Station(folder.Run("plan", "@job.json", "--built", "@f.json").Output, mark));
    }

    [Fact]
    public void ThePlanTellsWhatItGoesThrough()
    {
        using var folder = BuiltJob.Folder();
        var ran = folder.Run("plan", "@job.json", "--built", "@f.json");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.StartsWith(Through, ran.Error, StringComparison.Ordinal);
        Assert.Contains("The plan goes through the 5 line posts that stand", ran.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("line posts that stand", folder.Run("plan", "@job.json").Output, StringComparison.Ordinal);
    }

    /// <summary>One job, one log, one plan, whichever way it is come by.</summary>
    [Fact]
    public void ThePlanIsTheOneTheFieldHas()
    {
        using var folder = BuiltJob.Folder();
        using var shown = JsonDocument.Parse(folder.Run("field", "show", "@f.json", "--json").Output);
        var (drawn, now) = (Hash("planHashAsDrawn"), Hash("planHashNow"));
        Assert.NotEqual(drawn, now);
        Assert.EndsWith($"\nPlan hash {drawn}\n", folder.Run("plan", "@job.json").Output, StringComparison.Ordinal);
        Assert.EndsWith($"\nPlan hash {now}\n", folder.Run("plan", "@job.json", "--built", "@f.json").Output, StringComparison.Ordinal);

        string Hash(string name) => shown.RootElement.GetProperty("built").GetProperty(name).GetString()!;
    }

    [Fact]
    public void TheStakesAreWhereThePostsStand()
    {
        using var folder = BuiltJob.Folder();
        Assert.Contains("\nA4,27.94,0,,", folder.Run("stakes", "@job.json").Output, StringComparison.Ordinal);
        var stakes = folder.Run("stakes", "@job.json", "--built", "@f.json").Output;
        Assert.Contains("\nA4,28.607,0,,\"line 2.375-sch40, 10 x 30 in\",5.833\r\nA5,37.698,0,,", stakes, StringComparison.Ordinal);
        Assert.DoesNotContain("27.94", stakes, StringComparison.Ordinal);
    }

    /// <summary>From A3 at 18.627 ft to A4 at 28.607 ft are 9.980 ft; as drawn the bays before the corner are the largest.</summary>
    [Fact]
    public void TwoRuleSetsAreComparedOnWhatStands()
    {
        using var folder = BuiltJob.Folder();
        Assert.Contains("largest bay 9' 11 5/8\"", folder.Run("compare", "@job.json", "--rule-set", "caltrans").Output, StringComparison.Ordinal);
        var ran = folder.Run("compare", "@job.json", "--rule-set", "caltrans", "--built", "@f.json");
        Assert.Contains("largest bay 9' 11 3/4\"", ran.Output, StringComparison.Ordinal);
        Assert.Contains(Through, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheDrawingIsOfWhatStands()
    {
        using var folder = BuiltJob.Folder();
        Assert.Equal(ExitCode.Fine, folder.Run("papers", "@job.json", "--paper", "site", "--out", "@drawn.dxf").Exit);
        Assert.Equal(ExitCode.Fine, folder.Run("papers", "@job.json", "--paper", "site", "--out", "@stands.dxf", "--built", "@f.json").Exit);
        var (drawn, stands) = (File.ReadAllText(folder.Of("drawn.dxf")).Split('\n').Select(l => l.Trim()).ToList(), File.ReadAllText(folder.Of("stands.dxf")).Split('\n').Select(l => l.Trim()).ToList());
        Assert.Contains("27.940104", drawn);
        Assert.DoesNotContain("27.940104", stands);
        Assert.Contains("28.606771", stands);
    }

    [Fact]
    public void EveryCommandTellsWhatItsPlanGoesThrough()
    {
        using var folder = BuiltJob.Folder();
        foreach (var command in BuiltJob.Commands)
        {
            var ran = folder.Run([.. command, "--built", "@f.json"]);
            Assert.Equal(ExitCode.Fine, ran.Exit);
            Assert.Contains(Through, ran.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>The job before is of another name here: what stands on one fence would be refused for it.</summary>
    [Fact]
    public void TheJobBeforeIsPlannedAsDrawn()
    {
        using var folder = BuiltJob.Folder();
        var ran = folder.Run("papers", "@job.json", "--built", "@f.json", "--paper", "revision", "--against", Path.Combine(Samples.Folder, "level-yard.json"), "--out", "@r.pdf");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.StartsWith(Through, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AZipWithPhotosSaysTheSame()
    {
        using var folder = BuiltJob.Folder().Put("f.zip", FieldFiles.ZipOf(FieldFiles.Sample, FieldFiles.Picture("one")));
        Assert.Equal(folder.Run("stakes", "@job.json", "--built", "@f.json").Output, folder.Run("stakes", "@job.json", "--built", "@f.zip").Output);
    }

    /// <summary>The order of the entries, one given twice, and the order in which two phones were merged change not a letter.</summary>
    [Fact]
    public void WhatStandsDoesNotHangOnTheOrderOfTheLog()
    {
        var sample = FieldSample.Made;
        using var folder = BuiltJob.Folder();
        HashSet<string> plans = [folder.Run("plan", "@job.json", "--json", "--built", "@f.json").Output];
        foreach (IReadOnlyList<LogEntry> log in new LogEntry[][] { [.. sample.Log.Reverse()], [.. sample.Log, .. sample.Log], [.. sample.Log.OrderBy(e => e.Text, StringComparer.Ordinal).ThenByDescending(e => e.Sequence)] })
            plans.Add(folder.Put("f.json", ExchangeFile.Write(sample with { Log = log })).Run("plan", "@job.json", "--json", "--built", "@f.json").Output);
        folder.Put("1.json", ExchangeFile.Write(FieldSample.Of(FieldSample.First))).Put("2.json", ExchangeFile.Write(FieldSample.Of(FieldSample.Second)));
        foreach (var (a, b) in new[] { ("@1.json", "@2.json"), ("@2.json", "@1.json") })
        {
            Assert.Equal(ExitCode.Fine, folder.Run("field", "merge", a, b, "-o", "@f.json", "--force").Exit);
            plans.Add(folder.Run("plan", "@job.json", "--json", "--built", "@f.json").Output);
        }
        Assert.Single(plans);
        Assert.NotEqual(folder.Run("plan", "@job.json", "--json").Output, plans.Single());
    }

    [Fact]
    public void WhereNothingStandsThePlanIsTheOneAsDrawn()
    {
        using var folder = BuiltJob.Folder(FieldFiles.Of(FieldFiles.Entry("a", 1, "a note")));
        var ran = folder.Run("plan", "@job.json", "--json", "--built", "@f.json");
        Assert.Equal((ExitCode.Fine, folder.Run("plan", "@job.json", "--json").Output), (ran.Exit, ran.Output));
        Assert.StartsWith("note: f.json: No line post stands by this log: the plan is the one as drawn.\n", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5, "")]
    [InlineData(3.0, "warning: f.json, entry a/1: Post 4 stands 3\" off the line.\nhint: The plan has it square across from there, on the line.")]
    [InlineData(25.0, "warning: f.json, entry a/1: Post 4 was set where no line of the job runs any more. It stays in the log; the plan goes on without it.\nhint: Look whether")]
    public void APostBesideTheLineIsTold(double inches, string told)
    {
        using var folder = BuiltJob.Folder(FieldFiles.Of(Set(1, 28, inches)));
        foreach (var command in BuiltJob.Commands)
        {
            var ran = folder.Run([.. command, "--built", "@f.json"]);
            Assert.Equal((ExitCode.Fine, told.Length == 0), (ran.Exit, !ran.Error.Contains("entry a/1", StringComparison.Ordinal)));
            Assert.Contains(told, ran.Error, StringComparison.Ordinal);
        }
        Assert.Equal(inches < 24, folder.Run("stakes", "@job.json", "--built", "@f.json").Output.Contains("\nA4,28,0,,", StringComparison.Ordinal));
    }

    [Fact]
    public void AnEntryBeyondAllBoundsIsToldAndLeftOut()
    {
        using var folder = BuiltJob.Folder(FieldFiles.Of(Set(1, 28, 0), Set(2, 36, 0, p => p with { East = new(1e300) })));
        var ran = folder.Run("stakes", "@job.json", "--built", "@f.json");
        Assert.Equal(ExitCode.Fine, ran.Exit);
        Assert.Contains("\nA4,28,0,,", ran.Output, StringComparison.Ordinal);
        Assert.Contains("warning: f.json, entry a/2: A measure, hours or a price of this entry is beyond all bounds: it is kept, and not counted here.\n", ran.Error, StringComparison.Ordinal);
        Assert.Contains("note: f.json: The plan goes through the 1 line post that stands by this log", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void APostThatWasCorrectedTwiceIsTold()
    {
        using var folder = BuiltJob.Folder(FieldFiles.Of(Set(1, 28, 0), Set(2, 28.2, 0) with { Supersedes = new("a", 1) }, Set(3, 29.9, 0) with { Device = "b", Supersedes = new("a", 1) }));
        Assert.Contains(
            "warning: f.json, entry a/1: This entry was corrected twice and both corrections stand: the plan may go through one post in two places.\nhint: Take one back on the phone.\n",
            folder.Run("check", "@job.json", "--built", "@f.json").Error, StringComparison.Ordinal);
    }

    /// <summary>The rest of the file counts, all of the output is written, and the exit code says that something is missing.</summary>
    [Fact]
    public void ADamagedEntryIsToldAndTheRestIsPlannedThrough()
    {
        var text = Encoding.UTF8.GetString(FieldFiles.Of(Set(1, 28, 0), FieldFiles.Entry("a", 2, "gone")));
        using var folder = BuiltJob.Folder(Encoding.UTF8.GetBytes(text.Replace("\"sequence\":2", "\"sequence\":0", StringComparison.Ordinal)));
        foreach (var command in BuiltJob.Commands)
        {
            var ran = folder.Run([.. command, "--built", "@f.json"]);
            Assert.Equal(ExitCode.Problems, ran.Exit);
            Assert.Contains("warning: f.json, log[1]: $.sequence is below 1. This part was left out, the rest is taken.\n", ran.Error, StringComparison.Ordinal);
        }
        Assert.Contains("\nA4,28,0,,", folder.Run("stakes", "@job.json", "--built", "@f.json").Output, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.Of("site.dxf")));
    }

    [Fact]
    public void TheJobThatIsTakenOutNamesTheFlag()
    {
        using var folder = BuiltJob.Folder();
        var ran = folder.Run("field", "job", "@f.json", "-o", "@again.json");
        Assert.Equal(
            "note: This is the job as drawn and edited: what is built is not in a job.\nhint: 'tautline plan again.json --built f.json' plans through it; the other commands that plan take --built too.\n", ran.Error);
    }

    [Fact]
    public void HelpNamesTheFlagOfEveryCommandThatPlans()
    {
        using var folder = new CliFolder();
        foreach (var command in BuiltJob.Commands.Select(c => c[0]).Distinct())
            Assert.Contains("--built <FIELDFILE>", folder.Run(command, "--help").Output, StringComparison.Ordinal);
        foreach (var command in new[] { "mesh", "attach", "catalog" })
            Assert.DoesNotContain("--built", folder.Run(command, "--help").Output, StringComparison.Ordinal);
    }
}
