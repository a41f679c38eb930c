using Tautline.Cli.Output;
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
        paper.Table(["limit", ">value", ">base", "given by", "source"], plan.Limits.Select(l => Row(l, units)));
        if (plan.Limits.Any(l => !l.Planned)) paper.Line("  * recorded: the plan is not made by it");
    }

    private static IReadOnlyList<string> Row(LimitPlan limit, UnitSystem units)
    {
        var rule = RuleKeys.Find(limit.Key)!;
        var from = new Provenance(limit.Source, limit.Clause, limit.Edition, limit.Confidence);
        return
        [
            $"{limit.Key}{(limit.Planned ? "" : " *")}{Step(limit, rule, units)}", LimitText.Value(rule, limit.Value, units),
            limit.Base is { } other ? LimitText.Value(rule, other, units) : "", limit.Set, Sources.Text(from),
        ];
    }

    private static string Step(LimitPlan limit, RuleKey rule, UnitSystem units)
        => rule.SteppedBy is null ? "" : $", {LimitText.Where(rule, new Step(limit.UpTo, true), units)}";
}
