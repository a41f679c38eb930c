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
    public static double Between(Direction a, Direction b)
    {
        var cross = b.East * a.North - b.North * a.East; var dot = a.East * b.East + a.North * b.North;
        if (cross == 0) return dot >= 0 ? 0 : 180;
        if (dot == 0) return cross > 0 ? 90 : -90;
        var x = Math.Abs(cross / dot); var inv = x > 1; if (inv) x = 1 / x;
        for (var i = 0; i < 4; i++) x = x / (1 + Math.Sqrt(1 + x * x));
        double t = x, sum = 0; for (var k = 0; k < 20; k++) { sum += (k % 2 == 0 ? 1 : -1) * t / (2 * k + 1); t *= x * x; }
        var deg = sum * 16 * 180 / Math.PI; if (inv) deg = 90 - deg; if (dot < 0) deg = 180 - deg;
        return cross > 0 ? deg : -deg;
    }
}
public static class LengthText { public static string Show(Length l, UnitSystem u) => ""; public static string Inches(Length l, int d) => ""; }
