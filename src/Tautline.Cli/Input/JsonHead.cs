using System.Text.Json;

namespace Tautline.Cli.Input;

/// <summary>Which kind of file a JSON text says it is.</summary>
internal static class JsonHead
{
    /// <summary>Reads as far as the text is JSON: a file that is broken further down still is of its kind.</summary>
    public static bool Says(ReadOnlySpan<byte> utf8, string format)
    {
        var reader = new Utf8JsonReader(utf8.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8, isFinalBlock: false, default);
        try
        {
            while (reader.Read())
                if (reader is { TokenType: JsonTokenType.PropertyName, CurrentDepth: 1 } && reader.ValueTextEquals("format"))
                    return reader.Read() && reader.TokenType == JsonTokenType.String && reader.ValueTextEquals(format);
        }
        catch (JsonException)
        {
            // no JSON from here on, and nothing said so far
        }
        return false;
    }
}
