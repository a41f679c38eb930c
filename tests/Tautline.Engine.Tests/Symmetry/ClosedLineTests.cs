using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>A closed line has no end: what stands near its first corner concerns the legs on both sides.</summary>
public sealed class ClosedLineTests
{
    /// <summary>60 by 90 ft; the fourth leg, 90 ft, comes back to the first corner.</summary>
    private static readonly Job yard = Some.Job(Some.Line("yard", true, [(0, 0), (0, 60), (90, 60), (90, 0)]));

    private static Obstacle Stretch(string kind, double from, double to, double clear = 0)
        => new() { Id = new("stretch"), Leg = new("yard/leg4"), Kind = kind, From = Length.FromFeet(from), To = Length.FromFeet(to), Clearance = Length.FromFeet(clear) };

    private static PostPlan First(Plan plan) => Assert.Single(plan.Lines[0].Posts, p => p.Station == Length.Zero);

    [Fact]
    public void ASlabThatEndsAtTheFirstCornerHoldsItsPost()
        => Assert.All(EitherWay.Plans(yard with { Obstacles = [Stretch("slab", 80, 90)] }), p => Assert.Equal(Support.Cored, First(p).Support));

    [Fact]
    public void ANoDigStretchThatEndsAtTheFirstCornerIsToldThere()
        => Assert.All(EitherWay.Plans(yard with { Obstacles = [Stretch("no-dig", 88, 90)] }), p =>
            Assert.Equal(Length.Zero, Assert.Single(p.Problems, t => t.Code == ProblemCode.TerminalInZone).Place.Station));

    /// <summary>
    /// 12 ft of clearance from the stretch's end at 89 ft reach 11 ft into the next leg, and half of a 10-in hole 5 in more: the
    /// first line post that may stand is at 11.4167 ft, over the limit of 10 ft.
    /// </summary>
    [Fact]
    public void AClearanceReachesRoundTheFirstCorner()
        => Assert.All(EitherWay.Plans(yard with { Obstacles = [Stretch("no-dig", 88, 89, 12)] }), p =>
        {
            var stations = p.Lines[0].Posts.Where(post => post.Kind == PostKind.Line).Select(post => post.Station.Feet).ToList();
            Assert.Equal(11 + 5 / 12.0, Math.Min(stations[0], 300 - stations[^1]), 6);
        });

    [Fact]
    public void AGateNextToTheFirstCornerIsToldAsTooClose()
    {
        // The jamb's centre is half of 2.375 in beyond the far face, 1 ft before the corner.
        var job = yard with { Gates = [Some.Gate("gate", "yard/leg4", "walk", 90 - 1 - 4 - 2.875 / 24, 4)] };
        Assert.All(EitherWay.Plans(job), p =>
            Assert.Equal(1, new Length(Assert.Single(p.Problems, t => t.Code == ProblemCode.PostsClose).Figures[0].Value).Feet, 6));
    }
}
