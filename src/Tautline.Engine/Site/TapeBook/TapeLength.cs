using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes a length so that it reads back the same to the nanometre.</summary>
internal static class TapeLength
{
    /// <summary>Feet and inches to 1/64 where that is exact, else decimal feet; metres in a metric book.</summary>
    /// <exception cref="OverflowException">The length is not finite.</exception>
    public static string Write(Length length, UnitSystem units)
    {
        var whole = Length.FromNanometres(length.Nanometres);
        return whole.Nanometres < 0 ? $"-{Write(-whole, units)}" : Plain(whole, units);
    }

    /// <summary>A coordinate: not rounded to the nanometre, since the leg between two points would then be off by one.</summary>
    public static string WritePoint(Length length, UnitSystem units)
    {
        var whole = Length.FromNanometres(length.Nanometres);
        return Plain(Math.Abs(whole.Metres - length.Metres) < 1e-11 ? whole : length, units);
    }

    /// <summary>Inches alone, as pickets and mesh are measured.</summary>
    public static string WriteInches(Length length, UnitSystem units)
        => units == UnitSystem.UsCustomary && length.Nanometres >= 0 && length.Nanometres % Length.NmPer64thInch == 0
            ? LengthText.Inches(length, 64)
            : Write(length, units);

    private static string Plain(Length length, UnitSystem units)
        => units == UnitSystem.Metric ? $"{Number(length.Metres)} m"
            : IsWhole(length) ? FeetInches(length.Nanometres / Length.NmPer64thInch)
            : $"{Number(length.Feet)}'";

    private static bool IsWhole(Length length)
        => length.Nanometres % Length.NmPer64thInch == 0 && length.Metres == Length.FromNanometres(length.Nanometres).Metres;

    /// <summary>Twelve decimals: far under a nanometre in feet as in metres.</summary>
    private static string Number(double value) => value.ToString("0.############", CultureInfo.InvariantCulture);

    private static string FeetInches(long parts)
    {
        var (feet, inches) = Math.DivRem(parts, 12 * 64);
        var text = LengthText.Inches(Length.FromNanometres(inches * Length.NmPer64thInch), 64);
        return feet == 0 ? text : inches == 0 ? $"{feet}'" : inches < 64 ? $"{feet}' 0 {text}" : $"{feet}' {text}";
    }
}
