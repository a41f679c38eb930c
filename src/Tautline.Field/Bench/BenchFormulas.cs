using Tautline.Engine.Reasons;

namespace Tautline.Field.Bench;

/// <summary>The sums done at the truck, each once over a number that can say why. Lengths in metres.</summary>
public static class BenchFormulas
{
    private const double Pi = 3.14159265358979323846;

    /// <summary>Fewest bays of at most a length.</summary>
    public static N Bays<N>(N span, N most) where N : struct, INumber<N> => N.Cover(span, most);

    public static N Bay<N>(N span, N bays) where N : struct, INumber<N> => span / bays;

    public static N Slope<N>(N rise, N run) where N : struct, INumber<N> => rise / run;

    /// <summary>Along the ground.</summary>
    public static N Along<N>(N rise, N run) where N : struct, INumber<N> => N.Root(rise * rise + run * run);

    /// <summary>Longest side of a square corner: a corner is square where the diagonal between its marks is this.</summary>
    public static N Diagonal<N>(N a, N b) where N : struct, INumber<N> => N.Root(a * a + b * b);

    /// <summary>Top against bottom at a plumb terminal: fabric height, square to the rail, times the slope.</summary>
    public static N Mismatch<N>(N height, N slope) where N : struct, INumber<N> => height * N.Size(slope);

    /// <summary>Picket columns a bias runs over: the nearest whole number.</summary>
    public static N Columns<N>(N mismatch, N advance) where N : struct, INumber<N> => N.Nearest(mismatch, advance);

    public static N Advance<N>(N tenPickets) where N : struct, INumber<N> => tenPickets / N.Constant(10);

    /// <summary>Hole minus post, with what the ground broke out besides.</summary>
    public static N Concrete<N>(N hole, N post, N depth, N overBreak) where N : struct, INumber<N>
        => N.Constant(Pi) / N.Constant(4) * (hole * hole - post * post) * depth * (N.Constant(1) + overBreak);

    /// <summary>Whole bags for one hole: what is left of an opened bag is not carried to the next.</summary>
    public static N Bags<N>(N concrete, N yield) where N : struct, INumber<N> => N.Cover(concrete, yield);

    /// <summary>One leaf: the opening less what hinges, latch and gaps take, over its leaves.</summary>
    public static N Leaf<N>(N opening, N deduct, N leaves) where N : struct, INumber<N> => (opening - deduct) / leaves;

    public static N Centres<N>(N opening, N post) where N : struct, INumber<N> => opening + post;

    /// <summary>A rail between two posts: centres less half of each.</summary>
    public static N Rail<N>(N centres, N first, N second) where N : struct, INumber<N> => centres - (first + second) / N.Constant(2);
}
