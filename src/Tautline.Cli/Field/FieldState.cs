using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Inspecting;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>What stands of a file: the job as it is now, its plan through what is built, the log.</summary>
/// <param name="Job">Nothing where the merged fields do not add up to a job.</param>
/// <param name="Plan">Nothing where there is no job or its plan has errors.</param>
/// <param name="Built">With <paramref name="Plan"/>, as the two below.</param>
/// <param name="Units">Of the job, unless others were asked for.</param>
/// <param name="Findings">Why there is no plan.</param>
internal sealed record FieldState(FieldFile File, LogState Log, Job? Job, FieldPlan? Plan, BuiltRecord? Built, Today? Today, Inspection? Inspection, UnitSystem Units, IReadOnlyList<Finding> Findings)
{
    public ExitCode Exit => Findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine;

    public static FieldState Of(FieldFile file, UnitSystem? units, CliHost host)
    {
        var (log, findings) = FieldLog.Of(file);
        var head = file.Exchange.Shared.Head;
        var shown = units ?? head.Job?.Units ?? UnitSystem.UsCustomary;
        if (head.Job is not { } job || head.HasErrors) return new(file, log, head.Job, null, null, null, null, shown, [.. findings, .. Told(file, head.Problems, shown)]);
        var plan = Work.Run(host, "planning", () => FieldPlan.Of(job, FenceCatalog.BuiltIn(), RuleSets.For(job), log));
        if (plan.AsDrawn.HasErrors || plan.Now.HasErrors)
            return new(file, log, job, null, null, null, null, shown, [.. findings, .. Told(file, (plan.AsDrawn.HasErrors ? plan.AsDrawn : plan.Now).Problems.Where(p => p.Severity == Severity.Error), shown)]);
        return new(file, log, job, plan, Work.Run(host, "comparing with what stands", () => BuiltRecord.Of(plan, log)), Today.Of(plan.Now, log), Inspection.Of(plan.Now, log), shown, findings);
    }

    /// <summary>Problems of the job as it is now; no one file has it, so there is no line to name.</summary>
    private static IEnumerable<Finding> Told(FieldFile file, IEnumerable<Problem> problems, UnitSystem units)
    {
        var job = new LoadedJob($"{file.Path}, the job as it is now", default, null, [], ExitCode.Fine);
        return problems.Select(p => job.Describe(p, units));
    }
}
