using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Checks;

// The tail of a cantilever leaf and its second roller post.
public sealed partial class ExtrasTests
{
    private static Plan Sliding(double near, double opening, string back, double[]? own = null, Func<Job, Job>? change = null)
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, own is null ? 100 : 200)])) with
        {
            Gates = [Some.Gate("drive", "main/leg1", "cantilever", near, opening) with { RunsBack = back }],
            AsSpecified = own is not { Length: 2 } ? [] : [new() { Rule = "gate.cantileverTail", Value = own[0] }, new() { Rule = "gate.cantileverOverhang", Value = Feet(own[1]).Metres }],
        };
        return Some.Plan(change is null ? job : change(job));
    }

    [Theory]
    [InlineData(8, 6.5, 14.5)]
    [InlineData(10, 6.5, 16.5)]
    [InlineData(10.5, 7.5, 18)]
    [InlineData(12, 7.5, 19.5)]
    [InlineData(16, 10, 26)]
    [InlineData(20, 10, 30)]
    [InlineData(22, 11, 33)]
    [InlineData(24, 12, 36)]
    [InlineData(30, 15, 45)]
    public void ACantileverLeafHasTheTailItsOpeningAsks(double opening, double tail, double leaf)
    {
        var gate = Sliding(30, opening, "end", []).Lines[0].Gates[0];
        Assert.Equal((tail, leaf), (Math.Round(gate.Tail!.Value.Feet, 9), Math.Round(gate.Leaf.Feet, 9)));
    }

    [Theory]
    [InlineData(0.5, 5, 10)]
    [InlineData(0, 5, 5)]
    public void TheMakersOwnTailGoesOverBoth(double share, double least, double tail)
        => Assert.Equal(tail, Sliding(30, 20, "end", [share, least]).Lines[0].Gates[0].Tail!.Value.Feet, 9);

    [Fact]
    public void TheTailSaysWhy()
    {
        var plan = Sliding(30, 16, "end");
        Assert.Equal("larger(opening x gate.cantileverTail, gate.cantileverOverhang)", ExprText.Symbols(Facts.Why(plan, new(FactKind.Tail, 0))!));
        Assert.Equal("first roller post + tail", ExprText.Symbols(Facts.Why(plan, new(FactKind.SecondRoller, 0))!));
        Assert.Equal("opening + tail", ExprText.Symbols(Facts.Why(plan, new(FactKind.Leaf, 0))!));
    }

    [Theory]
    [InlineData(30, "end", null, 674, 12.3333)]
    [InlineData(30, "start", null, 238, 0.6667)]
    [InlineData(35, "end", null, 734, 2.8)]
    [InlineData(35, "end", 68.0, 734, 19.0)]
    [InlineData(35, "end", 66.0, 734, null)]
    public void ASecondRollerPostNearAPostOfTheFenceIsTold(double near, string back, double? pin, double station, double? apart)
    {
        var plan = Sliding(near, 16, back, change: j => pin is not { } at ? j : j with { Pins = [new() { Id = new("p"), Leg = new("main/leg1"), At = Feet(at) }] });
        Assert.Equal(station, Inches(plan.Lines[0].Gates[0].SecondRoller!.Value));
        var told = plan.Problems.Where(p => p.Code == ProblemCode.RollerNearPost).Select(p => Math.Round(new Length(p.Figures[1].Value).Inches, 4));
        Assert.Equal(apart is { } d ? [d] : [], told);
    }

    /// <summary>100 ft square, gate in the last leg with its far face at 86 ft: first roller post 86 ft 2 in, second 96 ft 2 in, 46 in before the corner at the start.</summary>
    [Theory]
    [InlineData(70, 0)]
    [InlineData(72.5, 1)]
    public void ASecondRollerPostIsHeldAgainstTheCornerTheLineComesBackTo(double near, int told)
    {
        var square = Some.Job(Some.Line("main", true, [(0, 0), (0, 100), (100, 100), (100, 0)])) with
        {
            Gates = [Some.Gate("drive", "main/leg4", "cantilever", near, 16) with { RunsBack = "end" }],
        };
        Assert.Equal(told, Some.Plan(square).Problems.Count(p => p.Code == ProblemCode.RollerNearPost));
    }

    [Fact]
    public void ASecondRollerPostInANoDigStretchIsTold()
    {
        var plan = Sliding(30, 16, "end", change: j => j with { Obstacles = [Stretch("no-dig", 56, 57)] });
        Assert.Equal("The second roller post of the gate 'drive' stands in the no-dig stretch 'no-dig' or its clearance.", Said(plan, ProblemCode.RollerInZone));
        Assert.DoesNotContain(Sliding(30, 16, "start").Problems, p => p.Code == ProblemCode.RollerInZone);
    }
}
