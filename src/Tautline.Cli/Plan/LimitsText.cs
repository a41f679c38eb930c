using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Plan;

/// <summary>The limits of a plan that the base set did not give, and which set gave each.</summary>
internal static class LimitsText
{
    public static void Write(Engine.Plans.Plan plan, UnitSystem units, Paper paper)
    {
        if (plan.Limits.Count == 0) return;
        paper.Heading("Limits not of the base set");
        paper.Table(["limit", ">value", ">base", "given by", ""], plan.Limits.Select(l => Row(l, units)));
        if (plan.Limits.Any(l => !l.Planned)) paper.Line("  * recorded: the plan is not made by it");
        paper.Line();
        Sources(plan.Limits.Select(l => (l.Set, l.Key, From(l))), paper);
    }

    /// <summary>Each source once, with the limits that come from it.</summary>
    public static void Sources(IEnumerable<(string Set, string Key, Provenance From)> limits, Paper paper) => paper.Labelled(
        limits.GroupBy(l => (l.Set, l.From with { Clause = "" }))
            .Select(g => (g.Key.Set, $"{string.Join(", ", g.Select(l => l.Key).Distinct())}: {SourceText.Text(g.Key.Item2)}")));

    private static IReadOnlyList<string> Row(LimitPlan limit, UnitSystem units)
    {
        var rule = RuleKeys.Find(limit.Key)!;
        return
        [
            $"{limit.Key}{(limit.Planned ? "" : " *")}{Step(limit, rule, units)}", LimitText.Value(rule, limit.Value, units),
            limit.Base is { } other ? LimitText.Value(rule, other, units) : "not stated", limit.Set, limit.Verify ? "verify" : "",
        ];
    }

    private static Provenance From(LimitPlan limit) => new(limit.Source, limit.Clause, limit.Edition, limit.Confidence);

    private static string Step(LimitPlan limit, RuleKey rule, UnitSystem units)
        => rule.SteppedBy is null ? "" : $", {LimitText.Where(rule, new Step(limit.UpTo, true), units)}";
}
