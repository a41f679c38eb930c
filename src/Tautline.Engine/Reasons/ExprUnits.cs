using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Reasons;

/// <summary>
/// The one unit of length a formula is written in, so that its numbers can be typed into a calculator as they stand: inches or
/// millimetres, feet or metres beside weights per foot or metre and in long sums.
/// </summary>
internal sealed class ExprUnits
{
    private const double PoundKilograms = 0.45359237;
    private const double FootMetres = 0.3048;
    private const double LongMetres = 6;

    private readonly string symbol;
    private readonly double metres;
    private readonly string digits;
    private readonly bool us;

    private ExprUnits(bool us, bool small)
    {
        this.us = us;
        (symbol, metres, digits) = (us, small) switch
        {
            (true, true) => ("in", 0.0254, "0.####"),
            (true, false) => ("ft", FootMetres, "0.####"),
            (false, true) => ("mm", 0.001, "0.##"),
            _ => ("m", 1.0, "0.#####"),
        };
    }

    public static ExprUnits For(Expr expr, UnitSystem units)
    {
        var weights = false;
        var shortest = double.MaxValue;
        foreach (var leaf in ExprText.AllLeaves(expr))
            if (leaf.Unit == Unit.LinearMass) weights = true;
            else if (leaf.Unit == Unit.Length && leaf.Value != 0) shortest = Math.Min(shortest, Math.Abs(leaf.Value));
        var us = units == UnitSystem.UsCustomary;
        var solid = expr.Unit == Unit.Volume && !us; // cubic millimetres help nobody
        return new ExprUnits(us, !weights && !solid && shortest < LongMetres);
    }

    /// <summary>A value with its unit, such as '24 in', '0.6 cu ft', '3.65 lb/ft', '0.12'.</summary>
    public string Show(double value, Unit unit) => (unit.Metre, unit.Kilogram) switch
    {
        (0, 0) => Round(value, "0.######"),
        (1, 0) => $"{Round(value / metres, digits)} {symbol}",
        (2, 0) => $"{Round(value / (metres * metres), digits)} sq {symbol}",
        (3, 0) => us ? $"{Round(value / (FootMetres * FootMetres * FootMetres), "0.#####")} cu ft" : $"{Round(value, "0.######")} cu m",
        (0, 1) => us ? $"{Round(value / PoundKilograms, "0.###")} lb" : $"{Round(value, "0.###")} kg",
        (-1, 1) => us ? $"{Round(value * FootMetres / PoundKilograms, "0.###")} lb/ft" : $"{Round(value, "0.####")} kg/m",
        _ => $"{Round(value, "0.######")} m^{unit.Metre} kg^{unit.Kilogram}",
    };

    /// <summary>A volume worked from lengths comes out in the cube of the formula's unit first.</summary>
    public string? Cubic(double value, Unit unit)
        => unit == Unit.Volume && us ? $"{Round(value / (metres * metres * metres), "0.####")} cu {symbol}" : null;

    private static string Round(double value, string format)
    {
        var text = value.ToString(format, CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
