using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Folder;

/// <summary>One job of a folder: what its plan amounts to, or why there is none.</summary>
/// <param name="File">Name of its file.</param>
/// <param name="Totals">Nothing where there is no plan; then there is neither job nor hash.</param>
/// <param name="Units">Of the plan.</param>
/// <param name="Why">Why there is no plan, or why it could not be written.</param>
/// <param name="Written">Where the plan was written.</param>
internal sealed record FolderJob(string File, IReadOnlyList<Finding> Findings, ExitCode Exit)
{
    public Engine.Jobs.JobId? Job { get; init; }

    public string? Name { get; init; }

    public PlanTotals? Totals { get; init; }

    public UnitSystem Units { get; init; }

    public string? Hash { get; init; }

    public string? Why { get; init; }

    public string? Written { get; init; }

    public static FolderJob Of(string path, Planned planned)
    {
        var job = new FolderJob(Path.GetFileName(path), planned.Findings, planned.Exit);
        return planned is { Exit: ExitCode.Fine, Plan: { } plan }
            ? job with
            {
                Job = plan.Job,
                Name = plan.Basis.Job.Name,
                Totals = PlanTotals.Of(plan),
                Units = planned.Units,
                Hash = PlanFile.Hash(plan),
            }
            : job with { Why = Reason(planned.Findings) };
    }

    public int Count(Severity severity) => Findings.Count(f => f.Severity == severity);

    private static string Reason(IReadOnlyList<Finding> findings)
    {
        var errors = findings.Where(f => f.Severity == Severity.Error).ToList();
        return errors.Count == 1 ? errors[0].Message : $"{errors[0].Message} And {Messages.Count(errors.Count - 1, "error")} more.";
    }
}
