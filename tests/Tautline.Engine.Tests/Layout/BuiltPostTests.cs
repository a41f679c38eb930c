using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Layout;

/// <summary>What is built is a fixed point of every plan after it.</summary>
public sealed class BuiltPostTests
{
    private static readonly Gen<Job> grounded = Gen.Select(Gen.Double[-3, 3].Array[2, 12], Gen.Double[60, 400], Gen.Bool)
        .Select((heights, feet, smooth) => OverGround(heights, feet, smooth ? "smooth" : "follow"));

    /// <summary>Any of a plan's posts built just there: the plan after is the same to the last digit.</summary>
    [Fact]
    public void BuiltAsPlannedChangesNothing() => Gen.Select(GenJob.Any, Gen.ULong).Always(
        (job, which) => Assert.Equal(PlanFile.Hash(Some.Plan(job)), PlanFile.Hash(Some.Plan(job, Some.Plan(job) is var plan ? Chosen(plan, which) : null))), iter: 150);

    [Fact]
    public void BuiltAsPlannedOverGroundChangesNothing() => Gen.Select(grounded, Gen.ULong).Always(
        (job, which) => Assert.Equal(PlanFile.Hash(Some.Plan(job)), PlanFile.Hash(Some.Plan(job, Some.Plan(job) is var plan ? Chosen(plan, which) : null))), iter: 60);

    public static TheoryData<string> Samples => SampleTests.Names;

    [Theory]
    [MemberData(nameof(Samples))]
    public void ASampleBuiltAsPlannedIsTheSamePlan(string name)
    {
        var job = SampleTests.Read(name);
        var plan = Some.Plan(job);
        Assert.Equal(PlanFile.Hash(plan), PlanFile.Hash(Some.Plan(job, PostPlaces.AllAsPlanned(plan))));
    }

    /// <summary>Posts set up to two feet off: every one stands in the plan after where it stands on the ground, and the others keep the limit or it is told.</summary>
    [Fact]
    public void ABuiltPostIsNeverMoved() => Gen.Select(GenJob.Any, Gen.ULong, Gen.Double[-2, 2].Array[64]).Always(
        (job, which, off) =>
        {
            var built = Moved(Chosen(Some.Plan(job), which), off, job);
            var plan = Some.Plan(job, built);
            AssertStand(plan, built);
            Assert.True(plan.Lines[0].Runs.Count(r => r.LargestBay.Feet > 10.0001) <= plan.Problems.Count(p => p.Code == ProblemCode.BayTooLong));
        }, iter: 150);

    [Fact]
    public void ABuiltPostOverGroundKeepsItsTop() => Gen.Select(grounded, Gen.ULong, Gen.Double[-0.1, 0.1].Array[64]).Always(
        (job, which, off) =>
        {
            var chosen = Chosen(Some.Plan(job), which);
            var built = new BuiltFacts([.. chosen.Posts.Select((p, i) => p with { Top = p.Top + Length.FromFeet(off[i % off.Length]) })]);
            var plan = Some.Plan(job, built);
            AssertStand(plan, built);
        }, iter: 60);

    /// <summary>A footing hit rock at 40 ft, so the post stands at 41 ft 6 in: before it 41.5 ft in five bays, behind it 58.5 ft in six.</summary>
    [Fact]
    public void AfterAHitTheRestIsDividedAnew()
    {
        var plan = Some.Plan(Some.StraightHundred(), new([new(new("hit"), new("main/leg1"), Length.FromFeet(41.5))]));
        var feet = plan.Lines[0].Posts.Select(p => Math.Round(p.Station.Feet, 4)).ToArray();
        Assert.Equal([0, 8.3, 16.6, 24.9, 33.2, 41.5, 51.25, 61, 70.75, 80.5, 90.25, 100], feet);
    }

    /// <summary>The same with the posts before it built as the first plan had them: they stay, only what is behind is divided anew.</summary>
    [Fact]
    public void WhatStandsBeforeTheHitStays()
    {
        BuiltPost At(double feet) => new(new($"b{feet}"), new("main/leg1"), Length.FromFeet(feet));
        var plan = Some.Plan(Some.StraightHundred(), new([At(10), At(20), At(30), At(41.5)]));
        var feet = plan.Lines[0].Posts.Select(p => Math.Round(p.Station.Feet, 4)).ToArray();
        Assert.Equal([0, 10, 20, 30, 35.75, 41.5, 51.25, 61, 70.75, 80.5, 90.25, 100], feet);
    }

    private static Job OverGround(double[] heights, double feet, string mode)
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, feet)]));
        var shots = heights.Select((h, i) => new GroundShot
        {
            Leg = new("main/leg1"),
            At = Length.FromFeet(feet * i / (heights.Length - 1)),
            Height = Length.FromFeet(100 + h),
        });
        return job with { Lines = [job.Lines[0] with { Ground = new LineGround { Shots = [.. shots] }, Fit = new LineFit { Mode = mode } }] };
    }

    private static BuiltFacts Chosen(Plan plan, ulong which)
        => new([.. PostPlaces.AllAsPlanned(plan).Posts.Where((_, i) => (which >> (i % 64) & 1) == 1)]);

    /// <summary>At least three feet stay between them and to the ends of their leg; what does not keep that is left out.</summary>
    private static BuiltFacts Moved(BuiltFacts built, double[] off, Job job)
    {
        List<BuiltPost> posts = [];
        foreach (var (post, i) in built.Posts.Select((p, i) => (p, i)))
        {
            var moved = post with { FromLegStart = post.FromLegStart + Length.FromFeet(off[i % off.Length]) };
            if (moved.FromLegStart.Feet > 3 && !posts.Any(p => p.Leg == moved.Leg && Math.Abs((p.FromLegStart - moved.FromLegStart).Feet) < 3) && Fits(job, moved)) posts.Add(moved);
        }
        return new(posts);
    }

    private static bool Fits(Job job, BuiltPost post)
    {
        var probe = Some.Plan(job, new([post]));
        return !probe.HasErrors && job.Gates.All(g => g.Leg != post.Leg || post.FromLegStart < g.NearFace - Length.FromFeet(1) || post.FromLegStart > g.NearFace + g.Opening + Length.FromFeet(1));
    }

    private static void AssertStand(Plan plan, BuiltFacts built)
    {
        var line = plan.Basis.Lines[0];
        foreach (var post in built.Posts)
        {
            var station = line.Site.Chain.Legs.First(l => l.Leg?.Id == post.Leg).StartNm + post.FromLegStart.Nanometres;
            var stands = Assert.Single(line.Posts, p => Math.Abs(p.StationNm - station) <= 1_000);
            if (post.Top is { } top && stands.Kind == PostKind.Line) Assert.Equal(top.Metres, stands.Rise!.Value.Fabric, 2e-4);
        }
    }
}
