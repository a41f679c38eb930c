using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Layout;

/// <summary>The hand counts of docs/checks/ground.md, and what a plan tells about its ground.</summary>
public sealed class GroundPlanTests
{
    private static Length Feet(double feet) => Length.FromFeet(feet);

    private static GroundShot Shot(double at, double? height = null, double? rod = null, double? again = null) => new()
    {
        Leg = new("main/leg1"),
        At = Feet(at),
        Height = height is { } h ? Feet(h) : null,
        Rod = rod is { } r ? Feet(r) : null,
        Again = again is { } a ? Feet(a) : null,
    };

    private static Job On(LineFit? fit, params GroundShot[] shots)
    {
        var job = Some.StraightHundred();
        return job with { Lines = [job.Lines[0] with { Ground = new LineGround { Shots = shots }, Fit = fit }] };
    }

    private static Job Rod(LineFit? fit = null) => On(fit, Shot(0, 100, 5), Shot(40, rod: 1, again: 6), Shot(100, rod: 0));

    private static void Is(double inches, Length? found) => Assert.Equal(inches, found!.Value.Inches, 5e-5);

    [Fact]
    public void ARodAndALevelGiveTheSlope()
    {
        var line = Some.Plan(Rod()).Lines[0];
        Is(1205.985075, line.Along);
        Assert.Equal(12, line.Posts.Count);
        foreach (var post in line.Posts.Skip(1).SkipLast(1))
        {
            Is(71.359104, post.AboveGround);
            Is(101.359104, post.CutLength);
            Is(102, post.OrderLength);
            Assert.Equal(0.1, post.Grade.Ratio, 1e-6);
        }
        Is(105.359104, line.Posts[0].CutLength);
        Is(108, line.Posts[^1].OrderLength);
        Is(1275.359104, line.Posts[0].TopHeight);
        Is(1395.359104, line.Posts[^1].TopHeight);
        Is(1200, line.Posts[0].GroundHeight);
    }

    [Fact]
    public void RailAndFabricFollowTheFittedLine()
    {
        var plan = Some.Plan(Rod());
        var run = Assert.Single(plan.Lines[0].Runs);
        Is(1203.110075, run.Rail);
        Is(1201.110075, run.Fabric);
        Is(7.2, run.Start.Mismatch);
        Is(7.2, run.Finish.Mismatch);
        Is(0, run.Telescoping);
        Assert.Equal(11, run.Bays);
        Assert.Empty(plan.Lines[0].Grading);
        Assert.Empty(plan.Lines[0].Fit!.Bindings);
        Assert.True(plan.Lines[0].Fit!.Sound);
        Assert.All(run.Fitted, b => Is(1, b.LeastGap));
        Assert.DoesNotContain(plan.Problems, p => p.Severity >= Severity.Warning);
    }

    [Fact]
    public void AStepIsATerminalAndReachesTheUpperSide()
    {
        var plan = Some.Plan(Rod(new LineFit { Mode = "stepped" }));
        var line = plan.Lines[0];
        Assert.Equal(11, line.Runs.Count);
        Assert.All(line.Runs, r => Assert.Equal(1, r.Bays));
        Assert.Equal(10, line.Posts.Count(p => p.Kind == PostKind.GradeBreak));
        foreach (var post in line.Posts.SkipLast(1)) Is(84.909091, post.AboveGround);
        Is(74, line.Posts[^1].AboveGround);
        Assert.Equal(11, line.Grading.Count);
        Assert.All(line.Grading, g => Assert.False(g.TooHigh));
        Assert.All(line.Grading, g => Is(8.909091, g.Depth));
        Assert.Equal(30.315657, line.Grading.Sum(g => g.Volume.CubicFeet), 1e-4);
        Assert.Equal(30.315657, plan.Takeoff.Single(t => t.Part == "fill").Net / 0.028316846592, 1e-4);
        Assert.Equal(10, plan.Problems.Count(p => p.Code == ProblemCode.StepTerminal));
    }

    [Fact]
    public void APostOfAGateReachesItsLeaf()
    {
        var plan = Some.Plan(Rod() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 48, 4)] });
        var gate = Assert.Single(plan.Lines[0].Gates);
        Is(80.0875, plan.Lines[0].Posts[gate.FromPost].AboveGround);
        Is(75.359104, plan.Lines[0].Posts[gate.ToPost].AboveGround);
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.GateOnSlope);
    }

    private static Job Broken(string? breakPosts = null)
        => On(new LineFit { BreakPosts = breakPosts }, Shot(0, 100), Shot(50, 100), Shot(100, 85));

    [Fact]
    public void ATerminalStandsWhereTheGroundBreaks()
    {
        var plan = Some.Plan(Broken());
        var line = plan.Lines[0];
        var post = Assert.Single(line.Posts, p => p.Kind == PostKind.GradeBreak);
        Assert.Equal(50, post.Station.Feet, 6);
        Assert.Equal([5, 6], line.Runs.Select(r => r.Bays));
        Assert.All(line.Grading, g => Assert.True(g.Depth.Inches <= 1.1725, $"{g.Depth.Inches} in"));
        Assert.Single(plan.Problems, p => p.Code == ProblemCode.GroundBreakTerminal);
    }

    [Fact]
    public void WithoutBreakPostsTheGroundIsGraded()
    {
        var line = Some.Plan(Broken("no")).Lines[0];
        Assert.DoesNotContain(line.Posts, p => p.Kind == PostKind.GradeBreak);
        Assert.True(line.Grading.Max(g => g.Depth.Inches) > 3);
        var fitted = Assert.Single(line.Runs).Fitted;
        for (var i = 1; i < fitted.Count; i++)
            Assert.True(Math.Abs(Slope(fitted[i]) - Slope(fitted[i - 1])) <= 0.15 + 1e-6);
    }

    private static double Slope(BayPlan bay) => (bay.TopTo - bay.Top) / (bay.To - bay.From);

    [Fact]
    public void ASettledTopIsKept()
    {
        var job = Rod();
        var top = Feet(106.9);
        var line = Some.Plan(job with { Lines = [job.Lines[0] with { Finish = new TieIn { Kind = "fence", Section = "2.875-sch40", Top = Feet(116) } }], Pins = [new Pin { Id = new("pin"), Leg = new("main/leg1"), At = Feet(10), Top = top }] }).Lines[0];
        Assert.Equal(106.9, line.Runs[0].Fitted.Single(b => Math.Abs(b.From.Feet - 10) < 1e-6).Top.Feet, 1e-7);
        Assert.Equal(116, line.Runs[^1].Fitted[^1].TopTo.Feet, 1e-7);
    }

    [Fact]
    public void EveryFigureOverGroundIsRecomputed()
    {
        foreach (var job in new[] { Rod(), Broken(), Rod(new LineFit { Mode = "stepped" }) })
            Reasons.FactCheck.All(Some.Plan(job));
    }

    [Theory]
    [InlineData("shots", ProblemCode.GroundFewShots)]
    [InlineData("surface", ProblemCode.GroundMissing)]
    [InlineData("string", ProblemCode.SpecChoice)]
    public void GroundThatIsNotThereIsTold(string from, ProblemCode code)
    {
        var job = Some.StraightHundred();
        var plan = Some.Plan(job with { Lines = [job.Lines[0] with { Ground = new LineGround { From = from } }] });
        Assert.Contains(plan.Problems, p => p.Code == code);
        Assert.Empty(plan.Lines);
    }

    [Fact]
    public void BadShotsAreToldTogether()
    {
        var plan = Some.Plan(On(null, Shot(0, rod: 3), Shot(10), Shot(120, 100), Shot(20, 100) with { Leg = new("other") }));
        Assert.Equal(
            [ProblemCode.InstrumentUnknown, ProblemCode.GroundShotEmpty, ProblemCode.GroundShotOutside, ProblemCode.GroundShotLeg, ProblemCode.GroundFewShots],
            plan.Problems.Select(p => p.Code).Where(c => c is not ProblemCode.RollUncalibrated));
    }

    [Fact]
    public void WhatIsNotMeasuredIsToldAndPlannedLevel()
    {
        var plan = Some.Plan(On(null, Shot(20, 100), Shot(60, 101)));
        Assert.Equal([(0.0, 20.0), (60.0, 100.0)], plan.Problems.Where(p => p.Code == ProblemCode.GroundGap).Select(p => (Math.Round(p.Figures[0].Value / 0.3048, 6), Math.Round(p.Figures[1].Value / 0.3048, 6))));
        Assert.Equal(101, plan.Lines[0].Posts[^1].GroundHeight!.Value.Feet, 9);
    }

    [Fact]
    public void ALevelRunThatMissesIsTold()
    {
        var plan = Some.Plan(On(null, Shot(0, 100, 5), Shot(50, 101, 3.9), Shot(100, rod: 3)));
        var miss = Assert.Single(plan.Problems, p => p.Code == ProblemCode.LevelMisses);
        Assert.Equal(0.1, miss.Figures[0].Value / 0.3048, 9);
    }

    [Fact]
    public void FeetReadAsMetresAreTold()
        => Assert.Contains(Some.Plan(On(null, Shot(0, 300), Shot(20, 340), Shot(100, 350))).Problems, p => p.Code == ProblemCode.GroundSteep);
}
