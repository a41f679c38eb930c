using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
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
        From(plan, expr, units, paper);
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

    private static void From(Engine.Plans.Plan plan, Expr expr, UnitSystem units, Paper paper)
    {
        var leaves = ExprText.Leaves(expr).GroupBy(l => (l.Kind, l.Name, Value: ExprText.Value(l, expr, units), l.From)).ToList();
        if (leaves.Count == 0) return;
        paper.Heading("Where the numbers come from");
        paper.Table(
            ["number", ">value", "from"],
            [.. leaves.Take(MostLeaves).Select(g => Row(plan, g.Key.Name, g.Key.Value, [.. g])), .. Ladder(expr, units)]);
        if (leaves.Count > MostLeaves) paper.Line($"  and {leaves.Count - MostLeaves} more values of the same kinds");
        if (leaves.Any(g => g.First().Fact is not null)) paper.Line("  'ask' names the fact to ask next.");
    }

    /// <summary>Equal values of one name stand in one row.</summary>
    private static IReadOnlyList<string> Row(Engine.Plans.Plan plan, string name, string value, IReadOnlyList<Leaf> leaves)
        => [name, value, leaves[0] switch
        {
            { Fact: { } fact } => $"ask {FactText.Format(plan, fact)}{Others(plan, leaves)}",
            { Kind: LeafKind.Rule, From: { } source } => Sources.Text(source) + SetOf(plan, name),
            { From: { } source } => Sources.Text(source),
            _ => "the job, or the layout made from it",
        }];

    /// <summary>Which rule set gave a limit, where it was not the base set.</summary>
    private static string SetOf(Engine.Plans.Plan plan, string rule)
        => plan.Basis.Rules.Find(rule)?.Set is { } set and not (RuleSets.BaseName or Limit.AsSpecified) ? $"; rule set {set}" : "";

    private static string Others(Engine.Plans.Plan plan, IReadOnlyList<Leaf> leaves) => leaves.Count switch
    {
        1 => "",
        2 => $", {FactText.Format(plan, leaves[1].Fact!.Value)}",
        _ => $" to {FactText.Format(plan, leaves[^1].Fact!.Value)}, {leaves.Count} of them",
    };

    private static IEnumerable<IReadOnlyList<string>> Ladder(Expr expr, UnitSystem units)
        => ExprText.Ladder(expr).GroupBy(l => (l.Name, l.From)).Select(IReadOnlyList<string> (g) =>
            [$"{g.Key.Name} sizes", "", $"{string.Join(", ", g.Select(l => ExprText.Value(l, expr, units)))}: {Sources.Text(g.Key.From!)}"]);
}
