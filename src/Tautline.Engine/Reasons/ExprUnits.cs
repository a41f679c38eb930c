using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Reasons;

/// <summary>
/// The one unit of length a formula is written in, so that its numbers can be typed into a calculator as they stand: inches or
/// millimetres, feet or metres beside weights per foot or metre and in long sums. Where forces come in, feet or metres for loads, soil and wind,
/// inches or millimetres for steel, and every unit of the formula is made of that one.
/// </summary>
internal sealed class ExprUnits
{
    /// <summary>Cubic metres under which a volume is a modulus of a section and no concrete.</summary>
    public const double SmallVolume = 1e-3;

    private const double PoundKilograms = 0.45359237;
    private const double FootMetres = 0.3048;
    private const double InchMetres = 0.0254;
    private const double LongMetres = 6;
    private const double Gravity = 9.80665;
    private const double PoundNewtons = PoundKilograms * Gravity;
    private const double MileHour = 0.44704;

    /// <summary>Pascals over which a pressure is a stress in a material.</summary>
    private const double LeastStress = 2e6;

    private readonly string symbol;
    private readonly double metres;
    private readonly string digits;
    private readonly bool us;

    private ExprUnits(bool us, bool small)
    {
        this.us = us;
        (symbol, metres, digits) = (us, small) switch
        {
            (true, true) => ("in", InchMetres, "0.####"),
            (true, false) => ("ft", FootMetres, "0.####"),
            (false, true) => ("mm", 0.001, "0.##"),
            _ => ("m", 1.0, "0.#####"),
        };
    }

    public static ExprUnits For(Expr expr, UnitSystem units)
    {
        var (weights, forces, steel) = (false, expr.Unit.Second != 0, false);
        var shortest = double.MaxValue;
        foreach (var leaf in ExprText.AllLeaves(expr).Append(expr))
        {
            if (leaf.Unit == Unit.LinearMass) weights = true;
            else if (leaf is Leaf && leaf.Unit == Unit.Length && leaf.Value != 0) shortest = Math.Min(shortest, Math.Abs(leaf.Value));
            forces |= leaf.Unit.Second != 0;
            steel |= leaf.Unit == Unit.SecondMoment || (leaf.Unit == Unit.Volume && Math.Abs(leaf.Value) is > 0 and < SmallVolume)
                || (leaf.Unit == Unit.Pressure && Math.Abs(leaf.Value) > LeastStress);
        }
        var us = units == UnitSystem.UsCustomary;
        if (forces || steel) return new ExprUnits(us, steel);
        var solid = expr.Unit == Unit.Volume && !us; // cubic millimetres help nobody
        return new ExprUnits(us, !weights && !solid && shortest < LongMetres);
    }

    /// <summary>A value with its unit, such as '24 in', '0.6 cu ft', '3.65 lb/ft', '20.1 psf', '0.12'.</summary>
    public string Show(double value, Unit unit) => (unit.Metre, unit.Kilogram, unit.Second) switch
    {
        (0, 0, 0) => Round(value, "0.######"),
        (1, 0, 0) => $"{Round(value / metres, digits)} {symbol}",
        (2, 0, 0) => $"{Round(value / (metres * metres), digits)} sq {symbol}",
        (3, 0, 0) => Cube(value),
        (4, 0, 0) => $"{Round(value / (metres * metres * metres * metres), "0.######")} {symbol}^4",
        (-1, 0, 0) => $"{Round(value * metres, "0.#########")} /{symbol}",
        (0, 1, 0) => us ? $"{Round(value / PoundKilograms, "0.###")} lb" : $"{Round(value, "0.###")} kg",
        (-1, 1, 0) => us ? $"{Round(value * FootMetres / PoundKilograms, "0.###")} lb/ft" : $"{Round(value, "0.####")} kg/m",
        (1, 0, -1) => us ? $"{Round(value / MileHour, "0.###")} mph" : $"{Round(value, "0.###")} m/s",
        (-3, 1, 0) => us ? $"{Round(value * MileHour * MileHour / (PoundNewtons / (FootMetres * FootMetres)), "0.########")} psf/mph^2" : $"{Round(value, "0.####")} kg/cu m",
        (_, 1, -2) => Force(value, unit.Metre - 1),
        _ => $"{Round(value, "0.######")} m^{unit.Metre} kg^{unit.Kilogram} s^{unit.Second}",
    };

    /// <summary>A volume worked from lengths comes out in the cube of the formula's unit first.</summary>
    public string? Cubic(double value, Unit unit)
        => unit == Unit.Volume && us ? $"{Round(value / (metres * metres * metres), "0.####")} cu {symbol}" : null;

    private string Cube(double value)
    {
        if (Math.Abs(value) is > 0 and < SmallVolume) return $"{Round(value / (metres * metres * metres), "0.####")} cu {symbol}";
        return us ? $"{Round(value / (FootMetres * FootMetres * FootMetres), "0.#####")} cu ft" : $"{Round(value, "0.######")} cu m";
    }

    /// <summary>A force times or over a power of a length.</summary>
    private string Force(double value, int power)
    {
        var number = value / (us ? PoundNewtons : 1);
        for (var i = 0; i < power; i++) number /= metres;
        for (var i = 0; i > power; i--) number *= metres;
        var force = us ? "lb" : "N";
        return Round(number, "0.####") + " " + (power, symbol) switch
        {
            (0, _) => force,
            (1, _) => $"{force}-{symbol}",
            (-1, _) => $"{force}/{symbol}",
            (-2, "ft") => "psf",
            (-2, "in") => "psi",
            (-2, "m") => "Pa",
            (-2, "mm") => "MPa",
            (-3, _) => $"{force}/cu {symbol}",
            _ => $"{force} {symbol}^{power}",
        };
    }

    private static string Round(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
