using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

/// <summary>Hand-worked edits of vertices; the figures are laid out on squared paper, 3-4-5 triangles where a leg is slanted.</summary>
public sealed class VertexEditTests
{
    private static EditOutcome MoveCorner(Job job, double east, double north) => VertexEdits.Move(job, new("main/v2"), At(east, north));

    /// <summary>From (0, 100) to (0, 40): the first leg is 40, the second the long side of a 60-80-100 triangle.</summary>
    [Fact]
    public void AMovedCornerChangesItsTwoLegs() => Assert.Equal([40, 100], LegFeet(Done(MoveCorner(Ell(), 0, 40))));

    /// <summary>The corner goes 20 ft out along the first leg; a gate in the middle of that leg stays at its drive, 40 ft from the start.</summary>
    [Fact]
    public void AGateInTheLegStaysWhereItStands()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)] };
        Assert.Equal(40, Near(Done(MoveCorner(job, 0, 120))));
    }

    /// <summary>The start is moved 10 ft back: everything of the leg is 10 ft farther from it.</summary>
    [Fact]
    public void MovingTheStartOfALegShiftsWhatIsMeasuredFromIt()
    {
        var job = Ell() with
        {
            Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)],
            Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 31, 33.5)],
            Pins = [new Pin { Id = new("pin"), Leg = new("main/leg1"), At = Feet(70) }],
        };
        var after = Done(VertexEdits.Move(job, new("main/v1"), At(0, -10)));
        Assert.Equal(50, Near(after));
        Assert.Equal((41, 43.5), (Math.Round(after.Obstacles[0].From.Feet, 6), Math.Round(after.Obstacles[0].To.Feet, 6)));
        Assert.Equal(80, after.Pins[0].At.Feet, 6);
    }

    /// <summary>A gate 2 ft before the corner goes with it: 98 - 4 - 2 = 94 becomes 114.</summary>
    [Fact]
    public void AGateAtTheCornerGoesWithIt()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 94, 4)] };
        Assert.Equal(114, Near(Done(MoveCorner(job, 0, 120))));
    }

    /// <summary>The leg shrinks from 100 to 50 ft under a gate at 60 to 64: it is slid to the end, 46, and that is told.</summary>
    [Fact]
    public void AGateOffItsLegIsSlidBackAndTold()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 60, 4)] };
        var outcome = MoveCorner(job, 0, 50);
        Assert.Equal(46, Near(Done(outcome)));
        var slid = Assert.Single(outcome.Problems, p => p.Code == ProblemCode.EditGateSlid);
        Assert.Equal("The gate 'gate' was slid by 14' 0\" to stay on its leg.", ProblemText.Message(slid, Engine.Quantities.UnitSystem.UsCustomary));
    }

    [Fact]
    public void ALegTooShortForItsGateIsRefusedAndNothingChanged()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "double", 60, 16)] };
        var before = Json(job);
        Assert.Equal(ProblemCode.EditGateNoRoom, Refused(MoveCorner(job, 0, 16)));
        Assert.Equal(before, Json(job));
    }

    /// <summary>Slid by a corner that comes nearer, one gate would run into the other.</summary>
    [Fact]
    public void AGatePushedIntoAnotherIsRefused()
    {
        var job = Ell() with { Gates = [Some.Gate("a", "main/leg1", "walk", 40, 4), Some.Gate("b", "main/leg1", "walk", 60, 4)] };
        Assert.Equal(ProblemCode.GateOverlap, Refused(MoveCorner(job, 0, 45)));
    }

    [Fact]
    public void ABuriedLinePastTheNewEndIsCutOrTakenOutAndTold()
    {
        var job = Ell() with { Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 80, 90), Obstacle("water", "main/leg1", "no-dig", 40, 60)] };
        var outcome = MoveCorner(job, 0, 50);
        var left = Assert.Single(Done(outcome).Obstacles);
        Assert.Equal(("water", 40.0, 50.0), (left.Id.Value, left.From.Feet, left.To.Feet));
        Assert.Contains(outcome.Problems, p => p.Code == ProblemCode.EditMarkOff && p.Severity == Severity.Warning);
        Assert.Contains(outcome.Problems, p => p.Code == ProblemCode.EditMarkCut && p.Severity == Severity.Warning);
    }

    /// <summary>A slab from end to end still reaches from end to end.</summary>
    [Fact]
    public void WhatReachesTheCornerStillReachesIt()
    {
        var job = Ell() with { Obstacles = [Obstacle("slab", "main/leg1", "slab", 0, 100)] };
        Assert.Equal(130, Done(MoveCorner(job, 0, 130)).Obstacles[0].To.Feet, 6);
    }

    /// <summary>Swung about its start by 30 ft at the end, a mark at 50 ft is carried 15 ft or so.</summary>
    [Fact]
    public void MarksThatSwingWithTheLineAreTold()
    {
        var job = Ell() with { Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 49, 50)] };
        Assert.Contains(MoveCorner(job, 30, 95).Problems, p => p.Code == ProblemCode.EditMarksCarried);
    }

    [Fact]
    public void AVertexOnItsNeighbourIsRefused() => Assert.Equal(ProblemCode.LegShort, Refused(MoveCorner(Ell(), 0, 0.25)));

    [Fact]
    public void AnUnknownVertexIsRefused() => Assert.Equal(ProblemCode.EditUnknown, Refused(VertexEdits.Move(Ell(), new("nobody"), At(0, 0))));

    /// <summary>At 30 ft of 100: the gate at 40 is at 10 on the new leg, the no-dig stretch from 25 to 35 becomes 25 to 30 and 0 to 5.</summary>
    [Fact]
    public void AnInsertedVertexPartsTheLeg()
    {
        var job = Ell() with
        {
            Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)],
            Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 25, 35)],
            Works = [new SiteWork { Id = new("old"), Leg = new("main/leg1"), Kind = "removal", From = Feet(0), To = Feet(100), Posts = 10 }],
        };
        var after = Done(VertexEdits.Insert(job, new("main/leg1"), Feet(30), Ids));
        Assert.Equal([30, 70, 80], LegFeet(after));
        Assert.Equal("main/leg1", after.Lines[0].Vertices[0].Leg!.Id.Value);
        Assert.Equal(10, Near(after));
        Assert.Equal(after.Lines[0].Vertices[1].Leg!.Id, after.Gates[0].Leg);
        Assert.Equal([(25, 30), (0, 5)], after.Obstacles.Select(o => (Math.Round(o.From.Feet, 6), Math.Round(o.To.Feet, 6))));
        Assert.Equal([3, 7], after.Works.Select(w => w.Posts));
        Assert.True(after.Lines[0].Vertices[0].Order.CompareTo(after.Lines[0].Vertices[1].Order) < 0);
        Assert.True(after.Lines[0].Vertices[1].Order.CompareTo(after.Lines[0].Vertices[2].Order) < 0);
    }

    [Fact]
    public void AVertexInAGateIsRefused()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)] };
        Assert.Equal(ProblemCode.EditGateAcross, Refused(VertexEdits.Insert(job, new("main/leg1"), Feet(42), Ids)));
    }

    [Fact]
    public void InsertingThenDeletingGivesTheOldJob()
    {
        var job = Ell() with
        {
            Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)],
            Obstacles = [Obstacle("gas", "main/leg1", "no-dig", 25, 35)],
            Works = [new SiteWork { Id = new("old"), Leg = new("main/leg1"), Kind = "removal", From = Feet(0), To = Feet(100), Posts = 10 }],
        };
        var between = Done(VertexEdits.Insert(job, new("main/leg1"), Feet(30), Ids));
        Assert.Equal(Json(job), Json(Done(VertexEdits.Delete(between, between.Lines[0].Vertices[1].Id))));
    }

    /// <summary>The corner of a 60-80-100 triangle goes: its two legs become the long side. A gate 10 ft from the start stays there, one 10 ft from the end too.</summary>
    [Fact]
    public void DeletingACornerJoinsItsLegs()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 60), (80, 60)])) with
        {
            Gates = [Some.Gate("a", "main/leg1", "walk", 10, 4), Some.Gate("b", "main/leg2", "walk", 66, 4)],
        };
        var after = Done(VertexEdits.Delete(job, new("main/v2")));
        Assert.Equal([100], LegFeet(after));
        Assert.Equal((10, 86), (Near(after, "a"), Near(after, "b")));
    }

    [Fact]
    public void DeletingAnEndTakesItsLegAndTellsWhatWent()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg2", "walk", 40, 4)], Obstacles = [Obstacle("gas", "main/leg2", "no-dig", 5, 6)] };
        var outcome = VertexEdits.Delete(job, new("main/v3"));
        Assert.Equal([100], LegFeet(Done(outcome)));
        Assert.Empty(outcome.Job!.Gates);
        Assert.Equal(
            "What stood there went with it: 1 gate, 1 obstacle.",
            ProblemText.Message(Assert.Single(outcome.Problems), Engine.Quantities.UnitSystem.UsCustomary));
    }

    [Fact]
    public void TheStartOfAClosedLineCanBeDeleted()
    {
        var after = Done(VertexEdits.Delete(Yard(), new("main/v1")));
        Assert.Equal([90, 60, Math.Round(Math.Sqrt(90 * 90 + 60 * 60), 6)], LegFeet(after));
        Assert.False(Some.Plan(after).HasErrors);
    }

    [Fact]
    public void ALineKeepsItsLastVertices()
    {
        Assert.Equal(ProblemCode.EditLastVertices, Refused(VertexEdits.Delete(Some.StraightHundred(), new("main/v1"))));
        var triangle = Some.Job(Some.Line("main", true, [(0, 0), (0, 60), (80, 60)]));
        Assert.Equal(ProblemCode.EditLastVertices, Refused(VertexEdits.Delete(triangle, new("main/v1"))));
    }

    /// <summary>Rod readings: instrument at 105.0; the second shot reads 3.0, so 102.0. When it goes with its leg the third keeps its height of 101.</summary>
    [Fact]
    public void LevelledShotsKeepTheirHeightsWhenOneGoes()
    {
        GroundShot Shot(string leg, double at, double? height, double? rod) => new()
        {
            Leg = new(leg),
            At = Feet(at),
            Height = height is { } h ? new(h) : null,
            Rod = rod is { } r ? new(r) : null,
        };
        var line = Some.Line("main", false, [(0, 0), (0, 100), (80, 100)]) with
        {
            Ground = new LineGround { From = "shots", Shots = [Shot("main/leg2", 80, 100, 5), Shot("main/leg2", 10, null, 3), Shot("main/leg1", 50, null, 4)] },
        };
        var after = Done(VertexEdits.Delete(Some.Job(line), new("main/v3")));
        Assert.Equal(101, Assert.Single(after.Lines[0].Ground!.Shots).Height!.Value.Metres, 9);
        Assert.False(Some.Plan(after).HasErrors);
    }
}
