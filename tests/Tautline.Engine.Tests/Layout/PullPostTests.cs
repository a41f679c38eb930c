using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Layout;

/// <summary>Pull posts and the no-dig stretches they keep off.</summary>
public sealed class PullPostTests
{
    private static Obstacle NoDig(string id, double from, double to, double clear = 0) => new()
    {
        Id = new(id),
        Leg = new("main/leg1"),
        Kind = Obstacle.NoDig,
        From = Length.FromFeet(from),
        To = Length.FromFeet(to),
        Clearance = Length.FromFeet(clear),
    };

    private static Plan Straight(double feet, double grade, params Obstacle[] zones)
        => Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, feet)], [grade])) with { Obstacles = zones });

    private static double[] Pulls(Plan plan) => [.. plan.Lines[0].Posts.Where(p => p.Kind == PostKind.Pull).Select(p => Math.Round(p.Station.Feet, 6))];

    /// <summary>600 ft take one pull post, at 300 ft. Its hole is 12 in: 290 - 2 - 1/2 and 305 + 2 + 1/2 are free, the second is nearer.</summary>
    [Fact]
    public void APullPostMovesOutOfTheStretchWithItsWholeHole()
    {
        var plan = Straight(600, 0, NoDig("gas", 290, 305, 2));
        Assert.Equal([307.5], Pulls(plan));
        Assert.DoesNotContain(plan.Problems, p => p.Code == ProblemCode.TerminalInZone);
    }

    /// <summary>Out of one stretch it must not be moved into the next, in whatever order they were entered.</summary>
    [Fact]
    public void APullPostMovesOutOfStretchesThatRunIntoEachOther()
    {
        Obstacle[] zones = [NoDig("water", 309, 330), NoDig("gas", 290, 310)];
        Assert.Equal([289.5], Pulls(Straight(600, 0, zones)));
        Assert.Equal([289.5], Pulls(Straight(600, 0, [zones[1], zones[0]])));
    }

    /// <summary>Nowhere on the run is free: it stays at the middle and is told. It used to fall on the end post, and planning broke off.</summary>
    [Fact]
    public void APullPostWithNoFreePlaceStaysAndIsTold()
    {
        var plan = Straight(600, 0, NoDig("gas", 200, 400, 250));
        Assert.Equal([300], Pulls(plan));
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.TerminalInZone && Math.Abs(p.Place.Station!.Value.Feet - 300) < 1e-6);
    }

    /// <summary>
    /// 1600 ft take three, at 400, 800 and 1200 ft; two of them would go to the end of the stretch, at 1300 1/2 ft. The last goes to
    /// neither end, for both are taken, and stays.
    /// </summary>
    [Fact]
    public void TwoPullPostsDoNotMoveToOnePlace() => Assert.Equal([99.5, 1200, 1300.5], Pulls(Straight(1600, 0, NoDig("gas", 100, 1300))));
}
