using Tautline.Cli.Plan;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Cli.Compare;

/// <summary>A comparison for people: the limits, the job, the take-off.</summary>
internal static class CompareText
{
    public static string Write(RuleComparison compared, UnitSystem units, Paper paper)
    {
        var (a, b) = (compared.A.RuleSet, compared.B.RuleSet);
        var (rulesA, rulesB) = (compared.A.Basis.Rules, compared.B.Basis.Rules);
        paper.Heading($"Job {compared.A.Job} by two rule sets");
        paper.Labelled([(a, rulesA.Title), (b, rulesB.Title), .. Own(compared)]);
        Limits(compared, units, paper);
        Figures(compared, new PlanWords(units), paper);
        Takeoff(compared, new PlanWords(units), paper);
        return paper.ToString();
    }

    private static IEnumerable<(string, string)> Own(RuleComparison compared)
    {
        var own = compared.A.Limits.Where(l => l.Set == Limit.AsSpecified).Select(l => l.Key).ToList();
        if (own.Count > 0) yield return ("in both", $"as the job specifies: {string.Join(", ", own)}");
    }

    private static void Limits(RuleComparison compared, UnitSystem units, Paper paper)
    {
        paper.Heading("Limits that differ");
        if (compared.Limits.Count == 0) paper.Line("  none");
        else
            paper.Table(
                ["limit", $">{compared.A.RuleSet}", "", $">{compared.B.RuleSet}", ""],
                compared.Limits.Select(IReadOnlyList<string> (l) =>
                    [Name(l, units), Value(l.A, units), Verify(l.A), Value(l.B, units), Verify(l.B)]));
        if (compared.Limits.Any(l => !l.Planned)) paper.Line("  * recorded: it changes nothing in the plan");
        paper.Line();
        LimitsText.Sources(
            compared.Limits.Select(l => l.A).Concat(compared.Limits.Select(l => l.B)).OfType<Limit>().Select(l => (l.Set, l.Key, l.From)), paper);
    }

    private static string Name(LimitDifference limit, UnitSystem units)
    {
        var step = LimitText.Where(limit.Rule, limit.Step, units);
        return limit.Rule.Key + (limit.Planned ? "" : " *") + (step.Length > 0 ? $", {step}" : "");
    }

    private static string Value(Limit? limit, UnitSystem units) => limit is null ? "not stated" : LimitText.Value(limit.Rule, limit.Value, units);

    private static string Verify(Limit? limit) => limit is { From.Verify: true } ? "verify" : "";

    private static void Figures(RuleComparison compared, PlanWords words, Paper paper)
    {
        var differing = compared.Figures.Where(f => f.Differs).ToList();
        paper.Heading("What that does to this job");
        if (differing.Count > 0)
            paper.Table(
                ["figure", $">{compared.A.RuleSet}", $">{compared.B.RuleSet}"],
                differing.Select(IReadOnlyList<string> (f) => [Name(f.Figure), Value(f, f.A, words), Value(f, f.B, words)]));
        var same = compared.Figures.Where(f => !f.Differs).Select(f => $"{Name(f.Figure)} {Value(f, f.A, words)}").ToList();
        if (same.Count > 0) paper.Labelled([("the same:", string.Join(", ", same))]);
    }

    public static string Name(JobFigure figure)
        => string.Concat(figure.ToString().Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : $"{c}"));

    private static string Value(FigureDifference figure, double value, PlanWords words)
        => figure.Unit == Unit.Length ? figure.Figure == JobFigure.LargestBay ? words.Long(new Length(value)) : words.Short(new Length(value))
            : figure.Unit == Unit.Volume ? words.Volume(new Volume(value))
            : PlanWords.Number(value, "#,0");

    private static void Takeoff(RuleComparison compared, PlanWords words, Paper paper)
    {
        paper.Heading("Take-off lines that differ");
        if (compared.Takeoff.Count == 0) paper.Line("  none");
        else
            paper.Table(
                ["part", "size", $">net, {compared.A.RuleSet}", ">buy", $">net, {compared.B.RuleSet}", ">buy"],
                compared.Takeoff.Select(IReadOnlyList<string> (t) =>
                    [t.Item.Name, words.Size(t.Item), Net(t.A, words), Buy(t.A), Net(t.B, words), Buy(t.B)]));
    }

    private static string Net(TakeoffLine? line, PlanWords words) => line is null ? "none" : words.Net(line);

    private static string Buy(TakeoffLine? line) => line is null ? "" : PlanWords.Purchase(line);
}
