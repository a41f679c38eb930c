using System.Globalization;
using System.Text.RegularExpressions;

namespace Tautline.Formats.Ground.Points;

/// <summary>Numbers as survey text writes them: ".5", "0.", "+3", exponents with E or D, a decimal comma where that is settled.</summary>
internal static partial class SurveyNumber
{
    // What programs write where there is no height; common practice, no source.
    private static readonly double[] NoHeight = [-9999, -99999, -999999, 999999];

    /// <summary>The number; null where it is none. Not-a-numbers and infinities are none.</summary>
    public static double? Of(string text, bool decimalComma)
    {
        if (text.Length == 0 || !(char.IsAsciiDigit(text[0]) || text[0] is '+' or '-' or '.' or ',')) return null;
        var plain = decimalComma ? WithPoint(text) : text;
        if (plain is null) return null;
        return Parse(plain) ?? Parse(Exponent().Replace(plain, "E"));
    }

    /// <summary>A quoted number with commas between its thousands, which only a decimal point makes certain.</summary>
    public static double? Of(RowField field, bool decimalComma) =>
        field.Quoted && !decimalComma && Thousands().IsMatch(field.Text)
            ? Parse(field.Text.Replace(",", "", StringComparison.Ordinal))
            : Of(field.Text, decimalComma);

    public static bool HasDecimalComma(string text) => DecimalComma().IsMatch(text);

    /// <summary>Whether a text stands for a height that is not known.</summary>
    public static bool IsNoHeight(string text, bool decimalComma) =>
        text.Length == 0 || Absent().IsMatch(text) || (Of(text, decimalComma) is { } number && NoHeight.Contains(number));

    private static double? Parse(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    private static string? WithPoint(string text) => text.Contains('.', StringComparison.Ordinal) ? null : text.Replace(',', '.');

    [GeneratedRegex(@"^[+-]?\d{1,3}(,\d{3})+\.\d*$", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();

    [GeneratedRegex(@"^[+-]?\d*,\d+$", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"(?<=\d|\.)[dD](?=[+-]?\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Exponent();

    [GeneratedRegex(@"^(nan|[+-]?inf(inity)?|[+-]?1\.#\w+|n/?a|none|null|-+|\?+|\*+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Absent();
}
