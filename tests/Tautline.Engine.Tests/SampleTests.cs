using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Site.TapeBook;
using Tautline.Engine.Tests.Reasons;

namespace Tautline.Engine.Tests;

/// <summary>Every job file of samples/ is read, planned, and each of its figures recomputed from its reasons.</summary>
public sealed class SampleTests
{
    public static TheoryData<string> Names => [.. Directory.GetFiles(Folder(), "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    internal static string Folder()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Tautline.slnx"))) at = at.Parent;
        return Path.Combine(at?.FullName ?? throw new InvalidOperationException("the tests run inside the repository"), "samples");
    }

    public static TheoryData<string> Books => [.. Directory.GetFiles(Folder(), "*.tape").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Books))]
    public void EveryTapeBookOfTheSamplesIsPlannedAndEveryFigureRecomputed(string name)
    {
        var reading = TapeBookReader.Read(File.ReadAllText(Path.Combine(Folder(), name)));
        Assert.DoesNotContain(reading.Problems, p => p.Severity == Severity.Error);
        var plan = Some.Plan(reading.Job!);
        Assert.DoesNotContain(plan.Problems, p => p.Severity == Severity.Error);
        FactCheck.All(plan);
    }

    internal static Job Read(string name)
    {
        var reading = JobFile.Read(File.ReadAllBytes(Path.Combine(Folder(), name)));
        Assert.Empty(reading.Problems);
        return reading.Job!;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EverySampleIsPlannedAndEveryFigureRecomputed(string name)
    {
        var plan = Some.Plan(Read(name));
        Assert.DoesNotContain(plan.Problems, p => p.Severity == Severity.Error);
        Assert.NotEmpty(plan.Takeoff);
        FactCheck.All(plan);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ASampleSavedAgainHasTheSameHash(string name)
    {
        var job = Read(name);
        var again = JobFile.Read(JobFile.Write(job)).Job!;
        Assert.Equal(PlanFile.Hash(Some.Plan(job)), PlanFile.Hash(Some.Plan(again)));
    }

    /// <summary>The yard of the samples is hand count B of docs/checks/first-light.md with a water line across its second leg.</summary>
    [Fact]
    public void TheYardKeepsItsPostsOffTheWaterLine()
    {
        var line = Some.Plan(Read("level-yard.json")).Lines.Single();
        Assert.Equal(8, line.Posts.Count(p => p.Kind != PostKind.Line));
        // Marked 38 1/2 to 41 1/2 ft along a leg that starts at 60 ft; clearance 1 1/2 ft, half of a 10-in hole: 96.58 to 103.42.
        Assert.DoesNotContain(line.Posts, p => p.Station.Feet > 96.59 && p.Station.Feet < 103.41);
    }
}
