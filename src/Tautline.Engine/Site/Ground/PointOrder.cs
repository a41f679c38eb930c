namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Usable points without duplicates, in the order of a Hilbert curve over their extent, so that what is near in plan is near in memory.
/// The order depends on the places alone, not on the order in which they were given.
/// </summary>
internal sealed class PointOrder
{
    private const int Levels = 26;
    private const double SameHeight = 1e-6;

    private readonly GroundPoint[] given;
    private readonly GroundFindings findings;
    private int[] order = [];
    private ulong[] keys = [];

    /// <param name="given">All points; of two at one place the one with the smaller number stays.</param>
    public PointOrder(GroundPoint[] given, GroundFindings findings)
    {
        (this.given, this.findings) = (given, findings);
        VertexOf = new int[given.Length];
        SortAlongCurve();
        Points = Merge();
        (order, keys) = ([], []);
    }

    /// <summary>The points that stay, settled.</summary>
    public GroundPoint[] Points { get; }

    /// <summary>For each given point its place in <see cref="Points"/>; -1 where it is unusable.</summary>
    public int[] VertexOf { get; }

    /// <summary>
    /// In which order to put n points that lie along a curve into a triangulation: rounds of doubling size, each along the curve. The points of
    /// a round are spread evenly by a fixed scramble of their numbers, which keeps the expected work in proportion to n log n for any data.
    /// </summary>
    public static int[] Rounds(int count)
    {
        const int rounds = 24;
        var starts = new int[rounds + 1];
        for (var i = 0; i < count; i++) starts[Round(i) + 1]++;
        for (var r = 0; r < rounds; r++) starts[r + 1] += starts[r];
        var result = new int[count];
        for (var i = 0; i < count; i++) result[starts[Round(i)]++] = i;
        return result;
    }

    /// <summary>Half of all numbers get the last round, a quarter the one before, and so on.</summary>
    private static int Round(int number) => 23 - Math.Min(23, System.Numerics.BitOperations.TrailingZeroCount(Scramble(number) | 1UL << 40));

    private static ulong Scramble(int number)
    {
        unchecked
        {
            var x = (ulong)number + 0x9E3779B97F4A7C15UL;
            x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
            x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
            return x ^ (x >> 31);
        }
    }

    private void SortAlongCurve()
    {
        order = Usable();
        var box = Extent();
        var side = Math.Max(Math.Max(box.East - box.West, box.North - box.South), 1e-9);
        var scale = ((1 << Levels) - 1) / side;
        keys = new ulong[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            var p = given[order[i]].Settled;
            keys[i] = Hilbert((uint)Math.Max(0, (p.East - box.West) * scale), (uint)Math.Max(0, (p.North - box.South) * scale));
        }
        Array.Sort(keys, order);
    }

    private int[] Usable()
    {
        var usable = new int[given.Length];
        var count = 0;
        for (var i = 0; i < given.Length; i++)
        {
            VertexOf[i] = -1;
            if (given[i].IsUsable) usable[count++] = i;
            else findings.Add(GroundFindingKind.UnusablePoint, given[i], i);
        }
        return count == usable.Length ? usable : usable[..count];
    }

    private PlanBox Extent()
    {
        var (w, s, e, n) = (GroundPoint.FurthestOut, GroundPoint.FurthestOut, -GroundPoint.FurthestOut, -GroundPoint.FurthestOut);
        foreach (var i in order)
            (w, s, e, n) = (Math.Min(w, given[i].East), Math.Min(s, given[i].North), Math.Max(e, given[i].East), Math.Max(n, given[i].North));
        return new(w, s, e, n);
    }

    private GroundPoint[] Merge()
    {
        var points = new GroundPoint[order.Length];
        var count = 0;
        for (var from = 0; from < order.Length;)
        {
            var to = from + 1;
            while (to < order.Length && keys[to] == keys[from]) to++;
            // Equal keys come in no stated order, and only among them can two points share a place.
            if (to - from > 1) Array.Sort(order, from, to - from, Comparer<int>.Create(ByPlace));
            for (; from < to; from++) count = Take(from, points, count);
        }
        return count == points.Length ? points : points[..count];
    }

    private int Take(int position, GroundPoint[] points, int count)
    {
        var number = order[position];
        var p = given[number].Settled;
        if (count == 0 || points[count - 1].East != p.East || points[count - 1].North != p.North) points[count++] = p;
        else if (Math.Abs(points[count - 1].Height - p.Height) > SameHeight)
            findings.Add(GroundFindingKind.TwoHeights, p, points[count - 1].Height, p.Height, FirstAt(position, count - 1), number);
        VertexOf[number] = count - 1;
        return count;
    }

    private int FirstAt(int position, int vertex)
    {
        while (position > 0 && VertexOf[order[position - 1]] == vertex) position--;
        return order[position];
    }

    private int ByPlace(int i, int j)
    {
        var (p, q) = (given[i].Settled, given[j].Settled);
        var byEast = p.East.CompareTo(q.East);
        var byNorth = byEast != 0 ? byEast : p.North.CompareTo(q.North);
        return byNorth != 0 ? byNorth : i.CompareTo(j);
    }

    private static ulong Hilbert(uint x, uint y)
    {
        var key = 0UL;
        for (var bit = 1u << (Levels - 1); bit > 0; bit >>= 1)
        {
            var (right, up) = ((x & bit) != 0, (y & bit) != 0);
            key = key << 2 | (right ? up ? 2UL : 3UL : up ? 1UL : 0UL);
            if (up) continue;
            if (right) (x, y) = (~x & (bit - 1), ~y & (bit - 1));
            (x, y) = (y, x);
        }
        return key;
    }
}
