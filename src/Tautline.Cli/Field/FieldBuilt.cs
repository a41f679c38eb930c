using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <param name="Told">What there is to tell of the field file.</param>
internal sealed record BuiltPlan(Engine.Plans.Plan Plan, IReadOnlyList<Finding> Told);

/// <summary>What stands by a field file, for a job that is planned from a file of its own.</summary>
/// <param name="Path">Nothing where no field file was named.</param>
/// <param name="Log">Nothing where the file cannot be used.</param>
/// <param name="Exit">What the command ends with at best: fine unless part of the file is damaged and was left out.</param>
internal sealed record FieldBuilt(string? Path, LogState? Log, IReadOnlyList<Finding> Findings, ExitCode Exit)
{
    private static readonly FieldBuilt none = new(null, LogState.Of([]), [], ExitCode.Fine);

    public static FieldBuilt Read(string? path, Job job, string jobPath, CliHost host)
    {
        if (path is null) return none;
        var reading = Work.Run(host, "reading what stands", () => FieldSource.Read(path));
        if (reading.File is not { } file) return new(path, null, reading.Findings, reading.Exit);
        if (file.Exchange.Job != job.Id) return new(path, null, [OfAnother(file, job, jobPath)], ExitCode.Usage);
        var log = FieldLog.Of(file);
        return new(path, log.Log, [.. reading.Findings, .. log.Findings], reading.Exit);
    }

    /// <summary>Through what stands; as drawn where nothing does, or where the drawing itself has errors.</summary>
    public BuiltPlan Plan(Job job, Rules rules, UnitSystem units)
    {
        var both = FieldPlan.Of(job, FenceCatalog.BuiltIn(), rules, Log!);
        if (Path is null) return new(both.Now, []);
        return both.AsDrawn.HasErrors ? new(both.AsDrawn, Findings) : new(both.Now, [.. Findings, .. Twice(), .. Astray(both.Standing, units), Through(both.Standing)]);
    }

    private static Finding OfAnother(FieldFile file, Job job, string jobPath) => new(
        Severity.Error, "FieldJob", file.Path, $"This is of the job '{file.Exchange.Job.Value}' and {jobPath} is '{job.Id.Value}': nothing in it stands on this one.",
        $"Name what was handed over for '{job.Id.Value}', or take the job out of this file: 'tautline field job {file.Path} -o job.json'.");

    /// <summary>Entries that set posts and of which two stand.</summary>
    private IEnumerable<Finding> Twice() =>
        from finding in Log!.Findings
        where finding.Kind != LogFindingKind.UnknownKind && Log.Standing.Any(e => e.Done?.Operation == Operations.Set && (e.Key == finding.Entry || e.Supersedes == finding.Entry))
        let what = finding.Kind == LogFindingKind.CorrectedTwice ? "This entry was corrected twice and both corrections stand" : "Two different entries carry this number, as after a restored backup, and both stand"
        select Warning(finding.Entry, $"{what}: the plan may go through one post in two places.", "Take one back on the phone.");

    private IEnumerable<Finding> Astray(Standing standing, UnitSystem units)
    {
        var (say, words) = (Phrases.Of(Phrases.English), new PlanWords(units));
        return standing.Findings.Select(f => Warning(
            f.Entry, say.Say("field.standing." + f.Kind.ToString().ToLowerInvariant(), ("post", f.Post.Number), ("off", words.Short(f.Off))),
            f.Kind == StandingFindingKind.OffLine ? "The plan has it square across from there, on the line. Move the line in the job if it is to run through the post." : "Look whether a leg was taken out of the job."));
    }

    private Finding Through(Standing standing) => new(
        Severity.Note, "FieldBuilt", Path!, standing.Facts.Posts.Count == 0
            ? "No line post stands by this log: the plan is the one as drawn."
            : $"The plan goes through the {PlanWords.Count(standing.Facts.Posts.Count, "line post")} that {(standing.Facts.Posts.Count == 1 ? "stands" : "stand")} by this log; terminals are where the job has them.",
        "");

    private Finding Warning(LogKey entry, string message, string hint) => new(Severity.Warning, "FieldStanding", $"{Path}, entry {entry}", message, hint);
}
