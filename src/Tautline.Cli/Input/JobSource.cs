using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Field.Merging;

namespace Tautline.Cli.Input;

/// <summary>Turns a file into a job, by the kind its name ends in.</summary>
internal static class JobSource
{
    public static LoadedJob Load(string path, OutlineChoices choices, UnitSystem? units)
    {
        var reader = ReaderOf(path, choices, units ?? UnitSystem.UsCustomary);
        if (reader is null) return LoadedJob.Unreadable(path, UnknownKind(path));
        var (bytes, fault) = FileText.Read(path);
        return bytes is null ? LoadedJob.Unreadable(path, fault!) : reader(bytes);
    }

    private static Func<byte[], LoadedJob>? ReaderOf(string path, OutlineChoices choices, UnitSystem units)
        => Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".json" => bytes => Job(path, bytes, units),
            ".tape" or ".txt" => bytes => TapeSource.Read(path, bytes),
            ".geojson" => bytes => OutlineSource.Read(path, bytes, choices, units),
            _ => null,
        };

    private static LoadedJob Job(string path, byte[] bytes, UnitSystem units)
    {
        if (JsonHead.Says(bytes, ExchangeFile.FormatName)) return LoadedJob.Unreadable(path, FromTheField(path));
        var reading = JobFile.Read(bytes);
        var file = new LoadedJob(path, bytes, reading.Job, [], ExitCode.Fine);
        return LoadedJob.Of(path, bytes, reading.Job, [.. reading.Problems.Select(p => file.Describe(p, units))]);
    }

    private static Finding FromTheField(string path) => new(
        Severity.Error, "FileKind", path, "This was handed over from the field and is no job; the job is in it.", $"'tautline field job {path} -o job.json' takes it out, 'tautline plan job.json --built {path}' then plans it through what stands, 'tautline field show {path}' shows the rest.");

    private static Finding UnknownKind(string path) => new(
        Severity.Error, "FileKind", path, $"A file ending in '{Path.GetExtension(path)}' is not known.",
        "A job ends in .json, a tape book in .tape or .txt, an outline in .geojson.");
}
