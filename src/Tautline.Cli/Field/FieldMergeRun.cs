using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

internal sealed record FieldMergeOptions(IReadOnlyList<string> Files, Target Target);

internal static class FieldMergeRun
{
    /// <summary>What one file brought that those before it had not.</summary>
    private sealed record Brought(string File, int Entries, int NewEntries, int Edits, int NewEdits, bool Beginning, int Photos);

    public static ExitCode Run(FieldMergeOptions options, CliHost host)
    {
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        List<FieldFile> files = [];
        var exit = ExitCode.Fine;
        foreach (var path in options.Files)
        {
            var reading = Work.Run(host, $"reading {path}", () => FieldSource.Read(path));
            Messages.Show(host, reading.Findings);
            if (reading.Exit > exit) exit = reading.Exit;
            if (reading.File is { } file) files.Add(file);
        }
        if (files.Count < options.Files.Count) return exit;
        if (files.FirstOrDefault(f => f.Exchange.Job != files[0].Exchange.Job) is { } stranger)
        {
            Messages.Error(
                host, $"{stranger.Path}: This is of the job '{stranger.Exchange.Job.Value}' and {files[0].Path} of '{files[0].Exchange.Job.Value}': two jobs are not merged.", "Merge the files of each job by themselves.");
            return ExitCode.Usage;
        }
        var written = Write(files, options, host);
        return written > exit ? written : exit;
    }

    private static ExitCode Write(List<FieldFile> files, FieldMergeOptions options, CliHost host)
    {
        var (merged, brought) = Work.Run(host, "merging", () => Merged(files));
        var written = options.Target.Path!.EndsWith(".zip", StringComparison.OrdinalIgnoreCase) ? FieldZip.Write(merged, files, options.Target, host) : options.Target.Write(host, ExchangeFile.Write(merged));
        // A photo that could not be taken along is told; the file is there without it.
        if (written is ExitCode.Fine or ExitCode.Problems) Tell(merged, brought, options, host);
        return written;
    }

    /// <summary>Sets that come together: the same whatever the order of the files and however often each is given.</summary>
    private static (Exchange Merged, List<Brought> Brought) Merged(List<FieldFile> files)
    {
        SharedJob? shared = null;
        SortedDictionary<string, LogEntry> log = new(StringComparer.Ordinal);
        List<Brought> brought = [];
        foreach (var file in files)
        {
            var (edits, roots, entries) = (shared?.Count ?? 0, shared?.Roots.Count ?? 0, log.Count);
            shared = shared?.Merge(file.Exchange.Shared) ?? file.Exchange.Shared;
            foreach (var entry in file.Exchange.Log) log.TryAdd(FieldEntry.Text(entry), entry);
            brought.Add(new(
                file.Path, FieldEntry.Of(file.Exchange.Log, LogState.Of([])).Count, log.Count - entries, file.Exchange.Shared.Count, shared.Count - edits, roots > 0 && shared.Roots.Count > roots, file.Photos.Count));
        }
        return (new(shared!.Id, shared, [.. log.Values]), brought);
    }

    private static void Tell(Exchange merged, List<Brought> brought, FieldMergeOptions options, CliHost host)
    {
        var paper = Paper.For(host);
        paper.Heading($"Merged into {options.Target.Path}");
        paper.Table(
            ["file", ">entries", ">new", ">known", ">edits", ">new", ">known"],
            brought.Select(IReadOnlyList<string> (b) => [b.File, $"{b.Entries}", $"{b.NewEntries}", $"{b.Entries - b.NewEntries}", $"{b.Edits}", $"{b.NewEdits}", $"{b.Edits - b.NewEdits}"]));
        paper.Line();
        paper.Line($"  together {(merged.Log.Count == 1 ? "1 entry" : $"{merged.Log.Count} entries")}, {PlanWords.Count(merged.Shared.Count, "edit")}, {PlanWords.Count(merged.Shared.Conflicts.Count, "open conflict")}");
        host.Output.Write(paper.ToString());
        List<Finding> told = [];
        if (brought.Any(b => b.Beginning)) told.Add(Note("The job began differently on these devices: what only one has is in both, where they differ that is an open conflict."));
        told.AddRange(LogState.Of(merged.Log).Findings.Where(f => f.Kind == LogFindingKind.NumberTwice).Select(f => Warning($"The number {f.Entry} is carried by two different entries, as after a restored backup: both are kept, and both stand.")));
        told.AddRange(merged.Shared.NumbersTwice.Select(k => Warning($"The number {k} is carried by two different edits of the job, as after a restored backup: both are in the job.")));
        told.AddRange(FieldConflicts.Told(merged.Shared, new FieldWords(UnitsOf(merged.Shared), new FieldClock(host.Clock.LocalTimeZone))));
        if (brought.Any(b => b.Photos > 0) && !options.Target.Path!.EndsWith(".zip", StringComparison.OrdinalIgnoreCase))
            told.Add(Note("The photos are not in it.", "Let the name after --out end in .zip and they go along; 'tautline field photos' takes them out of each file."));
        Messages.Show(host, told);
    }

    private static UnitSystem UnitsOf(SharedJob shared) => shared.Head.Job?.Units ?? UnitSystem.UsCustomary;

    private static Finding Note(string message, string hint = "") => new(Engine.Problems.Severity.Note, "FieldMerge", "", message, hint);

    private static Finding Warning(string message) => new(Engine.Problems.Severity.Warning, "FieldMerge", "", message, "");
}
