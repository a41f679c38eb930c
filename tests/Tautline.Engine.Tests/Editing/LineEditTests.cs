using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

public sealed class LineEditTests
{
    private static readonly Job empty = Some.Job(Some.Line("x", false, [(0, 0), (0, 1)])) with { Lines = [] };

    [Fact]
    public void ALineIsDrawnFromPoints()
    {
        var after = Done(LineEdits.Draw(empty, [At(0, 0), At(0, 100), At(80, 100)], false, new("fence"), "north side", Ids));
        Assert.Equal([100, 80], LegFeet(after, "line-new"));
        Assert.False(Some.Plan(after).HasErrors);
    }

    [Fact]
    public void AClosedLineLeavesItsLastPointOut()
    {
        var after = Done(LineEdits.Draw(empty, [At(0, 0), At(0, 60), At(90, 60), At(90, 0), At(0, 0.2)], true, new("fence"), "", Ids));
        Assert.Equal([60, 90, 60, 90], LegFeet(after, "line-new"));
    }

    [Fact]
    public void OnePointIsNoLine() => Assert.Equal(ProblemCode.LineShort, Refused(LineEdits.Draw(empty, [At(0, 0), At(0, 0)], false, new("fence"), "", Ids)));

    [Fact]
    public void ASecondLineStandsBehindOneThatHadNoKey()
    {
        var job = Ell();
        job = job with { Lines = [job.Lines[0] with { Order = default }] };
        var after = Done(LineEdits.Draw(job, [At(0, 200), At(0, 300)], false, new("fence"), "", Ids));
        Assert.False(Some.Plan(after).HasErrors);
        Assert.Equal(["main", "line-new"], Some.Plan(after).Lines.Select(l => l.Id.Value));
    }

    [Fact]
    public void ALineGoesOnFromBothEnds()
    {
        var after = Done(LineEdits.Continue(Ell(), new("main"), false, At(80, 130), Ids));
        Assert.Equal([100, 80, 30], LegFeet(after));
        Assert.Equal([25, 100, 80], LegFeet(Done(LineEdits.Continue(Ell(), new("main"), true, At(0, -25), Ids))));
    }

    [Fact]
    public void ATieInStaysWhereItWas()
    {
        var job = Ell();
        job = job with { Lines = [job.Lines[0] with { Finish = new TieIn { Kind = "building" } }] };
        var outcome = LineEdits.Continue(job, new("main"), false, At(80, 130), Ids);
        Assert.Null(Done(outcome).Lines[0].Finish);
        Assert.Contains(outcome.Problems, p => p.Code == ProblemCode.EditTieOff);
    }

    [Fact]
    public void AnOpenLineIsClosed()
    {
        Assert.Equal([60, 80, 100], LegFeet(Done(LineEdits.Close(Some.Job(Some.Line("main", false, [(0, 0), (0, 60), (80, 60)])), new("main"), Ids))));
        var meeting = Some.Job(Some.Line("main", false, [(0, 0), (0, 60), (80, 60), (0.25, 0)]));
        Assert.Equal([60, 80, 100], LegFeet(Done(LineEdits.Close(meeting, new("main"), Ids))));
        Assert.Equal(ProblemCode.EditLastVertices, Refused(LineEdits.Close(Some.StraightHundred(), new("main"), Ids)));
    }

    /// <summary>Without its second side the yard starts where that side ended.</summary>
    [Fact]
    public void AClosedLineIsOpenedAtALeg()
    {
        var job = Yard() with { Gates = [Some.Gate("gate", "main/leg2", "walk", 40, 4)] };
        var after = Done(LineEdits.Open(job, new("main/leg2")));
        Assert.Equal([60, 90, 60], LegFeet(after));
        Assert.Equal("main/v3", LineShape.Of(after.Lines[0]).Vertices[0].Id.Value);
        Assert.Empty(after.Gates);
        Assert.False(Some.Plan(after).HasErrors);
    }

    [Fact]
    public void AClosedLineIsOpenedAtACorner()
    {
        var after = Done(LineTurns.Split(Yard(), new("main/v3"), Ids));
        Assert.Equal([60, 90, 60, 90], LegFeet(after));
        Assert.Equal(ProblemCode.EditSplitEnd, Refused(LineTurns.Split(Ell(), new("main/v1"), Ids)));
        Assert.False(Some.Plan(after).HasErrors);
    }

    [Fact]
    public void ALineIsCutInTwo()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg2", "walk", 40, 4)] };
        var after = Done(LineTurns.Split(job, new("main/v2"), Ids));
        Assert.Equal(2, after.Lines.Count);
        Assert.Equal([100], LegFeet(after));
        Assert.Equal([80], LegFeet(after, after.Lines[1].Id.Value));
        Assert.Equal(40, Near(after));
        Assert.False(Some.Plan(after).HasErrors);
    }

    /// <summary>A gate 10 ft from the start of the first leg of 100 ft is 86 ft from its other end; uphill becomes downhill.</summary>
    [Fact]
    public void AReversedLineKeepsEverythingWhereItStands()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 100), (80, 100)], [0.1, 0])) with
        {
            Gates = [Some.Gate("gate", "main/leg1", "cantilever", 10, 14) with { RunsBack = "end" }],
            Obstacles = [Obstacle("gas", "main/leg2", "no-dig", 5, 7)],
        };
        var after = Done(LineTurns.Reverse(job, new("main")));
        Assert.Equal([80, 100], LegFeet(after));
        Assert.Equal(76, Near(after));
        Assert.Equal("start", after.Gates[0].RunsBack);
        Assert.Equal((73.0, 75.0), (after.Obstacles[0].From.Feet, after.Obstacles[0].To.Feet));
        Assert.Equal(-0.1, LineShape.Of(after.Lines[0]).Vertices[1].Leg!.Grade.Ratio);
        Assert.Equal(Json(job), Json(Done(LineTurns.Reverse(after, new("main")))));
    }

    [Fact]
    public void ALineGoesWithWhatStandsAlongIt()
    {
        var job = Yard() with { Gates = [Some.Gate("gate", "main/leg2", "walk", 40, 4)] };
        var outcome = LineEdits.Delete(job, new("main"));
        Assert.Empty(Done(outcome).Lines);
        Assert.Empty(outcome.Job!.Gates);
    }

    /// <summary>From 20 to 50 ft of a leg of 100: three legs, the middle one with the other spec.</summary>
    [Fact]
    public void AStretchGetsASpecOfItsOwn()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 100), (80, 100)]), Some.Spec(), Some.Spec(8, "tall"));
        var after = Done(LineEdits.SetSpec(job, new("main"), Feet(20), Feet(50), new("tall"), Ids));
        Assert.Equal([20, 30, 50, 80], LegFeet(after));
        Assert.Equal([null, "tall", null, null], LineShape.Of(after.Lines[0]).Vertices.Take(4).Select(v => v.Leg?.Spec?.Value));
        var over = Done(LineEdits.SetSpec(job, new("main"), Feet(90), Feet(180), new("tall"), Ids));
        Assert.Equal([90, 10, 80], LegFeet(over));
        Assert.Equal([null, "tall", "tall"], LineShape.Of(over.Lines[0]).Vertices.Take(3).Select(v => v.Leg?.Spec?.Value));
    }
}
