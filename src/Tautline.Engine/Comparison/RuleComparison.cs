using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Comparison;

/// <summary>Two rule sets on one job: on which limits they differ, and what that does to the job.</summary>
/// <param name="A">The job planned by the first set.</param>
/// <param name="B">The same by the second.</param>
/// <param name="Limits">The limits in force that differ; one the job itself states is in force in both and never differs.</param>
/// <param name="Figures">Every figure by either set, the same or not; none while either plan has an error.</param>
/// <param name="Takeoff">The take-off lines that differ, in the order of the first plan, then those only the second has.</param>
public sealed record RuleComparison(
    Plan A, Plan B, IReadOnlyList<LimitDifference> Limits, IReadOnlyList<FigureDifference> Figures, IReadOnlyList<TakeoffDifference> Takeoff)
{
    /// <summary>Plans the job by both sets, whichever set it names itself, and compares the two plans.</summary>
    public static RuleComparison Compare(Job job, FenceCatalog catalog, Rules a, Rules b)
    {
        var (planA, planB) = (PlanBy(a, job, catalog), PlanBy(b, job, catalog));
        var limits = LimitsOf(planA.Basis.Rules, planB.Basis.Rules);
        return planA.HasErrors || planB.HasErrors
            ? new(planA, planB, limits, [], [])
            : new(planA, planB, limits, FiguresOf(planA, planB), TakeoffOf(planA, planB));
    }

    /// <summary>Two plans of one job at two times, or of two jobs.</summary>
    public static RuleComparison ComparePlans(Plan a, Plan b)
        => a.HasErrors || b.HasErrors ? new(a, b, [], [], []) : new(a, b, LimitsOf(a.Basis.Rules, b.Basis.Rules), FiguresOf(a, b), TakeoffOf(a, b));

    /// <summary>Plans the whole job with one spec everywhere, then with another, and compares the two plans. Take-off lines of a spec are compared by their part.</summary>
    public static RuleComparison CompareSpecs(Job job, FenceCatalog catalog, Rules rules, SpecId a, SpecId b)
    {
        var (planA, planB) = (PlanBy(rules, WithSpec(job, a), catalog), PlanBy(rules, WithSpec(job, b), catalog));
        return planA.HasErrors || planB.HasErrors ? new(planA, planB, [], [], []) : new(planA, planB, [], FiguresOf(planA, planB), TakeoffOf(planA, Renamed(planB, b, a)));
    }

    private static Job WithSpec(Job job, SpecId spec) => job with
    {
        Lines = [.. job.Lines.Select(l => l with { Spec = spec, Vertices = [.. l.Vertices.Select(v => v.Leg is { Spec: not null } leg ? v with { Leg = leg with { Spec = null } } : v)] })],
    };

    /// <summary>The second plan with its take-off under the first one's spec, so that the same part stands in one row.</summary>
    private static Plan Renamed(Plan plan, SpecId from, SpecId to)
        => plan with { Takeoff = [.. plan.Takeoff.Select(t => t.Spec == from ? t with { Spec = to } : t)] };

    private static Plan PlanBy(Rules rules, Job job, FenceCatalog catalog)
        => JobPlanner.Plan(job with { RuleSet = rules.Name }, catalog, rules, BuiltFacts.None);

    private static List<LimitDifference> LimitsOf(Rules a, Rules b)
    {
        var (mine, theirs) = (a.All.ToDictionary(Named), b.All.ToDictionary(Named));
        return [.. mine.Keys.Union(theirs.Keys)
            .Select(k => new LimitDifference(RuleKeys.Find(k.Key)!, k.Step, mine.GetValueOrDefault(k), theirs.GetValueOrDefault(k)))
            .Where(d => d.A?.Value != d.B?.Value)
            .OrderBy(d => d.Rule.Key, StringComparer.Ordinal).ThenBy(d => d.Step?.UpTo ?? double.MaxValue)];
    }

    private static (string Key, Step? Step) Named(Limit limit) => (limit.Key, limit.Step);

    private static List<FigureDifference> FiguresOf(Plan a, Plan b)
        => [.. Enum.GetValues<JobFigure>().Select(f => new FigureDifference(f, UnitOf(f), Value(f, a), Value(f, b)))];

    private static Unit UnitOf(JobFigure figure) => figure switch
    {
        JobFigure.LargestBay or JobFigure.WidestHole or JobFigure.DeepestHole => Unit.Length,
        JobFigure.Concrete => Unit.Volume,
        _ => Unit.Count,
    };

    private static double Value(JobFigure figure, Plan plan) => figure switch
    {
        JobFigure.Posts => Posts(plan).Count(),
        JobFigure.Terminals => Posts(plan).Count(p => p.Kind != PostKind.Line),
        JobFigure.LinePosts => Posts(plan).Count(p => p.Kind == PostKind.Line),
        JobFigure.Bays => Runs(plan).Sum(r => r.Bays),
        JobFigure.LargestBay => Runs(plan).Select(r => r.LargestBay.Metres).DefaultIfEmpty().Max(),
        JobFigure.WidestHole => Posts(plan).Select(p => p.HoleDiameter.Metres).DefaultIfEmpty().Max(),
        JobFigure.DeepestHole => Posts(plan).Select(p => p.HoleDepth.Metres).DefaultIfEmpty().Max(),
        JobFigure.Concrete => Net(plan, "concrete-bag"),
        JobFigure.Bags => Posts(plan).Sum(p => p.Bags),
        JobFigure.BracedEnds => Net(plan, "truss-rod"),
        JobFigure.Bands => Net(plan, "tension-band"),
        JobFigure.PostTies => Net(plan, "post-tie"),
        JobFigure.RailTies => Net(plan, "rail-tie"),
        _ => Net(plan, "ring"),
    };

    private static IEnumerable<PostPlan> Posts(Plan plan) => plan.Lines.SelectMany(l => l.Posts);

    private static IEnumerable<RunPlan> Runs(Plan plan) => plan.Lines.SelectMany(l => l.Runs);

    private static double Net(Plan plan, string part) => plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Net);

    private static List<TakeoffDifference> TakeoffOf(Plan a, Plan b)
    {
        var (mine, theirs) = (a.Takeoff.ToDictionary(Item), b.Takeoff.ToDictionary(Item));
        return [.. a.Takeoff.Concat(b.Takeoff).Select(Item).Distinct()
            .Select(i => new TakeoffDifference(mine.GetValueOrDefault(i), theirs.GetValueOrDefault(i)))
            .Where(d => Amounts(d.A) != Amounts(d.B))];
    }

    /// <summary>What tells take-off lines apart: one part may be bought bare and in a colour.</summary>
    private static (string Part, string? Section, long? Size, SpecId? Spec, string? Finish) Item(TakeoffLine line)
        => (line.Part, line.Section, line.Size?.Nanometres, line.Spec, line.Finish);

    private static (long Net, int Buy, long Mass)? Amounts(TakeoffLine? line)
        => line is null ? null : (Decide.Billionths(line.Net), line.Purchase, Decide.Billionths(line.Mass?.Kilograms ?? 0));
}
