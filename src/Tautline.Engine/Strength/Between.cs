using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength;

/// <summary>Reads published tables, straight between their rows; beyond the first and the last row their value holds.</summary>
internal static class Between
{
    /// <param name="steps">Ascending.</param>
    /// <param name="scale">SI for one of the table's own units of a step.</param>
    public static N Table<N>(N at, ReadOnlySpan<double> steps, ReadOnlySpan<double> values, double scale, Unit unit, string step, string value, Provenance from)
        where N : struct, INumber<N>
    {
        var (low, high) = Around(at.Value, steps, scale);
        N Value(ReadOnlySpan<double> all, int i) => N.Listed(value, all[i], Unit.Ratio, from);
        if (low == high) return Value(values, low);
        var (a, b) = (N.Listed(step, steps[low] * scale, unit, from), N.Listed(step, steps[high] * scale, unit, from));
        return Line(at, a, b, Value(values, low), Value(values, high));
    }

    /// <summary>On the straight line between two points.</summary>
    public static N Line<N>(N at, N a, N b, N atA, N atB) where N : struct, INumber<N> => atA + (atB - atA) * ((at - a) / (b - a));

    /// <summary>The two neighbouring steps around a value; twice the same where it is on or beyond one.</summary>
    public static (int Low, int High) Around(double at, ReadOnlySpan<double> steps, double scale = 1)
    {
        if (at <= steps[0] * scale) return (0, 0);
        for (var i = 1; i < steps.Length; i++)
            if (at <= steps[i] * scale) return at == steps[i] * scale ? (i, i) : (i - 1, i);
        return (steps.Length - 1, steps.Length - 1);
    }
}
