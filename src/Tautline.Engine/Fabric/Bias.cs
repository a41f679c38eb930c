using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>
/// Which edge of a square end is too long for a plumb terminal: it passes it and is cut back, while the other misses it. As cut, the
/// other edge reaches farther.
/// </summary>
public enum LongEdge { None, Top, Bottom }

/// <summary>Where the interlocks lie at which a cut first steps over, counted from the top edge.</summary>
public enum FirstInterlock
{
    /// <summary>Not looked at yet: rows are to the nearest half, whichever it is.</summary>
    Unknown,

    /// <summary>On whole diamonds.</summary>
    Whole,

    /// <summary>On half diamonds.</summary>
    Half,
}

/// <summary>The stepped cut at a plumb terminal on a grade.</summary>
public static class Bias
{
    /// <summary>Mismatch of top and bottom along the rail: W * |t|.</summary>
    public static N Mismatch<N>(ResolvedSpec spec, double grade) where N : struct, INumber<N>
        => N.Given("height of one width of fabric", spec.Width.Metres, Unit.Length) * N.Size(N.Given("grade", grade, Unit.Ratio));

    /// <summary>Picket columns the cut runs over; 0 or 1 is dressed out with a short puller.</summary>
    public static N Columns<N>(N mismatch, N advance) where N : struct, INumber<N> => N.Nearest(mismatch, advance);

    /// <summary>Rows at which to step over, in diamonds from the top, to the nearest half; the last column runs out at the selvage.</summary>
    public static IReadOnlyList<double> Crossings(int columns, int rows)
        => columns < 2 ? [] : [.. Enumerable.Range(1, columns - 1).Select(k => Decide.Nearest(2.0 * k * rows / columns, 1) / 2.0)];

    /// <summary>
    /// The same once the end has been looked at. Interlocks of neighbouring pickets lie half a diamond apart, so crossings go by turns to
    /// the nearest whole and the nearest half row, a tie downwards.
    /// </summary>
    public static IReadOnlyList<double> Crossings(int columns, int rows, FirstInterlock first)
    {
        if (first == FirstInterlock.Unknown || columns < 2) return Crossings(columns, rows);
        var halfFirst = first == FirstInterlock.Half ? 1 : 0;
        return [.. Enumerable.Range(1, columns - 1).Select(k => NearestOf((double)k * rows / columns, (k - 1 + halfFirst) % 2 * 0.5))];
    }

    /// <param name="riseTowards">Grade seen walking towards the terminal.</param>
    public static LongEdge Edge(double riseTowards) => riseTowards > 0 ? LongEdge.Bottom : riseTowards < 0 ? LongEdge.Top : LongEdge.None;

    /// <summary>The cut at a terminal, from the slope of the rail.</summary>
    /// <param name="riseTowards">Grade seen walking towards the terminal.</param>
    public static BiasCut Cut(ResolvedSpec spec, Slope riseTowards, Length advance, FirstInterlock first = FirstInterlock.Unknown)
        => Cut(new Length(Mismatch<Plain>(spec, riseTowards.Ratio).Value), Edge(riseTowards.Ratio), advance, Rows(spec), first);

    /// <summary>The cut for a mismatch; its rows are the whole diamonds over the height.</summary>
    public static BiasCut Cut(Length mismatch, LongEdge longEdge, Length advance, int rows, FirstInterlock first = FirstInterlock.Unknown)
    {
        var columns = (int)Decide.Nearest(mismatch.Metres, advance.Metres);
        return new BiasCut(columns, rows, Crossings(columns, rows, first), columns == 0 ? LongEdge.None : longEdge) { First = first };
    }

    /// <summary>Whole diamonds over the height.</summary>
    public static int Rows(ResolvedSpec spec) => (int)MeshFormulas.WholeRows<Plain>(spec).Value;

    /// <summary>
    /// By how much the top edge of a pull, laid flat, is cut longer than its bottom edge, walking forward from one slope of the rail to another:
    /// W * (to - from). The bends in between take it up: each slides the edges by its own change of slope, and together they telescope.
    /// </summary>
    public static Length Sliding(Length width, Slope from, Slope to) => width * (to - from).Ratio;

    /// <summary>
    /// True where the fence is better stepped than raked: over the rule's steepest rail (our own figure), or where the cut would have to
    /// step over more than once in half a diamond, for interlocks lie no closer.
    /// </summary>
    public static bool StepInstead(ResolvedSpec spec, Slope rise, int columns)
        => Math.Abs(rise.Ratio) > spec.Rules.RakeMax.Value + 1e-12 || !IsCuttable(columns, Rows(spec));

    /// <summary>False where the cut would have to step over more than once in half a diamond.</summary>
    public static bool IsCuttable(int columns, int rows) => columns < 2 * rows;

    /// <summary>The row nearest to a target among those that lie a whole number of diamonds from an offset of 0 or 1/2.</summary>
    private static double NearestOf(double target, double offset) => offset + Math.Floor(target - offset + 0.5 + 1e-9);
}
