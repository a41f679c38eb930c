using System.Globalization;

namespace Tautline.Formats.Coordinates;

/// <summary>Reads angles as the projection manuals print them: "-120-50-00".</summary>
internal static class DegreesMinutesSeconds
{
    public static double Parse(string text)
    {
        var negative = text.StartsWith('-');
        var parts = text.TrimStart('-').Split('-');
        var degrees = Number(parts[0]) + Number(parts[1]) / 60 + Number(parts[2]) / 3600;
        return negative ? -degrees : degrees;
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
