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
    // Half way round the earth, a lifetime, and ten thousand million: what is beyond is no entry of a fence, and could not be reckoned with.
    private const double MostMetres = 20_000_000;
    private const double MostHours = 1_000_000;
    private const long MostCents = 1_000_000_000_000;

    public ExitCode Exit => Findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine;

    public static FieldState Of(FieldFile file, UnitSystem? units, CliHost host)
    {
        var log = LogState.Of(file.Exchange.Log.Where(Sound));
        List<Finding> findings =
        [
            .. file.Exchange.Log.Where(e => !Sound(e)).Select(e => new Finding(
                Severity.Warning, "FieldEntry", $"{file.Path}, entry {e.Key}", "A measure, hours or a price of this entry is beyond all bounds: it is kept, and not counted here.", "Take it back on the phone.")),
        ];
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

    private static bool Sound(LogEntry entry)
        => Sound(entry.Place?.At) && (entry.Done?.Posts ?? []).All(p => Sound(p.At) && Sound(p.East) && Sound(p.North) && Sound(p.Top)) && Math.Abs(entry.Found?.Measured ?? 0) <= MostMetres
           && Math.Abs(entry.Worked?.Hours ?? 0) <= MostHours && Math.Abs((decimal)(entry.Changed?.TotalCents ?? 0)) <= MostCents && Math.Abs((decimal)(entry.Changed?.UnitCents ?? 0)) <= MostCents;

    private static bool Sound(Length? length) => length is not { } l || Math.Abs(l.Metres) <= MostMetres;
}
