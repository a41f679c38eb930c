using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Cli.Why;

/// <summary>The answer to 'why' for people.</summary>
internal static class WhyText
{
    private const int MostLeaves = 24;

    public static string Write(Engine.Plans.Plan plan, FactKey key, UnitSystem units, Paper paper)
    {
        var expr = Facts.Why(plan, key)!;
        paper.Heading($"{FactText.Title(plan, key)} = {ExprText.Result(expr, units)}");
        if (expr is Operation) Formula(expr, key, units, paper);
        From(expr, units, paper);
        Next(plan, expr, paper);
        return paper.ToString();
    }

    private static void Formula(Expr expr, FactKey key, UnitSystem units, Paper paper)
    {
        var name = FactNames.Of(key.Kind);
        paper.Labelled(
        [
            (name, $"= {ExprText.Symbols(expr)}"), ("", $"= {ExprText.Numbers(expr, units)}"), ("", $"= {ExprText.Result(expr, units)}"),
        ]);
        foreach (var words in ExprText.Legend(expr)) paper.Line($"  ({words})");
    }

    private static void From(Expr expr, UnitSystem units, Paper paper)
    {
        paper.Heading("Where the numbers come from");
        var leaves = ExprText.Leaves(expr);
        paper.Table(["number", ">value", "from"], [.. leaves.Take(MostLeaves).Select(l => Row(l, units)), .. Ladder(expr, units)]);
        if (leaves.Count > MostLeaves) paper.Line($"  and {leaves.Count - MostLeaves} more of the same kind");
    }

    private static IReadOnlyList<string> Row(Leaf leaf, UnitSystem units)
        => [leaf.Name, ExprText.Value(leaf.Value, leaf.Unit, units), leaf.Kind switch
        {
            LeafKind.Given => "the job, or the layout made from it",
            LeafKind.Known => "this plan; ask it in turn",
            _ => Sources.Text(leaf.From!),
        }];

    private static IEnumerable<IReadOnlyList<string>> Ladder(Expr expr, UnitSystem units)
        => ExprText.Ladder(expr).GroupBy(l => (l.Name, l.From)).Select(IReadOnlyList<string> (g) =>
            [$"{g.Key.Name} sizes", string.Join(", ", g.Select(l => ExprText.Value(l.Value, l.Unit, units))), Sources.Text(g.Key.From!)]);

    private static void Next(Engine.Plans.Plan plan, Expr expr, Paper paper)
    {
        var asks = ExprText.Asks(expr);
        if (asks.Count == 0) return;
        paper.Heading("Ask next");
        foreach (var ask in asks.Take(MostLeaves)) paper.Line($"  {FactText.Format(plan, ask)}");
        if (asks.Count > MostLeaves) paper.Line($"  and {asks.Count - MostLeaves} more");
    }
}
