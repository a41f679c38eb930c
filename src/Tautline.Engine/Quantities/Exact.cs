using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>Between exact decimals and the doubles and texts made of them.</summary>
internal static class Exact
{
    public const decimal NmPerMetre = 1_000_000_000m;

    /// <summary>Half way round the earth: nothing longer is read.</summary>
    public const decimal LargestNanometres = 20_000_000m * NmPerMetre;

    /// <summary>The double nearest to a decimal: the platform's cast may be off by a bit, its text reader is not.</summary>
    public static double Double(decimal value) =>
        double.Parse(value.ToString(CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>A length of so many nanometres; exact if they are whole and within 2000 km.</summary>
    public static Length FromNanometres(decimal nanometres) => nanometres == decimal.Truncate(nanometres)
        ? Length.FromNanometres((long)nanometres)
        : Length.FromMetres(Double(nanometres / NmPerMetre));

    /// <summary>A fixed number of decimals, halves away from zero, no minus before a zero.</summary>
    public static string Fixed(decimal value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return Sign(rounded) + Math.Abs(rounded).ToString("F" + Whole(decimals), CultureInfo.InvariantCulture);
    }

    public static string Sign(decimal value) => value < 0 ? "-" : "";

    public static string Whole(long value) => value.ToString(CultureInfo.InvariantCulture);
}
