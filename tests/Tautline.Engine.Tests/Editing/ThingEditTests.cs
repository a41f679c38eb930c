using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

/// <summary>Gates, stretches, pins, the history and places on lines.</summary>
public sealed class ThingEditTests
{
    private static readonly Gate walk = Some.Gate("", "", "walk", 0, 4);

    [Fact]
    public void AGateIsPlacedByItsMiddleAndKeptOnItsLeg()
    {
        Assert.Equal(38, Near(Done(GateEdits.Place(Ell(), new("main/leg1"), Feet(40), walk, Ids)), "gate-new"));
        Assert.Equal(96, Near(Done(GateEdits.Place(Ell(), new("main/leg1"), Feet(120), walk, Ids)), "gate-new"));
        Assert.Equal(0, Near(Done(GateEdits.Place(Ell(), new("main/leg1"), Feet(1), walk, Ids)), "gate-new"));
    }

    [Fact]
    public void AGateIsDraggedToAnotherLeg()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)] };
        var after = Done(GateEdits.Move(job, new("gate"), new("main/leg2"), Feet(20)));
        Assert.Equal(("main/leg2", 18.0), (after.Gates[0].Leg.Value, Near(after)));
    }

    /// <summary>From 4 to 6 ft: in the leg the middle stays, at its end the face there.</summary>
    [Theory]
    [InlineData(40, 39)]
    [InlineData(0.5, 0.5)]
    [InlineData(95.5, 93.5)]
    public void AResizedGateStaysWhereItIsHeld(double near, double now)
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", near, 4)] };
        Assert.Equal(now, Near(Done(GateEdits.Resize(job, new("gate"), Feet(6)))));
    }

    [Fact]
    public void AGateThatCannotBeIsRefused()
    {
        Assert.Equal(ProblemCode.GateSize, Refused(GateEdits.Place(Ell(), new("main/leg1"), Feet(40), walk with { Opening = Feet(30) }, Ids)));
        Assert.Equal(ProblemCode.GatePostUnnamed, Refused(GateEdits.Place(Ell(), new("main/leg1"), Feet(40), walk with { Kind = "rolling", Opening = Feet(20) }, Ids)));
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)] };
        Assert.Equal(ProblemCode.GateOverlap, Refused(GateEdits.Place(job, new("main/leg1"), Feet(46.5), walk, Ids)));
    }

    /// <summary>70 ft lie before it, 16 behind: the leaf runs back towards the start.</summary>
    [Fact]
    public void ASlidingGateRunsBackToTheRoomierSide()
        => Assert.Equal("start", Done(GateEdits.Place(Ell(), new("main/leg1"), Feet(77), walk with { Kind = "cantilever", Opening = Feet(14) }, Ids)).Gates[0].RunsBack);

    /// <summary>Dragged from station 90 to 120 over the corner at 100: 10 ft on each of the two legs, and 10 ft more.</summary>
    [Fact]
    public void AStretchOverACornerIsEnteredOnBothLegs()
    {
        var like = Obstacle("", "", "no-dig", 0, 0);
        var after = Done(StretchEdits.Place(Ell(), new("main"), Feet(120), Feet(90), like, Ids));
        Assert.Equal([("main/leg1", 90, 100), ("main/leg2", 0, 20)], after.Obstacles.Select(o => (o.Leg.Value, Math.Round(o.From.Feet, 6), Math.Round(o.To.Feet, 6))));
        Assert.Equal(2, after.Obstacles.Select(o => o.Id).Distinct().Count());
        Assert.Equal(ProblemCode.EditStretchEmpty, Refused(StretchEdits.Place(Ell(), new("main"), Feet(90), Feet(90), like, Ids)));
        Assert.Equal(ProblemCode.ClosureDepth, Refused(StretchEdits.Place(Ell(), new("main"), Feet(90), Feet(95), like with { Kind = "swale" }, Ids)));
    }

    [Fact]
    public void AMovedStretchKeepsItsLengthWithinTheLeg()
    {
        var job = Ell() with { Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 10, 15)] };
        var moved = Done(StretchEdits.Move(job, new ObstacleId("gas"), new("main/leg2"), Feet(78))).Obstacles[0];
        Assert.Equal((75.0, 80.0), (Math.Round(moved.From.Feet, 6), Math.Round(moved.To.Feet, 6)));
        var sized = Done(StretchEdits.Resize(job, new ObstacleId("gas"), Feet(20), Feet(-3))).Obstacles[0];
        Assert.Equal((0.0, 20.0), (sized.From.Feet, sized.To.Feet));
    }

    [Fact]
    public void APinIsSetMovedAndTakenOut()
    {
        var job = Done(PlaceEdits.Pin(Ell(), new("main/leg1"), Feet(24), true, Ids));
        Assert.Contains(Some.Plan(job).Lines[0].Posts, p => p.Station == Feet(24));
        var moved = Done(PlaceEdits.Move(job, new("pin-new"), new("main/leg1"), Feet(130)));
        Assert.Equal(100, moved.Pins[0].At.Feet, 6);
        Assert.Empty(Done(PlaceEdits.Delete(moved, new("pin-new"))).Pins);
    }

    [Fact]
    public void UndoAndRedoGoBackAndForth()
    {
        var (first, second) = (Ell(), Done(VertexEdits.Move(Ell(), new("main/v2"), At(0, 90))));
        var history = JobHistory.Of(first).Push(new(EditKind.MoveVertex, "main/v2"), second);
        Assert.Equal(Json(first), Json(history.Undo().Job));
        Assert.Equal(Json(second), Json(history.Undo().Redo().Job));
        Assert.False(history.CanRedo);
        Assert.False(history.Undo().CanUndo);
        Assert.Equal(EditKind.MoveVertex, history.UndoLabel!.Value.Kind);
    }

    [Fact]
    public void ADragIsOneStep()
    {
        var label = new EditLabel(EditKind.MoveVertex, "v");
        var jobs = Enumerable.Range(0, 6).Select(i => Ell() with { Name = $"{i}" }).ToList();
        var history = JobHistory.Of(jobs[0]).Push(label, jobs[1], true).Push(label, jobs[2], true).Push(label, jobs[3], true).Settle();
        Assert.Equal("0", history.Undo().Job.Name);
        history = history.Push(label, jobs[4], true).Settle().Push(label with { Subject = "w" }, jobs[5], true);
        Assert.Equal(["4", "3", "0"], new[] { history.Undo(), history.Undo().Undo(), history.Undo().Undo().Undo() }.Select(h => h.Job.Name));
    }

    [Fact]
    public void TheHistoryIsBounded()
    {
        var history = JobHistory.Of(Ell() with { Name = "0" }, 3);
        for (var i = 1; i <= 10; i++) history = history.Push(new(EditKind.RenameJob, $"{i}"), Ell() with { Name = $"{i}" });
        while (history.CanUndo) history = history.Undo();
        Assert.Equal("7", history.Job.Name);
    }

    /// <summary>3 ft west of the first leg, 40 ft along: 3 ft to its left.</summary>
    [Fact]
    public void APointFindsItsPlaceOnTheLine()
    {
        var place = Placing.Nearest(Ell(), At(-3, 40), Feet(10))!;
        Assert.Equal(("main/leg1", 40.0, -3.0), (place.Leg.Value, Math.Round(place.At.Feet, 6), Math.Round(place.Offset.Feet, 6)));
        Assert.Null(Placing.Nearest(Ell(), At(-30, 40), Feet(10)));
        Assert.Equal(130, Placing.Nearest(Ell(), At(30, 95), Feet(10))!.Station.Feet, 6);
        Assert.Equal(("main/leg2", 20.0), (Placing.AtStation(Ell(), new("main"), Feet(120))!.Leg.Value, Math.Round(Placing.AtStation(Ell(), new("main"), Feet(120))!.At.Feet, 6)));
    }

    private static Snap? Best(SnapAsk ask) => Snapping.Candidates(Ell(), ask) is [var best, ..] ? best : null;

    [Fact]
    public void APointSnapsToWhatIsNear()
    {
        var ask = new SnapAsk(At(80.4, 99.8), Feet(1), null, null, Feet(1), null);
        Assert.Equal((SnapKind.Vertex, At(80, 100)), (Best(ask)!.Kind, Best(ask)!.Point));
        Assert.Equal(SnapKind.OnLeg, Best(ask with { Point = At(0.4, 40) })!.Kind);
        Assert.Equal(SnapKind.Extension, Best(ask with { Point = At(0.4, 140) })!.Kind);
        Assert.Null(Best(ask with { Point = At(40, 40) }));
    }

    /// <summary>From (200, 0), coming from the west: 29.7 ft on and a little to the side is straight on, 30 ft; nearly north is a right angle.</summary>
    [Fact]
    public void APointSnapsToRightAnglesAndRoundLengths()
    {
        var ask = new SnapAsk(At(229.7, 0.3), Feet(1), At(200, 0), Direction.DueEast, Feet(1), null);
        var on = Best(ask)!;
        Assert.Equal((SnapKind.Straight, true, 230.0, 0.0), (on.Kind, on.IsRound, Math.Round(on.Point.East.Feet, 6), Math.Round(on.Point.North.Feet, 6)));
        var square = Best(ask with { Point = At(200.3, 20.2) })!;
        Assert.Equal((SnapKind.RightAngle, true, 200.0, 20.0), (square.Kind, square.IsRound, Math.Round(square.Point.East.Feet, 6), Math.Round(square.Point.North.Feet, 6)));
    }
}
