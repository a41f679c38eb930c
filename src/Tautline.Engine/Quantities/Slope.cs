using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>
/// Rise over horizontal run, signed: positive climbs in the direction of travel. The default value is level.
/// </summary>
public readonly record struct Slope(double Ratio) : IComparable<Slope>
{
    public static Slope Level => default;

    public double Percent => Ratio * 100;

    /// <summary>The angle from the horizontal, within (-90, 90).</summary>
    public double Degrees => Trig.AtanDegrees(Ratio);

    public static Slope FromRatio(double ratio) => new(ratio);

    public static Slope FromPercent(double percent) => new(percent / 100);

    /// <param name="degrees">From the horizontal, within (-90, 90).</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is plumb or beyond, or not a number.</exception>
    public static Slope FromDegrees(double degrees) => degrees is > -90 and < 90
        ? new(Trig.TanDegrees(degrees))
        : throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "A slope lies between -90 and 90 degrees, both excluded.");

    public static Slope FromRiseAndRun(Length rise, Length run) => new(rise / run);

    /// <summary>The bend from <paramref name="b"/> to <paramref name="a"/>, as a change of ratio.</summary>
    public static Slope operator -(Slope a, Slope b) => new(a.Ratio - b.Ratio);

    public static Slope operator -(Slope a) => new(-a.Ratio);

    /// <summary>The rise over a horizontal run.</summary>
    public static Length operator *(Slope slope, Length run) => new(slope.Ratio * run.Metres);

    public static Length operator *(Length run, Slope slope) => new(run.Metres * slope.Ratio);

    public static bool operator <(Slope a, Slope b) => a.Ratio < b.Ratio;

    public static bool operator >(Slope a, Slope b) => a.Ratio > b.Ratio;

    public static bool operator <=(Slope a, Slope b) => a.Ratio <= b.Ratio;

    public static bool operator >=(Slope a, Slope b) => a.Ratio >= b.Ratio;

    public int CompareTo(Slope other) => Ratio.CompareTo(other.Ratio);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Percent} %");
}
