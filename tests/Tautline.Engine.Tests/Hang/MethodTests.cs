using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Hang;

/// <summary>
/// How a run is stretched. Rows 16 to 18 of trade_practice.md, common practice, no source: long pulls by machine, short ones by hand with a pull
/// bar about half the height wide; with two pullers setting the lower one slackens the upper. The lengths and the grade are our own figures.
/// </summary>
public sealed class MethodTests
{
    private static RunHang Hang(double feet, double heightFeet = 6, double grade = 0, params Obstacle[] obstacles)
        => Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, feet)], [grade]), Some.Spec(heightFeet)) with { Obstacles = obstacles }).Lines[0].Runs[0].Hang;

    private static Obstacle Wet(double from, double to)
        => new() { Id = new("bog"), Leg = new("main/leg1"), Kind = Obstacle.Wet, From = Length.FromFeet(from), To = Length.FromFeet(to) };

    [Theory]
    [InlineData(10, HangMethod.Short)]
    [InlineData(50, HangMethod.Hand)]
    [InlineData(60, HangMethod.Machine)]
    public void ByLength(double feet, HangMethod method) => Assert.Equal(method, Hang(feet).Method);

    [Theory]
    [InlineData(0.25, HangMethod.Machine, HangReason.Long)]
    [InlineData(0.26, HangMethod.Hand, HangReason.Steep)]
    public void NoMachineOnSteepGround(double grade, HangMethod method, HangReason reason)
    {
        var hang = Hang(120, grade: grade);
        Assert.Equal((method, reason), (hang.Method, hang.Reason));
    }

    [Fact]
    public void NoMachineOverWetGroundAndThenShorterPulls()
    {
        var (dry, wet) = (Hang(140), Hang(140, obstacles: Wet(60, 75)));
        Assert.Equal((HangMethod.Hand, HangReason.Wet), (wet.Method, wet.Reason));
        Assert.Single(dry.Pulls);
        Assert.Equal(3, wet.Pulls.Count);
        Assert.All(wet.Pulls, p => Assert.True(p.Fabric <= Length.FromFeet(50)));
    }

    [Fact]
    public void WetGroundBesideTheRunIsNothingToIt()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 100), (100, 100)]));
        var plan = Some.Plan(job with { Obstacles = [Wet(20, 30)] });
        Assert.Equal([HangReason.Wet, HangReason.Long], plan.Lines[0].Runs.Select(r => r.Hang.Reason));
    }

    [Theory]
    [InlineData(6, 1, 36)]
    [InlineData(7, 2, 42)]
    [InlineData(4, 1, 24)]
    public void TallFabricTakesTwoPullersAndTheBarIsHalfItsHeight(double heightFeet, int pullers, double barInches)
    {
        var hang = Hang(40, heightFeet);
        Assert.Equal(pullers, hang.Pullers);
        Assert.Equal(barInches, hang.PullBar!.Value.Inches, 9);
    }

    [Fact]
    public void AHandPullIsChainedToTheLastTerminalAndAMachineHoldsItself()
    {
        Assert.Equal(4, Hang(40).Anchor);
        Assert.Null(Hang(120).Anchor);
        var back = Some.Job(Some.Line("main", false, [(0, 0), (0, 40)])) with
        {
            Hangs = [new HangNote { Id = new("h"), Leg = new("main/leg1"), At = Length.FromFeet(10), Direction = "back" }],
        };
        Assert.Equal(0, Some.Plan(back).Lines[0].Runs[0].Hang.Anchor);
    }

    [Fact]
    public void WhatTheJobSaysGoesFirst()
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, 120)], [0.4])) with
        {
            Hangs = [new HangNote { Id = new("h"), Leg = new("main/leg1"), At = Length.FromFeet(10), Method = "machine" }],
        };
        var hang = Some.Plan(job).Lines[0].Runs[0].Hang;
        Assert.Equal((HangMethod.Machine, HangReason.Stated), (hang.Method, hang.Reason));
    }

    [Fact]
    public void AnOrderThatIsNoneIsTold()
    {
        var plan = Some.Plan(Some.StraightHundred() with { HangOrder = "random" });
        var told = Assert.Single(plan.Problems, p => p.Code == ProblemCode.SpecChoice);
        Assert.Equal("hangOrder", told.Place.Path);
    }
}
