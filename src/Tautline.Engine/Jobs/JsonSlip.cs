using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Tautline.Engine.Jobs;

/// <summary>What is wrong with JSON text, in words of our own: a reader's sentences change with the runtime, and the browser does without them.</summary>
internal static class JsonSlip
{
    /// <summary>Of text that is not JSON: what stands where it stops being it.</summary>
    public static string Broken(ReadOnlySpan<byte> utf8, JsonException slip)
    {
        var at = Offset(utf8, slip);
        var rest = utf8[at..].TrimStart(" \t\r\n"u8);
        if (rest.IsEmpty) return utf8.TrimStart(" \t\r\n"u8).IsEmpty ? "there is nothing in it" : "it ends before its last bracket is closed";
        Rune.DecodeFromUtf8(rest, out var stands, out _);
        return Rune.IsControl(stands) || stands == Rune.ReplacementChar
            ? string.Create(CultureInfo.InvariantCulture, $"a byte {rest[0]:X2} cannot stand here")
            : $"{(stands.Value == '\'' ? "\"'\"" : $"'{stands}'")} cannot stand here";
    }

    /// <summary>Of a value that is not of the kind its place asks for, or a field that is there twice.</summary>
    public static string Misfit(ReadOnlySpan<byte> utf8, JsonException slip)
    {
        var end = Offset(utf8, slip);
        var reader = new Utf8JsonReader(utf8);
        while (reader.Read() && reader.BytesConsumed < end) { }
        return reader.TokenType switch
        {
            JsonTokenType.PropertyName => $"the field \"{reader.GetString()}\" is there twice",
            JsonTokenType.String => $"the text \"{reader.GetString()}\" is of another kind than belongs here",
            JsonTokenType.Number => $"the number {Encoding.UTF8.GetString(reader.ValueSpan)} is of another kind than belongs here, or too large",
            JsonTokenType.StartObject => "an object is of another kind than belongs here",
            JsonTokenType.StartArray => "a list is of another kind than belongs here",
            var other => $"{other.ToString().ToLowerInvariant()} is of another kind than belongs here",
        };
    }

    private static int Offset(ReadOnlySpan<byte> utf8, JsonException slip)
    {
        var start = 0;
        for (var line = 0L; line < (slip.LineNumber ?? 0); line++) start += utf8[start..].IndexOf((byte)'\n') + 1;
        return (int)Math.Min(start + (slip.BytePositionInLine ?? 0), utf8.Length);
    }
}
