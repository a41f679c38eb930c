using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Web.Desk;

/// <summary>A plan with its hash, everything there is to say about it, worst first, and what it took.</summary>
public sealed record PlannedJob(OpenedJob Source, Plan Plan, string Hash, IReadOnlyList<Finding> Findings, PlanTimes Times)
{
    public PlanWords Words { get; } = new(Source.Units);

    public string Name => Plan.Basis.Job.Name.Length > 0 ? Plan.Basis.Job.Name : Plan.Job.ToString();

    /// <summary>'1 warning, 2 notes', or 'no problems'.</summary>
    public string Tally => Findings.Count == 0
        ? "no problems"
        : string.Join(", ", Findings.GroupBy(f => f.Severity).OrderByDescending(g => g.Key).Select(g => PlanWords.Count(g.Count(), Word(g.Key))));

    public static string Word(Severity severity) => severity.ToString().ToLowerInvariant();
}
