using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>One number an answer rests on. Equal values of one name stand in one row.</summary>
/// <param name="Source">Where it comes from, in words; empty where it can be asked next or is the job's own.</param>
/// <param name="Asks">The facts it is, which can be asked next.</param>
public sealed record WhyRow(string Name, string Value, string Source, IReadOnlyList<FactKey> Asks);

/// <summary>The answer to 'why' in words: the formula, the numbers put in, and where each comes from.</summary>
/// <param name="Title">What was asked: 'hole depth of post 7 of line yard'.</param>
/// <param name="Result">The figure with its unit, and in SI.</param>
/// <param name="Symbols">The formula in names; empty for a figure that is given and not worked out.</param>
/// <param name="Numbers">The same with the numbers put in.</param>
/// <param name="Legend">What the words of the formula mean.</param>
/// <param name="Rows">At most <see cref="MostRows"/>, then the ladders of sizes a formula chooses from.</param>
/// <param name="LeftOut">Rows beyond those.</param>
public sealed record WhyAnswer(
    FactKey Fact, string Title, string Result, string Symbols, string Numbers, IReadOnlyList<string> Legend, IReadOnlyList<WhyRow> Rows, int LeftOut)
{
    public const int MostRows = 24;

    /// <summary>Nothing where the plan has no such fact.</summary>
    public static WhyAnswer? Of(Plan plan, FactKey fact, UnitSystem units)
    {
        if (Facts.Why(plan, fact) is not { } expr) return null;
        var rows = ExprText.Leaves(expr).GroupBy(l => (l.Kind, l.Name, Value: ExprText.Value(l, expr, units), l.From)).ToList();
        var worked = expr is Operation;
        return new WhyAnswer(
            fact, FactText.Title(plan, fact), ExprText.Result(expr, units), worked ? ExprText.Symbols(expr) : "", worked ? ExprText.Numbers(expr, units) : "",
            worked ? ExprText.Legend(expr) : [], [.. rows.Take(MostRows).Select(g => Row(plan, g.Key.Name, g.Key.Value, [.. g])), .. Ladders(expr, units, rows.Count)],
            Math.Max(0, rows.Count - MostRows));
    }

    private static WhyRow Row(Plan plan, string name, string value, IReadOnlyList<Leaf> leaves) => new(
        name, value,
        leaves[0] switch
        {
            { Fact: not null } => "",
            { Kind: LeafKind.Rule, From: { } source } => SourceText.Text(source) + SetOf(plan, name),
            { From: { } source } => SourceText.Text(source),
            _ => "",
        },
        [.. leaves.Select(l => l.Fact).OfType<FactKey>()]);

    /// <summary>Which rule set gave a limit, where it was not the base set.</summary>
    private static string SetOf(Plan plan, string rule)
        => plan.Basis.Rules.Find(rule)?.Set is { } set and not (RuleSets.BaseName or Limit.AsSpecified) ? $"; rule set {set}" : "";

    private static IEnumerable<WhyRow> Ladders(Expr expr, UnitSystem units, int rows) => rows == 0 ? [] : ExprText.Ladder(expr)
        .GroupBy(l => (l.Name, l.From))
        .Select(g => new WhyRow($"{g.Key.Name} sizes", "", $"{string.Join(", ", g.Select(l => ExprText.Value(l, expr, units)))}: {SourceText.Text(g.Key.From!)}", []));
}
