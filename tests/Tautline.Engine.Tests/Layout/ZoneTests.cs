using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Layout;

/// <summary>No-dig stretches and the posts that keep off them.</summary>
public sealed class ZoneTests
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

    /// <summary>
    /// The clearance is level like the hole: 30 - 2 - 5/12 and 33 + 2 + 5/12 ft, whatever the grade. Along a grade of 75 % they are a
    /// quarter more, and a clearance measured so let holes come about 6 in too near.
    /// </summary>
    [Fact]
    public void OnASlopeTheClearanceIsLevel()
    {
        var plan = Straight(100, 0.75, NoDig("gas", 30, 33, 2));
        var stations = plan.Lines[0].Posts.Select(p => p.Station.Feet).ToList();
        Assert.DoesNotContain(stations, s => s > 27.583334 && s < 35.416666);
    }

    [Fact]
    public void ABendInAStretchIsToldWithTheNameOfTheStretch()
    {
        var plan = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 50), (2, 100)])) with { Obstacles = [NoDig("gas", 48, 50)] });
        var told = Assert.Single(plan.Problems, p => p.Code == ProblemCode.PinInZone);
        Assert.Equal("A post that must stand here lies in the no-dig stretch 'gas'.", ProblemText.Message(told, UnitSystem.UsCustomary));
    }
}
