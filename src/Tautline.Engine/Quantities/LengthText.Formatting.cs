namespace Tautline.Engine.Quantities;

public static partial class LengthText
{
    /// <summary>Feet, inches and a reduced fraction: <c>132' 6 1/2"</c>; without feet if there are none.</summary>
    /// <param name="length">Rounded to the nearest 1/denominator inch, halves away from zero.</param>
    /// <param name="denominator">1, 2, 4, 8, 16, 32 or 64.</param>
    public static string FeetInches(Length length, int denominator)
    {
        var parts = InchParts(length, denominator);
        var sign = length.Metres < 0 && parts > 0 ? "-" : "";
        var (feet, rest) = Math.DivRem(parts, 12L * denominator);
        return sign + (feet > 0 ? Exact.Whole(feet) + "' " : "") + InchesOf(rest, denominator, showZero: feet > 0) + "\"";
    }

    /// <summary>Inches and a reduced fraction, never feet: <c>84"</c>.</summary>
    /// <inheritdoc cref="FeetInches"/>
    public static string Inches(Length length, int denominator)
    {
        var parts = InchParts(length, denominator);
        var sign = length.Metres < 0 && parts > 0 ? "-" : "";
        return sign + InchesOf(parts, denominator, showZero: false) + "\"";
    }

    /// <summary>International feet with a fixed number of decimals: <c>132.54'</c>.</summary>
    /// <param name="length">Rounded halves away from zero.</param>
    /// <param name="decimals">0 to 15.</param>
    public static string DecimalFeet(Length length, int decimals) =>
        Exact.Fixed(length.Nanometres / (decimal)Length.NmPerFoot, decimals) + "'";

    /// <summary>Metres, centimetres or millimetres with a fixed number of decimals: <c>40.400 m</c>, <c>13 mm</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The unit is not metric.</exception>
    public static string Metric(Length length, LengthUnit unit = LengthUnit.Metre, int decimals = 3)
    {
        var (symbol, nanometres) = unit switch
        {
            LengthUnit.Metre => ("m", 1_000_000_000m),
            LengthUnit.Centimetre => ("cm", 10_000_000m),
            LengthUnit.Millimetre => ("mm", 1_000_000m),
            _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "A metric unit is needed: Metre, Centimetre or Millimetre."),
        };
        return Exact.Fixed(length.Nanometres / nanometres, decimals) + " " + symbol;
    }

    private static long InchParts(Length length, int denominator)
    {
        if (denominator is not (1 or 2 or 4 or 8 or 16 or 32 or 64))
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "Inches divide into 1, 2, 4, 8, 16, 32 or 64 parts.");
        var parts = Math.Abs((decimal)length.Nanometres) * denominator / Length.NmPerInch;
        return (long)Math.Round(parts, MidpointRounding.AwayFromZero);
    }

    private static string InchesOf(long parts, int denominator, bool showZero)
    {
        var (whole, above) = Math.DivRem(parts, denominator);
        if (above == 0) return Exact.Whole(whole);
        var below = denominator;
        while (above % 2 == 0) (above, below) = (above / 2, below / 2);
        var fraction = Exact.Whole(above) + "/" + Exact.Whole(below);
        return whole > 0 || showZero ? Exact.Whole(whole) + " " + fraction : fraction;
    }
}
