using System.Text.Json;

namespace Tautline.Formats.GeoJson;

/// <summary>Text of JSON values that may hold half a surrogate pair, which the platform's reader throws over.</summary>
internal static class JsonText
{
    /// <summary>A string's text, any other value as it stands in the file, null as an empty text.</summary>
    public static string Of(JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Null) return "";
        if (value.ValueKind != JsonValueKind.String) return value.GetRawText();
        try
        {
            return value.GetString()!;
        }
        catch (InvalidOperationException)
        {
            return value.GetRawText().Trim('"');
        }
    }
}
