using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Checks;

// Posts in few lengths.
public sealed partial class ExtrasTests
{
    private static Plan SteppedDown(double? classes)
    {
        var line = Some.Line("main", false, [(0, 0), (0, 40), (0, 70), (0, 130)], spec: "six");
        SpecId[] specs = [new("six"), new("five"), new("four")];
        line = line with { Vertices = [.. line.Vertices.Select((v, i) => v.Leg is { } leg ? v with { Leg = leg with { Spec = specs[i] } } : v)] };
        return Some.Plan(Some.Job(line, Some.Spec(6, "six"), Some.Spec(5, "five"), Some.Spec(4, "four")) with
        {
            AsSpecified = classes is { } most ? [new() { Rule = "post.lengthClasses", Value = most }] : [],
        });
    }

    /// <summary>'count x order length: cut off in all', inches, for the posts of a plan.</summary>
    private static string[] Lengths(Plan plan) => [.. plan.Takeoff.Where(t => t.Part == "post").Select(
        t => $"{t.Section} {t.Net} {t.Purchase} x {Inches(t.Size!.Value)}{(t.CutOffs is { } off ? $": {Inches(off)}" : "")}")];

    [Fact]
    public void PostsAreBoughtInFewLengthsWithLeastCutOff()
    {
        string[] asNeeded =
        [
            "2.375-sch40 5 5 x 72", "2.375-sch40 2 2 x 90", "2.375-sch40 3 3 x 102", "2.875-sch40 1 1 x 78", "2.875-sch40 1 1 x 90", "2.875-sch40 2 2 x 108",
        ];
        Assert.Equal(asNeeded, Lengths(SteppedDown(null)));
        Assert.Equal(asNeeded, Lengths(SteppedDown(3)).Select(l => l.Split(':')[0]));
        Assert.Equal(
            ["2.375-sch40 5 5 x 72: 10", "2.375-sch40 5 5 x 102: 40", "2.875-sch40 2 2 x 90: 17", "2.875-sch40 2 2 x 108: 8"], Lengths(SteppedDown(2)));
        Assert.Equal(["2.375-sch40 10 10 x 102: 200", "2.875-sch40 4 4 x 108: 61"], Lengths(SteppedDown(1)));
    }

    [Fact]
    public void APostTellsItsLengthAndWhatIsCutOff()
    {
        var plan = SteppedDown(2);
        var fiveFoot = plan.Lines[0].Posts[5];
        Assert.Equal((85, 102, 17), (Inches(fiveFoot.CutLength), Inches(fiveFoot.OrderLength), Inches(fiveFoot.CutOff!.Value)));
        Assert.All(SteppedDown(null).Lines[0].Posts, p => Assert.Null(p.CutOff));
        var why = Facts.Why(plan, new(FactKind.OrderLength, 0, 5))!;
        Assert.Equal("next chosen length(up(cut-length / post.orderStep) x post.orderStep)", ExprText.Symbols(why));
        Assert.Equal([72, 102], ExprText.Ladder(why).Select(l => Inches(new Length(l.Value))));
        Assert.Equal("order-length - cut-length", ExprText.Symbols(Facts.Why(plan, new(FactKind.CutOff, 0, 5))!));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.5)]
    [InlineData(-2)]
    public void ANumberOfLengthsIsACount(double classes) => Assert.Contains(SteppedDown(classes).Problems, p => p.Code == ProblemCode.RuleValue);
}
