using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Reasons;

public sealed class WhyTests
{
    public static TheoryData<string> Jobs => ["straight", "yard", "steep", "lot", "braced"];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void EveryFactIsRecomputedFromItsReasons(string name) => FactCheck.All(Some.Plan(Named(name)));

    [Fact]
    public void TheEvaluatorNoticesAWrongStep()
    {
        var three = new Leaf(LeafKind.Constant, "", 3, Unit.Count, null, null);
        var wrong = new Operation(Op.Add, [three, three], 7, Unit.Count);
        Assert.NotEqual(wrong.Value, Evaluator.Recompute(wrong));
    }

    [Fact]
    public void AFactThatIsNotThereHasNoReason()
        => Assert.Null(Facts.Why(Some.Plan(Some.Yard()), new FactKey(FactKind.HoleDepth, 0, 999)));

    [Fact]
    public void TheReasonOfAHoleDepthNamesItsClause()
    {
        var why = Facts.Why(Some.Plan(Some.StraightHundred()), new FactKey(FactKind.HoleDepth, 0, 1))!;
        var rules = Leaves(why).Where(l => l.Kind == LeafKind.Rule).DistinctBy(l => l.Name).ToDictionary(l => l.Name);
        Assert.Equal("ASTM F567", rules["hole.depth"].From!.Source);
        Assert.Equal("5.1", rules["hole.depth"].From!.Clause);
    }

    internal static IEnumerable<Leaf> Leaves(Expr expr) => expr switch
    {
        Leaf leaf => [leaf],
        Operation operation => operation.Of.SelectMany(Leaves),
        _ => [],
    };

    private static Job Named(string name) => name switch
    {
        "straight" => Some.StraightHundred(calibrated: false),
        "yard" => Some.Yard(),
        "steep" => Some.Steep(),
        "lot" => Some.SlopedLot(),
        _ => Some.Job(Some.Line("main", false, [(0, 0), (0, 75)]), Some.Spec(8) with { Brace = "yes" }),
    };
}
