using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>Mass per length, as pipe and fabric are listed, in kilograms per metre. The default value is zero.</summary>
public readonly record struct LinearMass(double KilogramsPerMetre) : IComparable<LinearMass>
{
    private const double KilogramsPerMetrePerPoundPerFoot = 0.45359237 / 0.3048;

    public static LinearMass Zero => default;

    /// <summary>Avoirdupois pounds per international foot.</summary>
    public double PoundsPerFoot => KilogramsPerMetre / KilogramsPerMetrePerPoundPerFoot;

    public static LinearMass FromKilogramsPerMetre(double kilogramsPerMetre) => new(kilogramsPerMetre);

    public static LinearMass FromPoundsPerFoot(double poundsPerFoot) => new(poundsPerFoot * KilogramsPerMetrePerPoundPerFoot);

    public static LinearMass operator +(LinearMass a, LinearMass b) => new(a.KilogramsPerMetre + b.KilogramsPerMetre);

    public static LinearMass operator -(LinearMass a, LinearMass b) => new(a.KilogramsPerMetre - b.KilogramsPerMetre);

    public static LinearMass operator -(LinearMass a) => new(-a.KilogramsPerMetre);

    public static LinearMass operator *(LinearMass a, double factor) => new(a.KilogramsPerMetre * factor);

    public static LinearMass operator *(double factor, LinearMass a) => new(factor * a.KilogramsPerMetre);

    public static LinearMass operator /(LinearMass a, double divisor) => new(a.KilogramsPerMetre / divisor);

    public static double operator /(LinearMass a, LinearMass b) => a.KilogramsPerMetre / b.KilogramsPerMetre;

    public static Mass operator *(LinearMass a, Length b) => new(a.KilogramsPerMetre * b.Metres);

    public static Mass operator *(Length a, LinearMass b) => new(a.Metres * b.KilogramsPerMetre);

    public static bool operator <(LinearMass a, LinearMass b) => a.KilogramsPerMetre < b.KilogramsPerMetre;

    public static bool operator >(LinearMass a, LinearMass b) => a.KilogramsPerMetre > b.KilogramsPerMetre;

    public static bool operator <=(LinearMass a, LinearMass b) => a.KilogramsPerMetre <= b.KilogramsPerMetre;

    public static bool operator >=(LinearMass a, LinearMass b) => a.KilogramsPerMetre >= b.KilogramsPerMetre;

    public int CompareTo(LinearMass other) => KilogramsPerMetre.CompareTo(other.KilogramsPerMetre);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{KilogramsPerMetre} kg/m");
}
