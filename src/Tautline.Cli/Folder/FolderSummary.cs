using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Folder;

/// <summary>All jobs of a folder.</summary>
/// <param name="Others">How many files were passed over.</param>
/// <param name="Asked">Units asked for; otherwise metric where every plan is metric.</param>
internal sealed record FolderSummary(string Folder, IReadOnlyList<FolderJob> Jobs, int Others, UnitSystem? Asked)
{
    public IEnumerable<FolderJob> Planned => Jobs.Where(j => j.Totals is not null);

    public PlanTotals Totals => Planned.Aggregate(PlanTotals.None, (sum, job) => sum + job.Totals!);

    public UnitSystem Units
        => Asked ?? (Planned.Any() && Planned.All(j => j.Units == UnitSystem.Metric) ? UnitSystem.Metric : UnitSystem.UsCustomary);

    /// <summary>The worst of what came of the jobs.</summary>
    public ExitCode Exit => Jobs.Max(j => j.Exit);

    public int Count(Severity severity) => Jobs.Sum(j => j.Count(severity));
}
