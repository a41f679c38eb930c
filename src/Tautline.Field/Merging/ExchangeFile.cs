using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Field.Log;

namespace Tautline.Field.Merging;

/// <summary>What one device hands to another: all it knows of a job. Reading it twice, or ten times, is the same as once.</summary>
/// <param name="Log">Entries as they were written, also those of kinds this program does not know.</param>
public sealed record Exchange(JobId Job, SharedJob Shared, IReadOnlyList<LogEntry> Log);

/// <summary>Something in a file that is not taken.</summary>
/// <param name="Where">Its place in the file.</param>
public sealed record ExchangeFault(string Where, string Message);

/// <param name="Exchange">Nothing where the file as a whole is not taken; then nothing of it is.</param>
public sealed record ExchangeReading(Exchange? Exchange, IReadOnlyList<ExchangeFault> Faults);

/// <summary>Reads and writes what devices hand each other: JSON, UTF-8.</summary>
public static class ExchangeFile
{
    public const string FormatName = "tautline-exchange";
    public const int CurrentVersion = 2;

    public static byte[] Write(Exchange exchange)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, ExchangeText.Options))
        {
            writer.WriteStartObject();
            writer.WriteString("format", FormatName);
            writer.WriteNumber("version", CurrentVersion);
            writer.WriteString("job", exchange.Job.Value);
            writer.WriteStartArray("roots");
            foreach (var root in exchange.Shared.Roots) writer.WriteRawValue(JobFile.Write(root));
            writer.WriteEndArray();
            writer.WriteStartArray("changes");
            foreach (var change in exchange.Shared.Changes) ExchangeText.Write(writer, change);
            writer.WriteEndArray();
            writer.WriteStartArray("log");
            foreach (var entry in exchange.Log.OrderBy(e => e.Key)) writer.WriteRawValue(LogJson.Write(entry));
            writer.WriteEndArray();
            ExchangeText.Write(writer, exchange.Shared.Extra);
            writer.WriteEndObject();
        }
        return stream.ToArray();
    }

    /// <summary>Never throws for what is in the text. A damaged change or entry is told with its place and the rest is taken; a file that cannot be trusted as a whole is not.</summary>
    public static ExchangeReading Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8);
            return document.RootElement.ValueKind == JsonValueKind.Object ? Read(document.RootElement) : Refused("", "this is no file of one device for another: it has no object at its head");
        }
        catch (JsonException slip)
        {
            return Refused($"line {slip.LineNumber + 1}", "this is no JSON, or it was cut off: ask for the file once more");
        }
    }

    private static ExchangeReading Read(JsonElement root)
    {
        if (!root.TryGetProperty("format", out var format) || format.ValueKind != JsonValueKind.String || format.GetString() != FormatName)
            return Refused("format", $"this is no file of one device for another: its format is not '{FormatName}'");
        if (!root.TryGetProperty("version", out var version) || !version.TryGetInt32(out var number) || number < 1)
            return Refused("version", $"the file does not say which version it is written in: a whole number from 1, here {CurrentVersion}. Ask for the file once more: nothing of it was taken");
        if (number > CurrentVersion)
            return Refused("version", $"a newer program wrote this file; this one reads version {CurrentVersion}. Update the program here, then open the file again: nothing of it was taken");
        if (number < CurrentVersion)
            return Refused("version", $"an older program wrote this file, version {number}; this one reads version {CurrentVersion}. Update the program on the other device, then make the file again: nothing of it was taken");
        if (Needed(root) is { } needed)
            return Refused("mustUnderstand", $"the file says that '{needed}' must be understood, and this program does not know it. Update the program here, then open the file again: nothing of it was taken");
        List<ExchangeFault> faults = [];
        var roots = Items(root, "roots", faults, item => JobFile.Read(System.Text.Encoding.UTF8.GetBytes(item.GetRawText())) is { Job: { } job, HasErrors: false, ReadOnly: false } ? job : throw new JsonException("this is no job that can be read"));
        if (roots.Count == 0) return new(null, [.. faults, new("roots", "the file holds no job that can be read: nothing of it was taken")]);
        var id = root.TryGetProperty("job", out var named) && named.ValueKind == JsonValueKind.String ? named.GetString() : roots[0].Id.Value;
        if (roots.FirstOrDefault(r => r.Id.Value != id) is { } stranger) return Refused("roots", $"the file is of job '{id}' and holds a text of '{stranger.Id.Value}': two jobs are not joined, nothing of it was taken");
        var changes = Items(root, "changes", faults, ExchangeText.Read);
        var log = Items(root, "log", faults, item => LogJson.Read(System.Text.Encoding.UTF8.GetBytes(item.GetRawText()), out var fault) ?? throw new JsonException(fault));
        var shared = SharedJob.Begin(roots[0]).With(roots, changes, ExchangeText.Others(root, "format", "version", "mustUnderstand", "job", "roots", "changes", "log"));
        return new(new(roots[0].Id, shared, log), faults);
    }

    /// <summary>The first part that must be understood and is not: this version knows none by name.</summary>
    private static string? Needed(JsonElement root)
        => !root.TryGetProperty("mustUnderstand", out var parts) ? null
            : parts.ValueKind != JsonValueKind.Array ? parts.GetRawText()
            : parts.GetArrayLength() > 0 ? parts[0].ToString() : null;

    private static List<T> Items<T>(JsonElement root, string name, List<ExchangeFault> faults, Func<JsonElement, T> read)
    {
        List<T> items = [];
        if (!root.TryGetProperty(name, out var list) || list.ValueKind != JsonValueKind.Array) return items;
        foreach (var (item, i) in list.EnumerateArray().Select((item, i) => (item, i)))
        {
            try
            {
                items.Add(read(item));
            }
            catch (JsonException slip)
            {
                faults.Add(new(System.FormattableString.Invariant($"{name}[{i}]"), slip.Message));
            }
        }
        return items;
    }

    private static ExchangeReading Refused(string where, string message) => new(null, [new(where, message)]);
}
