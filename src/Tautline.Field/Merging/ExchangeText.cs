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
        Write(writer, change.Extra);
        writer.WriteEndObject();
    }

    /// <exception cref="JsonException">It is no change; the message says what is missing or wrong.</exception>
    public static JobChange Read(JsonElement value)
    {
        try
        {
            var key = new LogKey(Text(value, "device"), value.GetProperty("sequence").GetInt64());
            if (key.Device.Length == 0 || key.Sequence < 1) throw new JsonException("a change names its device and its number there, from 1");
            if (value.GetProperty("tick").GetInt64() < 0) throw new JsonException("'tick' is below 0");
            return new(
                key, value.GetProperty("tick").GetInt64(), Text(value, "person"), [.. value.GetProperty("fields").EnumerateArray().Select(Field)],
                [.. value.GetProperty("resolves").EnumerateArray().Select(Resolved)])
            { Extra = Others(value, "device", "sequence", "tick", "person", "fields", "resolves") };
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
        Write(writer, field.Extra);
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
        writer.WriteNumber("round", settled.Round);
        Write(writer, settled.Extra);
        writer.WriteEndObject();
    }

    internal static void Write(Utf8JsonWriter writer, IEnumerable<KeyValuePair<string, string>> extra)
    {
        foreach (var (name, value) in extra.OrderBy(e => e.Key, StringComparer.Ordinal))
        {
            writer.WritePropertyName(name);
            writer.WriteRawValue(value);
        }
    }

    /// <summary>The properties of an object that this program does not know.</summary>
    internal static IReadOnlyList<KeyValuePair<string, string>> Others(JsonElement value, params ReadOnlySpan<string> known)
    {
        List<KeyValuePair<string, string>> others = [];
        foreach (var part in value.EnumerateObject())
            if (!known.Contains(part.Name)) others.Add(new(part.Name, Canonical.Text(part.Value)));
        return others;
    }

    private static FieldChange Field(JsonElement value)
    {
        var path = Path(value);
        if (path is "id" or "format" || JobFlat.Fixed(path)) throw new JsonException($"'{path}' names a thing and cannot be changed");
        return new(path, Checked(path, Maybe(value, "before")), Checked(path, Maybe(value, "after")))
        {
            Removed = Beneath(value, path, "removed"),
            Added = Beneath(value, path, "added"),
            Extra = Others(value, "path", "before", "after", "removed", "added"),
        };
    }

    private static Resolution Resolved(JsonElement value)
    {
        var path = Path(value);
        return new(path, Checked(path, Maybe(value, "stood")), [.. value.GetProperty("seen").EnumerateArray().Select(s => Checked(path, s.GetString()))], Checked(path, Maybe(value, "value")), value.GetProperty("round").GetInt32())
        {
            Extra = Others(value, "path", "stood", "seen", "value", "round"),
        };
    }

    private static IReadOnlyList<KeyValuePair<string, string>> Beneath(JsonElement value, string path, string name)
        => value.TryGetProperty(name, out var beneath) ? [.. beneath.EnumerateObject().Select(p => new KeyValuePair<string, string>(p.Name, Checked($"{path}/{p.Name}", p.Value.GetString() ?? "")!))] : [];

    private static string Path(JsonElement value) => Text(value, "path") is var path && JobFlat.Sound(path) ? path : throw new JsonException($"'{path}' is no path of a field");

    /// <summary>A value as it can stand at a path: of a thing in a list nothing but that it is there, of fields that are one an object, of any other field some JSON.</summary>
    private static string? Checked(string path, string? value)
    {
        if (!JobFlat.Sound(path)) throw new JsonException($"'{path}' is no path of a field");
        if (value is null || value == JobFlat.There && !JobFlat.OfGroup(path)) return value;
        if (JobFlat.OfListed(path)) throw new JsonException($"'{path}' is a thing that is there or not, and has no value of its own");
        try
        {
            using var document = JsonDocument.Parse(value);
            return !JobFlat.OfGroup(path) || document.RootElement.ValueKind == JsonValueKind.Object ? value : throw new JsonException($"the value of '{path}' is no object");
        }
        catch (JsonException slip) when (slip.Path is null && slip.LineNumber is not null)
        {
            throw new JsonException($"the value of '{path}' is no JSON: '{(value.Length > 40 ? value[..40] + "…" : value)}'", slip);
        }
    }

    private static string Text(JsonElement value, string name) => value.GetProperty(name).GetString() ?? throw new JsonException($"'{name}' is no text");

    private static string? Maybe(JsonElement value, string name) => value.TryGetProperty(name, out var text) ? text.GetString() : null;
}
