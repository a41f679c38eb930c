using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>An area in square metres. The default value is zero.</summary>
public readonly record struct Area(double SquareMetres) : IComparable<Area>
{
    private const double SquareMetresPerSquareFoot = 0.09290304;

    public static Area Zero => default;

    public double SquareFeet => SquareMetres / SquareMetresPerSquareFoot;

    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);

    public static Area FromSquareFeet(double squareFeet) => new(squareFeet * SquareMetresPerSquareFoot);

    public static Area operator +(Area a, Area b) => new(a.SquareMetres + b.SquareMetres);

    public static Area operator -(Area a, Area b) => new(a.SquareMetres - b.SquareMetres);

    public static Area operator -(Area a) => new(-a.SquareMetres);

    public static Area operator *(Area a, double factor) => new(a.SquareMetres * factor);

    public static Area operator *(double factor, Area a) => new(factor * a.SquareMetres);

    public static Area operator /(Area a, double divisor) => new(a.SquareMetres / divisor);

    public static double operator /(Area a, Area b) => a.SquareMetres / b.SquareMetres;

    public static Volume operator *(Area a, Length b) => new(a.SquareMetres * b.Metres);

    public static Volume operator *(Length a, Area b) => new(a.Metres * b.SquareMetres);

    public static Length operator /(Area a, Length b) => new(a.SquareMetres / b.Metres);

    public static bool operator <(Area a, Area b) => a.SquareMetres < b.SquareMetres;

    public static bool operator >(Area a, Area b) => a.SquareMetres > b.SquareMetres;

    public static bool operator <=(Area a, Area b) => a.SquareMetres <= b.SquareMetres;

    public static bool operator >=(Area a, Area b) => a.SquareMetres >= b.SquareMetres;

    public int CompareTo(Area other) => SquareMetres.CompareTo(other.SquareMetres);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{SquareMetres} m²");
}
