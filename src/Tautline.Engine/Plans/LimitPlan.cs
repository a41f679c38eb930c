using Tautline.Engine.Catalog;

namespace Tautline.Engine.Plans;

/// <summary>A limit the plan was made under, or that goes with it, and which rule set gave it.</summary>
/// <param name="UpTo">For a limit of several steps, where this one ends, in metres; nothing for the last.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Base">What the base set says instead; nothing where it says nothing, or has other steps.</param>
/// <param name="Unit">m, m3, ratio, deg, days, number, or yes-no for 1 and 0.</param>
/// <param name="Set">Name of the rule set, or 'as specified' where the job states it.</param>
/// <param name="Planned">True where layout or take-off are made by it, false where it is only recorded.</param>
public sealed record LimitPlan(
    string Key, double? UpTo, double Value, double? Base, string Unit, string Set, string Condition, string Source, string Clause,
    string Edition, Confidence Confidence, bool Verify, bool Planned);

/// <summary>Tells which limits were not given by the base set.</summary>
public static class LimitStage
{
    public static IReadOnlyList<LimitPlan> Stated(Rules rules)
        => [.. rules.All.Where(l => l.Set != RuleSets.BaseName || BaseOf(l)?.Value != l.Value).Select(Plan)];

    private static LimitPlan Plan(Limit limit)
    {
        var from = limit.From;
        return new LimitPlan(
            limit.Key, limit.Step?.UpTo, limit.Value, BaseOf(limit)?.Value, LimitText.SiUnit(limit.Rule), limit.Set, limit.Condition, from.Source,
            from.Clause, from.Edition, from.Confidence, from.Verify, limit.Rule.Use != RuleUse.Recorded);
    }

    private static Limit? BaseOf(Limit limit) => RuleSets.Base.All.FirstOrDefault(b => b.Key == limit.Key && b.Step == limit.Step);
}
