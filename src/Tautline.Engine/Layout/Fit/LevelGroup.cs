namespace Tautline.Engine.Layout.Fit;

/// <summary>What a group of level bays costs, in whole 1e-7 m or m2, compared in this order.</summary>
/// <param name="Pins">By how much pinned tops within the group differ from its level.</param>
/// <param name="Forbidden">Length times cut and fill for which no remedy is allowed.</param>
/// <param name="Grading">Priced cut and fill.</param>
/// <param name="Steps">Posts that a step turns into terminals.</param>
/// <param name="Height">Length times level over the lowest ground: the lower fence wins.</param>
internal readonly record struct SteppedCost(long Pins, long Forbidden, long Grading, int Steps, long Height) : IComparable<SteppedCost>
{
    public int CompareTo(SteppedCost other)
        => (Pins, Forbidden, Grading, Steps, Height).CompareTo((other.Pins, other.Forbidden, other.Grading, other.Steps, other.Height));

    public static SteppedCost operator +(SteppedCost a, SteppedCost b)
        => new(a.Pins + b.Pins, a.Forbidden + b.Forbidden, a.Grading + b.Grading, a.Steps + b.Steps, a.Height + b.Height);
}

/// <summary>
/// Bays that share one level. What they cost is a convex broken line over the level, so the lowest best level is the first corner
/// from which it no longer falls; a pinned post among them settles it.
/// </summary>
internal sealed class LevelGroup
{
    private const double Unit = 1e-7;
    private const double Flat = 1e-9;

    private readonly FitInput input;
    private readonly double datum;
    private readonly double cutPrice;
    private readonly double fillPrice;
    private readonly List<(double Length, double CutBelow, double FillAbove)> bays = [];
    private readonly List<(double Level, double Forbidden, double Price)> corners = [];
    private readonly List<double> pins = [];
    private double forbiddenStart;
    private double priceStart;

    /// <param name="datum">Height from which the fence's height counts.</param>
    public LevelGroup(FitInput input, double datum)
    {
        (this.input, this.datum) = (input, datum);
        cutPrice = (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) != 0 ? input.Limits.CutCost : 0;
        fillPrice = (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) != 0 ? input.Limits.FillCost : 0;
    }

    public void Clear()
    {
        bays.Clear();
        corners.Clear();
        pins.Clear();
        (forbiddenStart, priceStart) = (0, 0);
    }

    public void Add(int bay, ReadOnlySpan<(double Share, double Height)> upper, ReadOnlySpan<(double Share, double Height)> lower)
    {
        var (highest, lowest) = (double.NegativeInfinity, double.PositiveInfinity);
        foreach (var (_, height) in upper) highest = Math.Max(highest, height);
        foreach (var (_, height) in lower) lowest = Math.Min(lowest, height);
        var length = input.Posts[bay + 1].Station - input.Posts[bay].Station;
        var cut = highest + input.Limits.LeastGap + input.Limits.FabricHeight;
        var fill = lowest + input.Limits.MostGap + input.Limits.FabricHeight;
        bays.Add((length, cut, fill));
        Corner(cut, length, cutPrice);
        Corner(fill, length, fillPrice);
        (forbiddenStart, priceStart) = (forbiddenStart - (cutPrice == 0 ? length : 0), priceStart - cutPrice * length);
        if (input.Posts[bay].Pinned is { } from) pins.Add(from);
        if (input.Posts[bay + 1].Pinned is { } to) pins.Add(to);
    }

    public (double Level, SteppedCost Cost) Best()
    {
        var level = pins.Count > 0 ? pins.Min() : Lowest();
        var (forbidden, price, height, off) = (0.0, 0.0, 0.0, 0.0);
        foreach (var (length, cutBelow, fillAbove) in bays)
        {
            var (cut, fill) = (length * Math.Max(0, cutBelow - level), length * Math.Max(0, level - fillAbove));
            forbidden += (cutPrice == 0 ? cut : 0) + (fillPrice == 0 ? fill : 0);
            price += cutPrice * cut + fillPrice * fill;
            height += length * (level - datum);
        }
        foreach (var pin in pins) off += Math.Abs(pin - level);
        return (level, new SteppedCost(Whole(off), Whole(forbidden), Whole(price), 0, Whole(height)));
    }

    private static long Whole(double amount) => (long)Math.Round(amount / Unit);

    private void Corner(double level, double length, double price)
    {
        var corner = (level, price == 0 ? length : 0, price * length);
        var at = corners.BinarySearch(corner);
        corners.Insert(at < 0 ? ~at : at, corner);
    }

    private double Lowest()
    {
        var (forbidden, price) = (forbiddenStart, priceStart);
        foreach (var (level, more, dearer) in corners)
        {
            (forbidden, price) = (forbidden + more, price + dearer);
            if (forbidden > Flat || (forbidden > -Flat && price > -Flat)) return level;
        }
        return corners[^1].Level;
    }
}
