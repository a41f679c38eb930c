using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>A volume in cubic metres. The default value is zero.</summary>
public readonly record struct Volume(double CubicMetres) : IComparable<Volume>
{
    private const double CubicMetresPerCubicFoot = 0.028316846592;
    private const double CubicMetresPerCubicYard = 0.764554857984;

    public static Volume Zero => default;

    public double CubicFeet => CubicMetres / CubicMetresPerCubicFoot;

    public double CubicYards => CubicMetres / CubicMetresPerCubicYard;

    public static Volume FromCubicMetres(double cubicMetres) => new(cubicMetres);

    public static Volume FromCubicFeet(double cubicFeet) => new(cubicFeet * CubicMetresPerCubicFoot);

    public static Volume FromCubicYards(double cubicYards) => new(cubicYards * CubicMetresPerCubicYard);

    public static Volume operator +(Volume a, Volume b) => new(a.CubicMetres + b.CubicMetres);

    public static Volume operator -(Volume a, Volume b) => new(a.CubicMetres - b.CubicMetres);

    public static Volume operator -(Volume a) => new(-a.CubicMetres);

    public static Volume operator *(Volume a, double factor) => new(a.CubicMetres * factor);

    public static Volume operator *(double factor, Volume a) => new(factor * a.CubicMetres);

    public static Volume operator /(Volume a, double divisor) => new(a.CubicMetres / divisor);

    public static double operator /(Volume a, Volume b) => a.CubicMetres / b.CubicMetres;

    public static Area operator /(Volume a, Length b) => new(a.CubicMetres / b.Metres);

    public static Length operator /(Volume a, Area b) => new(a.CubicMetres / b.SquareMetres);

    public static bool operator <(Volume a, Volume b) => a.CubicMetres < b.CubicMetres;

    public static bool operator >(Volume a, Volume b) => a.CubicMetres > b.CubicMetres;

    public static bool operator <=(Volume a, Volume b) => a.CubicMetres <= b.CubicMetres;

    public static bool operator >=(Volume a, Volume b) => a.CubicMetres >= b.CubicMetres;

    public int CompareTo(Volume other) => CubicMetres.CompareTo(other.CubicMetres);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{CubicMetres} m³");
}
