namespace Tautline.Engine.Quantities;
public enum UnitSystem { UsCustomary, Metric }
public readonly record struct Length(double Metres)
{
    public const long NmPerInch = 25_400_000, NmPerFoot = 304_800_000, NmPer64thInch = 396_875;
    public static Length Zero => new(0);
    public static Length FromInches(double v) => new(v * 0.0254);
    public static Length FromFeet(double v) => new(v * 0.3048);
    public static Length FromMillimetres(double v) => new(v / 1000);
    public static Length FromNanometres(long v) => new(v * 1e-9);
    public long Nanometres => (long)Math.Round(Metres * 1e9, MidpointRounding.AwayFromZero);
    public double Feet => Metres / 0.3048;
    public double Inches => Metres / 0.0254;
    public static Length operator +(Length a, Length b) => new(a.Metres + b.Metres);
    public static Length operator -(Length a, Length b) => new(a.Metres - b.Metres);
    public static Length operator *(Length a, double b) => new(a.Metres * b);
    public static Length operator /(Length a, double b) => new(a.Metres / b);
    public static double operator /(Length a, Length b) => a.Metres / b.Metres;
    public static Length Max(Length a, Length b) => a.Metres > b.Metres ? a : b;
}
public readonly record struct Volume(double CubicMetres) { public static Volume FromCubicFeet(double v) => new(v * 0.028316846592); public double CubicFeet => CubicMetres / 0.028316846592; }
public readonly record struct Mass(double Kilograms) { public double Pounds => Kilograms / 0.45359237; }
public readonly record struct LinearMass(double KilogramsPerMetre) { public static LinearMass FromPoundsPerFoot(double v) => new(v * 0.45359237 / 0.3048); public double PoundsPerFoot => KilogramsPerMetre * 0.3048 / 0.45359237; }
public readonly record struct Slope(double Ratio);
public readonly record struct Direction(double East, double North)
{
    public static double Between(Direction a, Direction b) => throw new InvalidOperationException();
}
public static class LengthText { public static string Show(Length l, UnitSystem u) => ""; public static string Inches(Length l, int d) => ""; }
