using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Input;

/// <summary>Turns a file into a job, by the kind its name ends in.</summary>
internal static class JobSource
{
    public static LoadedJob Load(string path, OutlineChoices choices, UnitSystem? units, Rules rules)
    {
        var reader = ReaderOf(path, choices, units ?? UnitSystem.UsCustomary, rules);
        if (reader is null) return LoadedJob.Unreadable(path, UnknownKind(path));
        var (bytes, fault) = FileText.Read(path);
        return bytes is null ? LoadedJob.Unreadable(path, fault!) : reader(bytes);
    }

    private static Func<byte[], LoadedJob>? ReaderOf(string path, OutlineChoices choices, UnitSystem units, Rules rules)
        => Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".json" => bytes => Job(path, bytes, units),
            ".tape" or ".txt" => bytes => TapeSource.Read(path, bytes, rules),
            ".geojson" => bytes => OutlineSource.Read(path, bytes, choices, units),
            _ => null,
        };

    private static LoadedJob Job(string path, byte[] bytes, UnitSystem units)
    {
        var reading = JobFile.Read(bytes);
        var file = new LoadedJob(path, bytes, reading.Job, [], ExitCode.Fine);
        return LoadedJob.Of(path, bytes, reading.Job, [.. reading.Problems.Select(p => file.Describe(p, units))]);
    }

    private static Finding UnknownKind(string path) => new(
        Severity.Error, "FileKind", path, $"A file ending in '{Path.GetExtension(path)}' is not known.",
        "A job ends in .json, a tape book in .tape or .txt, an outline in .geojson.");
}
