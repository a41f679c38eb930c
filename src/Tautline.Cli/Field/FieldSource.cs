using System.Globalization;
using System.IO.Compression;
using System.Runtime.ExceptionServices;
using System.Text.RegularExpressions;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>Reads what a device handed over. Nothing in it is unpacked past the sizes below.</summary>
internal static partial class FieldSource
{
    public const string JobName = "field.json";

    /// <summary>Of the exchange file, as the phone has it: more is not taken in there either.</summary>
    public const long MostJson = 64L << 20;

    /// <summary>Of one photo, as the phone has it.</summary>
    public const long MostPhoto = 8L << 20;

    private const string Hint = "A field file is made on the phone or in the browser: Field, Hand over, Make the file.";

    private sealed record Unpacked(byte[] Json, bool IsZip, IReadOnlyList<string> Photos);

    public static FieldReading Read(string path)
    {
        var (unpacked, fault) = FileText.Open(path, file => Unpack(path, file));
        return unpacked is null ? new(null, [fault!], ExitCode.Unreadable) : Read(path, unpacked);
    }

    /// <summary>Hands over each wanted photo of a ZIP that is what its name says; the others are told.</summary>
    /// <param name="take">Is given the digest and the bytes.</param>
    public static IReadOnlyList<Finding> Photos(FieldFile file, Action<string, byte[]> take)
    {
        if (!file.IsZip) return [];
        List<Finding> findings = [];
        ExceptionDispatchInfo? failed = null;
        var (_, fault) = FileText.Open(file.Path, stream => Guarded<string>(file.Path, () =>
        {
            using var zip = new ZipArchive(stream, ZipArchiveMode.Read);
            foreach (var entry in Pictures(zip).TakeWhile(_ => failed is null))
                if (Picture(entry) is { } picture) failed = Failed(() => take(Digest(entry), picture));
                else findings.Add(new(Severity.Error, "PhotoDamaged", $"{file.Path}, {entry.FullName}", "The photo is damaged or larger than 8 MB: it was left out.", "Ask for the file once more."));
            return ("", null);
        }));
        failed?.Throw();
        return fault is null ? findings : [.. findings, fault];
    }

    /// <summary>What goes wrong where a photo goes to is no fault of the file it comes from.</summary>
    private static ExceptionDispatchInfo? Failed(Action work)
    {
        try
        {
            work();
            return null;
        }
        catch (Exception slip)
        {
            return ExceptionDispatchInfo.Capture(slip);
        }
    }

    private static FieldReading Read(string path, Unpacked unpacked)
    {
        var where = unpacked.IsZip ? $"{path}, {JobName}" : path;
        if (unpacked.Json.All(b => b is (byte)' ' or (byte)'\n' or (byte)'\r' or (byte)'\t')) return Refused(where, "The file is empty.", "Ask for the file once more.");
        var reading = ExchangeFile.Read(unpacked.Json);
        if (reading.Exchange is { } exchange)
            return new(
                new(path, exchange, unpacked.IsZip, unpacked.Photos), [.. reading.Faults.Select(f => new Finding(Severity.Warning, "FieldPart", $"{where}, {f.Where}", $"{Sentence(f.Message)} This part was left out, the rest is taken.", ""))],
                reading.Faults.Count == 0 ? ExitCode.Fine : ExitCode.Problems);
        if (JsonHead.Says(unpacked.Json, Job.FormatName))
            return Refused(where, "This is a job, not what was handed over from the field: it has no log.", $"'tautline plan {path}' plans it. {Hint}");
        return new(null, [.. reading.Faults.Select(f => Fault(f.Where.Length > 0 ? $"{where}, {f.Where}" : where, Sentence(f.Message), IsOther(f) ? Hint : ""))], ExitCode.Unreadable);
    }

    /// <summary>True where it is likely that quite another file was named.</summary>
    private static bool IsOther(ExchangeFault fault) => fault.Where is "" or "format" || fault.Where.StartsWith("line", StringComparison.Ordinal);

    private static FieldReading Refused(string where, string message, string hint) => new(null, [Fault(where, message, hint)], ExitCode.Unreadable);

    private static Finding Fault(string where, string message, string hint) => new(Severity.Error, "FieldFile", where, message, hint);

    private static (Unpacked?, Finding?) Unpack(string path, FileStream file)
    {
        if (IsZip(file)) return Guarded(path, () => Zip(path, file));
        return FileText.UpTo(file, MostJson, out _) is { } bytes ? (new(FileText.WithoutMark(bytes), false, []), null) : (null, TooLarge(path));
    }

    /// <summary>A pipe is read as it comes and is no ZIP: its list of contents stands at the end.</summary>
    private static bool IsZip(FileStream file)
    {
        if (!file.CanSeek) return false;
        Span<byte> head = stackalloc byte[2];
        var read = file.ReadAtLeast(head, 2, throwOnEndOfStream: false);
        file.Position = 0;
        return read == 2 && head.SequenceEqual("PK"u8);
    }

    private static (Unpacked?, Finding?) Zip(string path, FileStream file)
    {
        using var zip = new ZipArchive(file, ZipArchiveMode.Read);
        var jobs = zip.Entries.Where(e => e.FullName == JobName).ToList();
        if (jobs.Count != 1) return (null, Fault(path, jobs.Count == 0 ? $"The ZIP holds no {JobName}." : $"The ZIP holds {JobName} {jobs.Count} times.", Hint));
        using var packed = jobs[0].Open();
        if (FileText.UpTo(packed, MostJson, out _) is not { } bytes) return (null, TooLarge($"{path}, {JobName}"));
        return (new(FileText.WithoutMark(bytes), true, [.. Pictures(zip).Select(Digest)]), null);
    }

    private static Finding TooLarge(string where) => Fault(where, "The file is larger than 64 MB, and no field file is.", Hint);

    /// <summary>Entries that are photos by their names, each name once.</summary>
    private static IEnumerable<ZipArchiveEntry> Pictures(ZipArchive zip)
        => zip.Entries.Where(e => Named().IsMatch(e.FullName)).DistinctBy(e => e.FullName).OrderBy(e => e.FullName, StringComparer.Ordinal);

    private static string Digest(ZipArchiveEntry photo) => Named().Match(photo.FullName).Groups[1].Value;

    private static byte[]? Picture(ZipArchiveEntry entry)
    {
        try
        {
            using var packed = entry.Open();
            return FileText.UpTo(packed, MostPhoto, out _) is { } bytes && Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)) == Digest(entry) ? bytes : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static (T?, Finding?) Guarded<T>(string path, Func<(T?, Finding?)> read)
        where T : class
    {
        try
        {
            return read();
        }
        catch (InvalidDataException slip)
        {
            return (null, Fault(path, $"The ZIP is damaged or was cut off: {slip.Message}", "Ask for the file once more."));
        }
    }

    private static string Sentence(string words)
        => words.Length == 0 ? words : $"{char.ToUpper(words[0], CultureInfo.InvariantCulture)}{words[1..]}{(words[^1] is '.' or '?' ? "" : ".")}";

    [GeneratedRegex("^photos/([0-9a-f]{64})\\.jpg\\z")]
    private static partial Regex Named();
}
