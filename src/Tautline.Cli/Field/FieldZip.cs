using System.IO.Compression;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Problems;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>Writes an exchange file together with photos, as the phone hands them over.</summary>
internal static class FieldZip
{
    // A ZIP's own beginning of time: the bytes say nothing of when they were written.
    private static readonly DateTimeOffset untimed = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Each photo of the files once; one that is damaged in a file and whole in another is not missed.</summary>
    public static ExitCode Write(Exchange exchange, IReadOnlyList<FieldFile> files, Target target, CliHost host)
    {
        List<Finding> faults = [];
        HashSet<string> added = new(StringComparer.Ordinal);
        var exit = target.Write(host, stream =>
        {
            using var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
            Add(zip, FieldSource.JobName, ExchangeFile.Write(exchange));
            foreach (var file in files)
                faults.AddRange(FieldSource.Photos(file, (digest, picture) =>
                {
                    host.Cancelled.ThrowIfCancellationRequested();
                    if (added.Add(digest)) Add(zip, $"photos/{digest}.jpg", picture);
                }));
        });
        faults.RemoveAll(f => added.Any(d => f.Where.EndsWith($"{d}.jpg", StringComparison.Ordinal)));
        Messages.Show(host, faults);
        return exit != ExitCode.Fine ? exit : faults.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine;
    }

    private static void Add(ZipArchive zip, string name, byte[] bytes)
    {
        var entry = zip.CreateEntry(name, CompressionLevel.NoCompression);
        entry.LastWriteTime = untimed;
        using var packed = entry.Open();
        packed.Write(bytes);
    }
}
