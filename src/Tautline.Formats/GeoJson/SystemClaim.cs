using System.Globalization;
using System.Text.Json;

namespace Tautline.Formats.GeoJson;

/// <summary>What a file says of its coordinate system, in a member that RFC 7946 does not have.</summary>
/// <param name="Member">"crs" or "srs".</param>
/// <param name="Text">The name or code as written; null when the member is null.</param>
/// <param name="Offset">Where the member's value begins, bytes.</param>
internal sealed record SystemClaim(string Member, string? Text, int Offset)
{
    private const int LongestText = 80;

    /// <summary>EPSG number the text names; null when it names none.</summary>
    public int? Code { get; } = FindCode(Text);

    /// <summary>True when the claim is what GeoJSON lays down anyway.</summary>
    public bool IsWgs84 => Code == 4326;

    public static SystemClaim Of(string member, JsonElement value, int offset) => new(member, Shorten(Describe(value)), offset);

    private static string? Describe(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Null => null,
        JsonValueKind.String => JsonText.Of(value),
        JsonValueKind.Number => value.GetRawText(),
        JsonValueKind.Object => Named(value) ?? value.GetRawText(),
        _ => value.GetRawText(),
    };

    // {"type":"name","properties":{"name":...}}, and the older forms with a code or a link
    private static string? Named(JsonElement crs)
    {
        if (!crs.TryGetProperty("properties", out var properties) || properties.ValueKind != JsonValueKind.Object) return null;
        foreach (var key in (string[])["name", "code", "urn", "href"])
        {
            if (properties.TryGetProperty(key, out var value)) return Describe(value);
        }

        return null;
    }

    private static string? Shorten(string? text) => text?.Length > LongestText ? text[..LongestText] + "..." : text;

    private static int? FindCode(string? text)
    {
        if (text is null) return null;
        if (Says(text, "CRS84") || Says(text, "WGS84") || text.Trim().Equals("WGS 84", StringComparison.OrdinalIgnoreCase)) return 4326;
        if (Says(text, "CRS83")) return 4269;
        var digits = text[(text.AsSpan().TrimEnd().LastIndexOfAnyExceptInRange('0', '9') + 1)..].Trim();
        var bare = digits.Length == text.Trim().Length;
        return (bare || Says(text, "EPSG")) && int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var code) ? code : null;
    }

    private static bool Says(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);
}
