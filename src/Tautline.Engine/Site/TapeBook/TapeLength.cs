using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes a length so that it reads back the same to the nanometre.</summary>
internal static class TapeLength
{
    /// <summary>Feet and inches to 1/64 where that is exact, else decimal feet; metres in a metric book.</summary>
    /// <exception cref="OverflowException">The length is not finite.</exception>
    public static string Write(Length length, UnitSystem units)
        => length.Nanometres < 0 ? $"-{Write(-length, units)}"
            : units == UnitSystem.Metric ? $"{Number(length.Metres)} m"
            : length.Nanometres % Length.NmPer64thInch == 0 ? FeetInches(length.Nanometres / Length.NmPer64thInch)
            : $"{Number(length.Feet)}'";

    /// <summary>Ten decimals: under a nanometre in feet as in metres.</summary>
    private static string Number(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    private static string FeetInches(long parts)
    {
        var (feet, inches) = Math.DivRem(parts, 12 * 64);
        var text = LengthText.Inches(Length.FromNanometres(inches * Length.NmPer64thInch), 64);
        return feet == 0 ? text : inches == 0 ? $"{feet}'" : inches < 64 ? $"{feet}' 0 {text}" : $"{feet}' {text}";
    }
}
