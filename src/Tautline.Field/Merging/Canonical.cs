using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Tautline.Field.Merging;

/// <summary>JSON values as one text each: properties in ordinal order, no spaces, numbers in their shortest form, so that equal values are equal texts.</summary>
public static class Canonical
{
    public static string Text(JsonElement value) => Text(writer => Write(writer, value, []));

    /// <summary>Some properties of an object as an object of their own; those it lacks are left out.</summary>
    public static string Text(JsonElement value, IReadOnlyList<string> only) => Text(writer =>
    {
        writer.WriteStartObject();
        foreach (var name in only.Order(StringComparer.Ordinal))
            if (value.TryGetProperty(name, out var part)) Write(writer, part, name);
        writer.WriteEndObject();
    });

    private static string Text(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping })) write(writer);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    private static void Write(Utf8JsonWriter writer, JsonElement value, ReadOnlySpan<char> name)
    {
        if (name.Length > 0) writer.WritePropertyName(name);
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var part in value.EnumerateObject().OrderBy(p => p.Name, StringComparer.Ordinal)) Write(writer, part.Value, part.Name);
                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var part in value.EnumerateArray()) Write(writer, part, []);
                writer.WriteEndArray();
                break;
            case JsonValueKind.Number: writer.WriteRawValue(Number(value)); break;
            default: value.WriteTo(writer); break;
        }
    }

    private static string Number(JsonElement value)
        => value.TryGetInt64(out var whole) ? whole.ToString(CultureInfo.InvariantCulture)
            : value.TryGetDouble(out var number) && double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) is var text && text == "-0" ? "0" : text
            : value.GetRawText();
}
