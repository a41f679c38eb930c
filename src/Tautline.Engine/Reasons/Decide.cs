namespace Tautline.Engine.Reasons;

/// <summary>
/// Whole decisions, made on whole billionths: nanometres for lengths, cubic millimetres for volumes. Two figures that differ
/// by less than half a billionth are the same.
/// </summary>
public static class Decide
{
    public static long Billionths(double value)
    {
        var scaled = value * 1e9;
        if (!(Math.Abs(scaled) < 9e18)) throw new OverflowException($"{value} is too large to decide on in whole billionths");
        return (long)Math.Round(scaled, MidpointRounding.AwayFromZero);
    }

    public static long Cover(double a, double b)
    {
        var (x, y) = (Billionths(a), Positive(b));
        return x <= 0 ? 0 : (x - 1) / y + 1;
    }

    public static long Fit(double a, double b) => Math.Max(0, Billionths(a)) / Positive(b);

    public static long Nearest(double a, double b)
    {
        var (x, y) = (Math.Max(0, Billionths(a)), Positive(b));
        return (long)((2 * (Int128)x + y) / (2 * (Int128)y));
    }

    public static double NextSize(double a, IReadOnlyList<double> ladder)
    {
        var x = Billionths(a);
        for (var i = 0; i < ladder.Count; i++) // no enumerator: this runs once for every post
            if (Billionths(ladder[i]) >= x) return ladder[i];
        return a;
    }

    /// <summary>First-fit decreasing; returns the number of sticks.</summary>
    public static int Pack(double stick, double[] pieces)
    {
        var capacity = Positive(stick);
        var lengths = Array.ConvertAll(pieces, Billionths);
        Array.Sort(lengths);
        List<long> room = [];
        for (var i = lengths.Length - 1; i >= 0; i--) Place(lengths[i], capacity, room);
        return room.Count;
    }

    private static void Place(long piece, long capacity, List<long> room)
    {
        if (piece <= 0) return;
        if (piece > capacity) throw new ArgumentException($"a piece of {piece} does not fit a stick of {capacity} billionths");
        var at = room.FindIndex(r => r >= piece);
        if (at < 0) room.Add(capacity - piece);
        else room[at] -= piece;
    }

    private static long Positive(double value)
    {
        var whole = Billionths(value);
        return whole > 0 ? whole : throw new ArgumentOutOfRangeException(nameof(value), value, "must be above zero");
    }
}
