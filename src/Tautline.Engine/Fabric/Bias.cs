using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>Which edge of the fabric is the longer one at a terminal.</summary>
public enum LongEdge { None, Top, Bottom }

/// <summary>The stepped cut at a plumb terminal on a grade.</summary>
public static class Bias
{
    /// <summary>Mismatch of top and bottom along the rail: W * |t|.</summary>
    public static N Mismatch<N>(ResolvedSpec spec, double grade) where N : struct, INumber<N>
        => N.Given("fabric height", spec.Height.Metres, Unit.Length) * N.Size(N.Given("grade", grade, Unit.Ratio));

    /// <summary>Picket columns the cut runs over; 0 or 1 is dressed out with a short puller.</summary>
    public static N Columns<N>(N mismatch, N advance) where N : struct, INumber<N> => N.Nearest(mismatch, advance);

    /// <summary>Rows at which to step over, in diamonds from the top, to the nearest half; the last column runs out at the selvage.</summary>
    public static IReadOnlyList<double> Crossings(int columns, int rows)
        => columns < 2 ? [] : [.. Enumerable.Range(1, columns - 1).Select(k => Decide.Nearest(2.0 * k * rows / columns, 1) / 2.0)];

    /// <param name="riseTowards">Grade seen walking towards the terminal.</param>
    public static LongEdge Edge(double riseTowards) => riseTowards > 0 ? LongEdge.Bottom : riseTowards < 0 ? LongEdge.Top : LongEdge.None;
}
