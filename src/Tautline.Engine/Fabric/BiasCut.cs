using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>How a piece that falls off a bias cut can serve at another end.</summary>
public enum OffcutUse
{
    None,

    /// <summary>Its other side is the cut that is wanted; unroll it from whichever end suits.</summary>
    Mirror,

    /// <summary>The same, turned top for bottom, which only fabric with two like edges may be.</summary>
    TopForBottom,
}

/// <summary>A bias cut at one end of a piece of fabric.</summary>
/// <param name="Columns">Picket columns it runs over; 0 or 1 is dressed with a short puller, not cut.</param>
/// <param name="Rows">Whole diamonds over the height.</param>
/// <param name="Crossings">Where to step over, in diamonds from the top edge, ascending; one fewer than the columns.</param>
/// <param name="LongEdge">None only for no columns.</param>
public sealed record BiasCut(int Columns, int Rows, IReadOnlyList<double> Crossings, LongEdge LongEdge)
{
    public FirstInterlock First { get; init; }

    public bool Dressed => Columns < 2;

    /// <summary>False where it would have to step over more than once in half a diamond: then the fence is stepped.</summary>
    public bool Cuttable => Bias.IsCuttable(Columns, Rows);

    /// <summary>True where going down the cut steps out toward the terminal: the top is cut back. Else it steps in toward the roll.</summary>
    public bool StepsOut => LongEdge == LongEdge.Top;

    /// <summary>What is cut off a square end, in diamonds, from the inmost column out; each is a part of one picket.</summary>
    public IReadOnlyList<double> PartPickets => StepsOut ? Crossings : [.. Crossings.Reverse().Select(h => Rows - h)];

    /// <summary>What falls off a square end, in diamonds of single pickets.</summary>
    public double WastePicketDiamonds => PartPickets.Sum();

    /// <summary>The same as a length of full-height fabric, near half the mismatch.</summary>
    public Length Waste(Length advance) => WastePicketDiamonds / Rows * advance;

    /// <summary>
    /// Whether what lies on the other side of this cut is the end that another terminal wants. It has as many columns and the other edge
    /// long. Unrolled from its other end it faces the other way with the same edge long.
    /// </summary>
    /// <param name="selvage">Upper and lower edge: 'KK', 'KT', 'TK' or 'TT'.</param>
    public OffcutUse OffcutFor(BiasCut wanted, string selvage)
    {
        if (Dressed || wanted.Columns != Columns || wanted.Rows != Rows) return OffcutUse.None;
        if (wanted.LongEdge != LongEdge) return OffcutUse.Mirror;
        return selvage is [var top, var bottom] && top == bottom ? OffcutUse.TopForBottom : OffcutUse.None;
    }
}

/// <summary>
/// Two tape readings under tension, both from the inner side of one and the same picket out to where the bar will stand. The edge that reads
/// more has farther to reach; the other is the long one, and is cut back.
/// </summary>
/// <param name="Top">Along the top edge.</param>
/// <param name="Bottom">Along the bottom edge.</param>
/// <param name="AdvanceLow">Least picket advance; equal to the greatest where ten pickets were measured.</param>
/// <param name="AdvanceHigh">Greatest picket advance.</param>
public sealed record BiasReadings(Length Top, Length Bottom, Length AdvanceLow, Length AdvanceHigh)
{
    public FirstInterlock First { get; init; }

    /// <summary>The edge the plan has as the long one; none where nothing is expected.</summary>
    public LongEdge Expected { get; init; }
}

/// <summary>A cut from two tape readings.</summary>
/// <param name="Mismatch">Difference of the readings.</param>
/// <param name="ColumnsLow">Columns at the greatest advance.</param>
/// <param name="ColumnsHigh">Columns at the least.</param>
/// <param name="StartAfter">Whole pickets from the marked one to the picket that ends the edge cut back.</param>
public sealed record MeasuredCut(BiasCut Cut, Length Mismatch, int ColumnsLow, int ColumnsHigh, int StartAfter);
