using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>A mass in kilograms. The default value is zero.</summary>
public readonly record struct Mass(double Kilograms) : IComparable<Mass>
{
    private const double KilogramsPerPound = 0.45359237;

    public static Mass Zero => default;

    /// <summary>Avoirdupois pounds (0.45359237 kg).</summary>
    public double Pounds => Kilograms / KilogramsPerPound;

    public static Mass FromKilograms(double kilograms) => new(kilograms);

    public static Mass FromPounds(double pounds) => new(pounds * KilogramsPerPound);

    public static Mass operator +(Mass a, Mass b) => new(a.Kilograms + b.Kilograms);

    public static Mass operator -(Mass a, Mass b) => new(a.Kilograms - b.Kilograms);

    public static Mass operator -(Mass a) => new(-a.Kilograms);

    public static Mass operator *(Mass a, double factor) => new(a.Kilograms * factor);

    public static Mass operator *(double factor, Mass a) => new(factor * a.Kilograms);

    public static Mass operator /(Mass a, double divisor) => new(a.Kilograms / divisor);

    public static double operator /(Mass a, Mass b) => a.Kilograms / b.Kilograms;

    public static LinearMass operator /(Mass a, Length b) => new(a.Kilograms / b.Metres);

    public static Length operator /(Mass a, LinearMass b) => new(a.Kilograms / b.KilogramsPerMetre);

    public static bool operator <(Mass a, Mass b) => a.Kilograms < b.Kilograms;

    public static bool operator >(Mass a, Mass b) => a.Kilograms > b.Kilograms;

    public static bool operator <=(Mass a, Mass b) => a.Kilograms <= b.Kilograms;

    public static bool operator >=(Mass a, Mass b) => a.Kilograms >= b.Kilograms;

    public int CompareTo(Mass other) => Kilograms.CompareTo(other.Kilograms);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kilograms} kg");
}
