using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

/// <summary>Exact measures typed; worked by hand on squared paper.</summary>
public sealed class LegEditTests
{
    /// <summary>Of an open line everything behind goes along: no other leg and no turn changes.</summary>
    [Fact]
    public void ATypedLengthTakesTheRestAlong()
    {
        var after = Done(LegEdits.SetLength(Ell(), new("main/leg1"), Feet(132.5)));
        Assert.Equal([132.5, 80], LegFeet(after));
        Assert.Equal([90], Turns(after));
        Assert.Equal(80, after.Lines[0].Vertices[2].East.Feet, 9);
        Assert.Equal(132.5, after.Lines[0].Vertices[2].North.Feet, 9);
    }

    /// <summary>The opposite side of a rectangle takes it up: it stays a rectangle.</summary>
    [Fact]
    public void AYardStaysARectangle()
    {
        var outcome = LegEdits.SetLength(Yard(), new("main/leg1"), Feet(70));
        Assert.Equal([70, 90, 70, 90], LegFeet(Done(outcome)));
        Assert.Equal([90, 90, 90, 90], Turns(outcome.Job!));
        Assert.Empty(outcome.Problems);
    }

    /// <summary>Each of its sides can be typed, the one that comes back to the start too.</summary>
    [Theory]
    [InlineData("main/leg2", 100, new double[] { 60, 100, 60, 100 })]
    [InlineData("main/leg3", 50, new double[] { 50, 90, 50, 90 })]
    [InlineData("main/leg4", 95, new double[] { 60, 95, 60, 95 })]
    public void AnySideOfAYardCanBeTyped(string leg, double feet, double[] sides)
        => Assert.Equal(sides, LegFeet(Done(LegEdits.SetLength(Yard(), new(leg), Feet(feet)))));

    /// <summary>A 60-80-100 triangle has no parallel side: the next leg takes it up and that is told.</summary>
    [Fact]
    public void ATriangleTurnsOtherwiseAndSaysSo()
    {
        var job = Some.Job(Some.Line("main", true, [(0, 0), (0, 60), (80, 60)]));
        var outcome = LegEdits.SetLength(job, new("main/leg1"), Feet(120));
        Assert.Equal([120, 100, 100], LegFeet(Done(outcome)));
        Assert.Contains(outcome.Problems, p => p.Code == ProblemCode.EditTurnsChanged);
    }

    /// <summary>From right 90 to left 90: the second leg points west.</summary>
    [Fact]
    public void ATypedTurnTurnsTheRest()
    {
        var after = Done(LegEdits.SetTurn(Ell(), new("main/v2"), -90));
        Assert.Equal([100, 80], LegFeet(after));
        Assert.Equal(-80, after.Lines[0].Vertices[2].East.Feet, 9);
        Assert.Equal(100, after.Lines[0].Vertices[2].North.Feet, 9);
    }

    [Fact]
    public void ATypedBearingTurnsTheLegAndTheRest()
    {
        var after = Done(LegEdits.SetBearing(Ell(), new("main/leg1"), Direction.DueEast));
        Assert.Equal((100.0, 0.0), (Math.Round(after.Lines[0].Vertices[1].East.Feet, 9), Math.Round(after.Lines[0].Vertices[1].North.Feet, 9)));
        Assert.Equal((100.0, -80.0), (Math.Round(after.Lines[0].Vertices[2].East.Feet, 9), Math.Round(after.Lines[0].Vertices[2].North.Feet, 9)));
    }

    [Fact]
    public void AnEndHasNoTurn() => Assert.Equal(ProblemCode.EditNoTurn, Refused(LegEdits.SetTurn(Ell(), new("main/v3"), 90)));

    /// <summary>A quarter circle of 40 ft radius has a chord of 56.5685 ft and an arc of 62.8319 ft (pi * 20). Half of that arc turns by 45 degrees.</summary>
    [Fact]
    public void AnArcKeepsItsRadius()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (40, 40)]));
        var bent = Done(LegEdits.SetCurve(job, new("main/leg1"), new LegCurve { Radius = Feet(40), Bends = "right" }));
        Assert.Equal(62.831853, LegFeet(bent)[0], 5);
        var half = Done(LegEdits.SetLength(bent, new("main/leg1"), Feet(31.415927)));
        Assert.Equal(31.415927, LegFeet(half)[0], 5);
        // R sin 45 north; R (1 - cos 45) east.
        Assert.Equal(28.284271, half.Lines[0].Vertices[1].North.Feet, 4);
        Assert.Equal(11.715729, half.Lines[0].Vertices[1].East.Feet, 4);
        Assert.Equal(ProblemCode.EditArcLength, Refused(LegEdits.SetLength(bent, new("main/leg1"), Feet(130))));
        Assert.Equal(ProblemCode.CurveTight, Refused(LegEdits.SetCurve(job, new("main/leg1"), new LegCurve { Radius = Feet(20), Bends = "right" })));
    }

    [Fact]
    public void AGateIsNotBent()
    {
        var job = Ell() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 40, 4)] };
        Assert.Equal(ProblemCode.GateOnCurve, Refused(LegEdits.SetCurve(job, new("main/leg1"), new LegCurve { Radius = Feet(80), Bends = "left" })));
    }

    [Fact]
    public void AnInsertedVertexPartsAnArcAndComesOutAgain()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (40, 40)]));
        var bent = Done(LegEdits.SetCurve(job, new("main/leg1"), new LegCurve { Radius = Feet(40), Bends = "right" }));
        var parted = Done(VertexEdits.Insert(bent, new("main/leg1"), Feet(20), Ids));
        Assert.Equal(20, LegFeet(parted)[0], 5);
        Assert.Equal(42.831853, LegFeet(parted)[1], 5);
        Assert.Equal(0, Turns(parted)[0], 5);
        Assert.Equal(Json(bent), Json(Done(VertexEdits.Delete(parted, parted.Lines[0].Vertices[1].Id))));
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(double.NaN)]
    [InlineData(-4)]
    public void ALengthThatIsNoneIsRefused(double feet) => Assert.Equal(ProblemCode.LegShort, Refused(LegEdits.SetLength(Ell(), new("main/leg1"), Feet(feet))));

    [Fact]
    public void AGradeTooSteepIsRefused() => Assert.Equal(ProblemCode.GradeSteep, Refused(LegEdits.SetGrade(Ell(), new("main/leg1"), new Slope(1.2))));
}
