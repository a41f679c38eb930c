using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Tautline.Field.Log;

namespace Tautline.Field.Merging;

/// <summary>Changes as JSON: the text is the same for equal changes, so it is what a set of them is kept by.</summary>
public static class ExchangeText
{
    internal static JsonWriterOptions Options { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(JobChange change)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Options)) Write(writer, change);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    public static void Write(Utf8JsonWriter writer, JobChange change)
    {
        writer.WriteStartObject();
        writer.WriteString("device", change.Key.Device);
        writer.WriteNumber("sequence", change.Key.Sequence);
        writer.WriteNumber("tick", change.Tick);
        writer.WriteString("person", change.Person);
        writer.WriteStartArray("fields");
        foreach (var field in change.Fields) Write(writer, field);
        writer.WriteEndArray();
        writer.WriteStartArray("resolves");
        foreach (var settled in change.Resolves) Write(writer, settled);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    /// <exception cref="JsonException">It is no change; the message says what is missing or wrong.</exception>
    public static JobChange Read(JsonElement value)
    {
        try
        {
            var key = new LogKey(Text(value, "device"), value.GetProperty("sequence").GetInt64());
            if (key.Device.Length == 0 || key.Sequence < 1) throw new JsonException("a change names its device and its number there, from 1");
            return new(
                key, value.GetProperty("tick").GetInt64(), Text(value, "person"), [.. value.GetProperty("fields").EnumerateArray().Select(Field)],
                [.. value.GetProperty("resolves").EnumerateArray().Select(Resolved)]);
        }
        catch (Exception slip) when (slip is KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new JsonException("a part of the change is missing or is no text or number where one belongs", slip);
        }
    }

    private static void Write(Utf8JsonWriter writer, FieldChange field)
    {
        writer.WriteStartObject();
        writer.WriteString("path", field.Path);
        if (field.Before is not null) writer.WriteString("before", field.Before);
        if (field.After is not null) writer.WriteString("after", field.After);
        Write(writer, "removed", field.Removed);
        Write(writer, "added", field.Added);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, IReadOnlyList<KeyValuePair<string, string>> beneath)
    {
        if (beneath.Count == 0) return;
        writer.WriteStartObject(name);
        foreach (var (path, value) in beneath) writer.WriteString(path, value);
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, Resolution settled)
    {
        writer.WriteStartObject();
        writer.WriteString("path", settled.Path);
        if (settled.Stood is not null) writer.WriteString("stood", settled.Stood);
        writer.WriteStartArray("seen");
        foreach (var seen in settled.Seen) writer.WriteStringValue(seen);
        writer.WriteEndArray();
        if (settled.Value is not null) writer.WriteString("value", settled.Value);
        writer.WriteEndObject();
    }

    private static FieldChange Field(JsonElement value)
        => new(Text(value, "path"), Maybe(value, "before"), Maybe(value, "after")) { Removed = Beneath(value, "removed"), Added = Beneath(value, "added") };

    private static Resolution Resolved(JsonElement value)
        => new(Text(value, "path"), Maybe(value, "stood"), [.. value.GetProperty("seen").EnumerateArray().Select(s => s.GetString())], Maybe(value, "value"));

    private static IReadOnlyList<KeyValuePair<string, string>> Beneath(JsonElement value, string name)
        => value.TryGetProperty(name, out var beneath) ? [.. beneath.EnumerateObject().Select(p => new KeyValuePair<string, string>(p.Name, p.Value.GetString() ?? ""))] : [];

    private static string Text(JsonElement value, string name) => value.GetProperty(name).GetString() ?? throw new JsonException($"'{name}' is no text");

    private static string? Maybe(JsonElement value, string name) => value.TryGetProperty(name, out var text) ? text.GetString() : null;
}
