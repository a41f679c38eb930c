using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>
/// A length or signed distance in metres. The default value is zero. Whole decisions (how many bays, does it fit)
/// are made on <see cref="Nanometres"/>, where 1/64 in and 1 mm are both whole numbers.
/// </summary>
public readonly record struct Length(double Metres) : IComparable<Length>
{
    /// <summary>Nanometres in one inch: 0.0254 m exactly.</summary>
    public const long NmPerInch = 25_400_000;

    /// <summary>Nanometres in one international foot: 0.3048 m exactly.</summary>
    public const long NmPerFoot = 304_800_000;

    /// <summary>Nanometres in 1/64 in, the finest fraction on a tape.</summary>
    public const long NmPer64thInch = 396_875;

    private const double NmPerMetre = 1e9;
    private const double TwoToThe63 = 9_223_372_036_854_775_808.0;

    public static Length Zero => default;

    public double Millimetres => Metres * 1000;

    public double Inches => Metres * 10_000 / 254;

    /// <summary>International feet (0.3048 m).</summary>
    public double Feet => Metres * 10_000 / 3048;

    /// <summary>US survey feet (1200/3937 m).</summary>
    public double SurveyFeet => Metres * 3937 / 1200;

    /// <summary>The nearest whole number of nanometres, halves away from zero.</summary>
    /// <exception cref="OverflowException">The length is not finite, or beyond about 9.22 million kilometres.</exception>
    public long Nanometres
    {
        get
        {
            var nm = Math.Round(Metres * NmPerMetre, MidpointRounding.AwayFromZero);
            return nm is >= -TwoToThe63 and < TwoToThe63 ? (long)nm : throw new OverflowException(OutOfRange(Metres));
        }
    }

    public static Length FromMetres(double metres) => new(metres);

    public static Length FromMillimetres(double millimetres) => new(millimetres / 1000);

    // Multiplying by the whole number first keeps whole feet and inches correctly rounded.
    public static Length FromInches(double inches) => new(inches * 254 / 10_000);

    /// <summary>From international feet (0.3048 m).</summary>
    public static Length FromFeet(double feet) => new(feet * 3048 / 10_000);

    /// <summary>From US survey feet (1200/3937 m).</summary>
    public static Length FromSurveyFeet(double surveyFeet) => new(surveyFeet * 1200 / 3937);

    /// <summary>
    /// From whole nanometres. <see cref="Nanometres"/> gives the same number back up to 2000 km either way;
    /// beyond that a double no longer tells neighbouring nanometres apart.
    /// </summary>
    public static Length FromNanometres(long nanometres) => new(nanometres / NmPerMetre);

    public static Length Max(Length a, Length b) => new(Math.Max(a.Metres, b.Metres));

    public static Length Min(Length a, Length b) => new(Math.Min(a.Metres, b.Metres));

    public static Length Abs(Length length) => new(Math.Abs(length.Metres));

    public static Length operator +(Length a, Length b) => new(a.Metres + b.Metres);

    public static Length operator -(Length a, Length b) => new(a.Metres - b.Metres);

    public static Length operator -(Length a) => new(-a.Metres);

    public static Length operator *(Length a, double factor) => new(a.Metres * factor);

    public static Length operator *(double factor, Length a) => new(factor * a.Metres);

    public static Length operator /(Length a, double divisor) => new(a.Metres / divisor);

    public static double operator /(Length a, Length b) => a.Metres / b.Metres;

    public static Area operator *(Length a, Length b) => new(a.Metres * b.Metres);

    public static bool operator <(Length a, Length b) => a.Metres < b.Metres;

    public static bool operator >(Length a, Length b) => a.Metres > b.Metres;

    public static bool operator <=(Length a, Length b) => a.Metres <= b.Metres;

    public static bool operator >=(Length a, Length b) => a.Metres >= b.Metres;

    public int CompareTo(Length other) => Metres.CompareTo(other.Metres);

    /// <summary>For logs and test failures, always invariant; screens use <c>LengthText</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres} m");

    private static string OutOfRange(double metres) => string.Create(
        CultureInfo.InvariantCulture,
        $"A length of {metres} m has no whole number of nanometres: it must be finite and within 9.22e9 m of zero.");
}
