using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Problems;

/// <summary>Every slip a job can have: told by its code at its place, all together, and no half plan.</summary>
public sealed class JobProblemTests
{
    private static readonly Job straight = Some.StraightHundred();
    private static readonly Spec spec = straight.Specs[0];
    private static readonly Line line = straight.Lines[0];
    private static readonly Gate walk = Some.Gate("gate", "main/leg1", "walk", 20, 4);
    private static readonly Obstacle zone = new()
    {
        Id = new("zone"),
        Leg = new("main/leg1"),
        Kind = Obstacle.NoDig,
        From = Length.FromFeet(30),
        To = Length.FromFeet(33),
    };

    private static Job With(Spec other) => straight with { Specs = [other] };

    private static Job With(params Gate[] gates) => straight with { Gates = gates };

    private static Job With(Obstacle obstacle) => straight with { Obstacles = [obstacle] };

    private static Job With(Line other) => straight with { Lines = [other] };

    private static Vertex At(string id, string order, double east, double north, Leg? leg = null)
        => new() { Id = new(id), Order = new(order), East = Length.FromFeet(east), North = Length.FromFeet(north), Leg = leg };

    /// <summary>Code, place in the document, job.</summary>
    private static IEnumerable<(ProblemCode Code, string Path, Job Job)> Slips()
    {
        yield return (ProblemCode.JobEmpty, "lines", straight with { Lines = [], Calibrations = [] });
        yield return (ProblemCode.IdTwice, "specs[1].id", straight with { Specs = [spec, spec] });
        yield return (ProblemCode.IdMissing, "lines[0].id", With(line with { Id = new("") }));
        yield return (ProblemCode.OrderKeyBad, "lines[0].vertices[1].order", With(line with { Vertices = [line.Vertices[0], line.Vertices[1] with { Order = line.Vertices[0].Order }] }));
        yield return (ProblemCode.NotFinite, "lines[0].vertices[1].east", With(line with { Vertices = [line.Vertices[0], line.Vertices[1] with { East = new Length(double.NaN) }] }));
        yield return (ProblemCode.RuleSetUnknown, "ruleSet", straight with { RuleSet = "moon" });
        yield return (ProblemCode.RuleSetOther, "ruleSet", straight with { RuleSet = "caltrans" });
        yield return (ProblemCode.RulePipe, "specs[0].linePost", With(spec with { LinePost = null }) with { AsSpecified = [new() { Rule = "post.lineSize", Value = 0.05 }] });
        yield return (ProblemCode.RulePipe, "specs[0].railSection", With(spec with { RailSection = null }) with { AsSpecified = [new() { Rule = "rail.size", Value = 0.05 }] });
        yield return (ProblemCode.RuleValue, "asSpecified[0].value", straight with { AsSpecified = [new() { Rule = "brace.atHeight", Value = 2 }] });
        yield return (ProblemCode.RuleUnknown, "asSpecified[0].rule", straight with { AsSpecified = [new() { Rule = "bay.maximum", Value = 3 }] });
        yield return (ProblemCode.RuleValue, "asSpecified[0].value", straight with { AsSpecified = [new() { Rule = "bay.max", Value = -3 }] });
        yield return (ProblemCode.SpecUnknown, "lines[0].spec", With(line with { Spec = new("other") }));
        yield return (ProblemCode.SpecHeight, "specs[0].height", With(spec with { Height = Length.FromInches(75) }));
        yield return (ProblemCode.SpecFabric, "specs[0].mesh", With(spec with { Gauge = "13" }));
        yield return (ProblemCode.SpecDiamonds, "specs[0].mesh", With(spec with { Mesh = Length.FromInches(1) }));
        yield return (ProblemCode.SpecSection, "specs[0].linePost", With(spec with { LinePost = "2.4-sch40" }));
        yield return (ProblemCode.SpecChoice, "specs[0].top", With(spec with { Top = "rope" }));
        yield return (ProblemCode.SpecChoice, "specs[0].brace", With(spec with { Brace = "maybe" }));
        yield return (ProblemCode.SpecRoll, "specs[0].roll", With(spec with { Roll = Length.FromFeet(5) }));
        yield return (ProblemCode.CalibrationSpec, "calibrations[0].spec", straight with { Calibrations = [Some.Calibration("other")] });
        yield return (ProblemCode.CalibrationRange, "calibrations[0].tenPickets", straight with { Calibrations = [new() { Spec = spec.Id, TenPickets = Length.FromInches(1.4) }] });
        yield return (ProblemCode.LineShort, "lines[0].vertices", With(line with { Vertices = [line.Vertices[0]] }));
        yield return (ProblemCode.LegShort, "lines[0].vertices[0]", With(line with { Vertices = [line.Vertices[0], line.Vertices[1] with { North = Length.FromInches(5) }] }));
        yield return (ProblemCode.LineVertexTwice, "lines[0].vertices[3]", With(line with { Closed = true, Vertices = [At("a", "1", 0, 0), At("b", "2", 0, 50), At("c", "3", 50, 50), At("d", "4", 0, 0)] }));
        yield return (ProblemCode.GradeSteep, "lines[0].vertices[0].leg.grade", With(line with { Vertices = [line.Vertices[0] with { Leg = line.Vertices[0].Leg! with { Grade = new Slope(1.2) } }, line.Vertices[1]] }));
        yield return (ProblemCode.LegUnknown, "gates[0].leg", With(walk with { Leg = new("nowhere") }));
        yield return (ProblemCode.GateSize, "gates[0]", With(walk with { Opening = Length.FromInches(10) }));
        yield return (ProblemCode.GateSize, "gates[0]", With(walk with { Opening = new Length(-1) }));
        yield return (ProblemCode.GateOutside, "gates[0]", With(walk with { NearFace = Length.FromFeet(97) }));
        yield return (ProblemCode.GateTooWide, "gates[0]", With(line with { Vertices = [line.Vertices[0], line.Vertices[1] with { North = Length.FromFeet(16) }] }) with { Gates = [walk with { Kind = "double", NearFace = Length.Zero, Opening = Length.FromFeet(16) }] });
        yield return (ProblemCode.GateOverlap, "gates", With(walk, Some.Gate("second", "main/leg1", "walk", 22, 4)));
        yield return (ProblemCode.GatePostUnlisted, "gates[0]", With(spec with { Height = Length.FromFeet(5) }) with { Gates = [walk with { Kind = "double", Opening = Length.FromFeet(40) }] });
        yield return (ProblemCode.ObstacleRange, "obstacles[0]", With(zone with { To = Length.FromFeet(29) }));
        yield return (ProblemCode.ObstacleRange, "obstacles[0]", With(zone with { To = Length.FromFeet(130) }));
    }

    public static TheoryData<int> SlipNumbers => [.. Enumerable.Range(0, Slips().Count())];

    [Theory]
    [MemberData(nameof(SlipNumbers))]
    public void ASlipIsToldAtItsPlaceAndThereIsNoHalfPlan(int number)
    {
        var (code, path, job) = Slips().ElementAt(number);
        var plan = Some.Plan(job);
        Assert.Contains(plan.Problems, p => p.Code == code && p.Place.Path == path);
        Assert.True(plan.HasErrors);
        Assert.Empty(plan.Lines);
        Assert.Empty(plan.Takeoff);
    }

    [Fact]
    public void SeveralSlipsAreToldTogether()
    {
        var job = straight with
        {
            Specs = [spec with { Height = Length.FromInches(75), LinePost = "x", Top = "rope" }],
            AsSpecified = [new() { Rule = "nothing", Value = 1 }],
            Gates = [walk with { Leg = new("nowhere") }],
        };
        HashSet<ProblemCode> told = [.. Some.Plan(job).Problems.Select(p => p.Code)];
        HashSet<ProblemCode> made =
            [ProblemCode.RuleUnknown, ProblemCode.LegUnknown, ProblemCode.SpecHeight, ProblemCode.SpecSection, ProblemCode.SpecChoice];
        Assert.Superset(made, told);
    }

    /// <summary>A plan that breaks a rule is still shown, with the problem at its station.</summary>
    [Fact]
    public void WhatBreaksARuleIsShownAtItsStation()
    {
        var wide = Some.Plan(With(zone with { From = Length.FromFeet(30), To = Length.FromFeet(44) }));
        var bay = Assert.Single(wide.Problems, p => p.Code == ProblemCode.BayTooLong);
        Assert.NotEmpty(wide.Lines);
        Assert.InRange(bay.Place.Station!.Value.Feet, 29, 30);

        var corner = Some.Job(Some.Line("main", false, [(0, 0), (0, 50), (50, 50)]));
        var inZone = Some.Plan(corner with { Obstacles = [zone with { From = Length.FromFeet(48), To = Length.FromFeet(50) }] });
        Assert.Equal(50, Assert.Single(inZone.Problems, p => p.Code == ProblemCode.TerminalInZone).Place.Station!.Value.Feet, 6);
    }

    [Fact]
    public void AnUnknownKindIsKeptAndToldButDoesNotStopThePlan()
    {
        var plan = Some.Plan(With(walk with { Kind = "drawbridge" }) with { Obstacles = [zone with { Kind = "swamp" }] });
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.GateKind);
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.ObstacleKind);
        Assert.NotEmpty(plan.Lines);
    }

    [Fact]
    public void AtExactlySixFeetTheBraceIsAskedForAndNotGuessed()
    {
        var plan = Some.Plan(With(spec with { Brace = null }));
        var question = Assert.Single(plan.Problems, p => p.Code == ProblemCode.BraceQuestion);
        Assert.Equal(Severity.Question, question.Severity);
        Assert.DoesNotContain(plan.Takeoff, t => t.Part == "truss-rod");
        Assert.Contains(Some.Plan(With(Some.Spec(8) with { Brace = null })).Takeoff, t => t.Part == "truss-rod");
        Assert.DoesNotContain(Some.Plan(With(Some.Spec(5) with { Brace = null })).Problems, p => p.Code == ProblemCode.BraceQuestion);
    }

    [Fact]
    public void AGateAtACornerSharesItsPostAndKeepsItsOpening()
    {
        var corner = Some.Job(Some.Line("main", false, [(0, 0), (0, 50), (50, 50)])) with { Gates = [walk with { NearFace = Length.FromFeet(45.8) }] };
        var plan = Some.Plan(corner);
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.GateMoved);
        var gate = plan.Lines[0].Gates.Single();
        Assert.Equal(4, gate.Opening.Feet, 9);
        Assert.Equal(50, plan.Lines[0].Posts[gate.ToPost].Station.Feet, 9);
        Assert.Equal(2, plan.Lines[0].Runs.Count);
    }

    [Fact]
    public void BuiltPostsOffTheLineAreTold()
    {
        var built = new BuiltFacts([new(new("b1"), new("nowhere"), Length.Zero), new(new("b2"), new("main/leg1"), Length.FromFeet(101))]);
        var codes = Some.Plan(straight, built).Problems.Select(p => p.Code).ToList();
        Assert.Contains(ProblemCode.BuiltLegUnknown, codes);
        Assert.Contains(ProblemCode.BuiltOutside, codes);
    }

    [Fact]
    public void EveryCodeHasWordsThatTakeItsFigures()
    {
        foreach (var code in Enum.GetValues<ProblemCode>())
        {
            var problem = new Problem(code, new(""), [.. Enumerable.Repeat<Figure>("x", 5)]);
            Assert.False(string.IsNullOrWhiteSpace(ProblemText.Message(problem, UnitSystem.UsCustomary)));
            Assert.False(string.IsNullOrWhiteSpace(ProblemText.Hint(problem, UnitSystem.Metric)));
        }
    }

    /// <summary>No template asks for a figure its problem does not carry.</summary>
    [Fact]
    public void EverySlipPrintsInBothUnits()
    {
        foreach (var (_, _, job) in Slips())
            foreach (var problem in Some.Plan(job).Problems)
                foreach (var units in Enum.GetValues<UnitSystem>())
                    Assert.DoesNotContain("{", ProblemText.Message(problem, units) + ProblemText.Hint(problem, units), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ProblemCode.SpecHeight, "No 2\" 9-ga fabric is made 6' 3\" high.", "It comes in 36\", 42\", 48\", 60\", 72\", 84\", 96\", 108\", 120\", 144\".")]
    [InlineData(ProblemCode.GateTooWide, "The gate needs 16' 2 7/8\" with its posts and the leg is 16' 0\" long.", "Choose a smaller opening or put the gate on a longer leg.")]
    [InlineData(ProblemCode.LegShort, "The leg is 5\" long.", "A leg is at least 6\" and runs between two different points.")]
    [InlineData(ProblemCode.GradeSteep, "A grade of 120 % cannot be fenced.", "Grades are at most 100 %; 12 % is written 0.12.")]
    [InlineData(ProblemCode.CalibrationRange, "Ten pickets over 1 3/8\" cannot be this mesh.", "For this mesh ten pickets measure between 11 9/16\" and 1' 6 3/8\". Count again, along the fabric.")]
    public void TheWordsSayWhatWouldBeRight(ProblemCode code, string message, string hint)
    {
        var (_, path, job) = Slips().First(s => s.Code == code);
        var problem = Some.Plan(job).Problems.First(p => p.Code == code && p.Place.Path == path);
        Assert.Equal(message, ProblemText.Message(problem, UnitSystem.UsCustomary));
        Assert.Equal(hint, ProblemText.Hint(problem, UnitSystem.UsCustomary));
    }
}
