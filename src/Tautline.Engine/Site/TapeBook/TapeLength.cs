using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes a length so that it reads back the same to the nanometre.</summary>
internal static class TapeLength
{
    /// <summary>Feet and inches to 1/64 where that is exact, else decimal feet; metres in a metric book.</summary>
    public static string Write(Length length, UnitSystem units)
        => units == UnitSystem.Metric ? $"{Number(length.Metres)} m"
            : length.Nanometres % Length.NmPer64thInch == 0 ? FeetInches(length.Nanometres / Length.NmPer64thInch)
            : $"{Number(length.Feet)}'";

    /// <summary>Ten decimals: under a nanometre in feet as in metres.</summary>
    private static string Number(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    private static string FeetInches(long parts)
    {
        var (feet, inches) = Math.DivRem(parts, 12 * 64);
        var text = feet > 0 ? $"{feet}'" : "";
        return inches > 0 || feet == 0 ? $"{text}{(feet > 0 ? " " : "")}{Inches(inches)}\"" : text;
    }

    private static string Inches(long parts)
    {
        var (whole, part) = Math.DivRem(parts, 64);
        var of = 64L;
        for (; part > 0 && part % 2 == 0; part /= 2) of /= 2;
        return part == 0 ? $"{whole}" : whole == 0 ? $"{part}/{of}" : $"{whole} {part}/{of}";
    }
}
