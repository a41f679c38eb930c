using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Hang;

/// <summary>
/// Odd heights, trimmed from a stocked one. By hand: 84 in of 2-in fabric counts 24 1/2 diamonds (catalogue, from memory), 3.4286 in each; to 78 in
/// 1.75 come off, so 2 whole ones, and 22 1/2 stay, 77.14 in tall.
/// </summary>
public sealed class TrimTests
{
    private static Plan Trimmed(double height, double from)
        => Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec(height / 12) with { CutFrom = Length.FromInches(from) }) with { Calibrations = [Some.Calibration()] });

    [Fact]
    public void TwoDiamondsComeOffAndTwentyTwoAndAHalfStay()
    {
        var plan = Trimmed(78, 84);
        Assert.False(plan.HasErrors);
        Assert.Equal(22.5, plan.Specs[0].Diamonds);
        var told = Assert.Single(plan.Problems, p => p.Code == ProblemCode.SpecTrimmed);
        var message = ProblemText.Message(told, UnitSystem.UsCustomary);
        Assert.Contains("2 diamonds come off its lower edge", message, StringComparison.Ordinal);
        Assert.Contains("6' 5 1/8\"", message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheMeshIsThatOfTheFabricAsItWasWoven()
    {
        var open = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec(7))).Specs[0];
        var cut = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec(6.5) with { CutFrom = Length.FromFeet(7) })).Specs[0];
        Assert.Equal((open.AdvanceLow, open.AdvanceHigh, open.HalfDiamond), (cut.AdvanceLow, cut.AdvanceHigh, cut.HalfDiamond));
    }

    [Fact]
    public void ItTakesItsRollsFromTheTallerFabricAndWeighsWhatThatWeighs()
    {
        var (cut, whole) = (Trimmed(78, 84), Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec(7)) with { Calibrations = [Some.Calibration()] }));
        Assert.Equal(Fabric(whole).Mass, Fabric(cut).Mass);
        Assert.Equal(whole.Rolls!.Kinds[0].Kind.Split('/')[0], cut.Rolls!.Kinds[0].Kind.Split('/')[0]);
        Assert.True(cut.Lines[0].Posts[1].CutLength < whole.Lines[0].Posts[1].CutLength);
    }

    private static Engine.Takeoff.TakeoffLine Fabric(Plan plan) => plan.Takeoff.Single(t => t.Part == "fabric");

    [Theory]
    [InlineData(84, 72, ProblemCode.SpecTrim)]
    [InlineData(83.5, 84, ProblemCode.SpecTrimCount)]
    [InlineData(6, 84, ProblemCode.SpecTrimCount)]
    public void WhatCannotBeTrimmedIsTold(double height, double from, ProblemCode code)
    {
        var plan = Trimmed(height, from);
        Assert.True(plan.HasErrors);
        Assert.Contains(plan.Problems, p => p.Code == code);
    }

    [Fact]
    public void LacedWidthsAreNotTrimmed()
    {
        var spec = Some.Spec(12) with { Laced = 2, CutFrom = Length.FromFeet(7) };
        Assert.Contains(Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), spec)).Problems, p => p.Code == ProblemCode.SpecTrim);
    }

    [Fact]
    public void EveryFigureOfTrimmedFabricIsRecomputed() => Reasons.FactCheck.All(Trimmed(78, 84));
}
