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

    /// <summary>The plain number allocates nothing: planning pays for no reason nobody asked for.</summary>
    [Fact]
    public void PlainFormulasAllocateNothing()
    {
        var plan = Some.Plan(Some.Yard());
        var post = new PostFigures(plan.Basis.Lines[0].Posts[1], 0);
        var run = new RunFigures(plan.Basis.Lines[0].Runs[0], plan.Basis.Lines[0].Site.Chain, 0, 0);
        double Work() => post.HoleDiameter<Plain>().Value + post.HoleDepth<Plain>().Value + post.AboveGround<Plain>().Value
            + post.Concrete<Plain>(0.3, 0.8).Value + run.Fabric<Plain>(3).Value + run.Bands<Plain>(0, 1.8).Value + run.RailTies<Plain>(30, 0.5).Value;
        for (var i = 0; i < 200; i++) Work();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 1000; i++) Work();
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1000);
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
