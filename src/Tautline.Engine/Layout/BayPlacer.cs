namespace Tautline.Engine.Layout;

/// <summary>A stretch of a run where no post may stand, both ends themselves allowed.</summary>
public readonly record struct Forbidden(long From, long To);

/// <summary>Where the posts of a run stand, both ends included, and by how much its bays exceed the limit in all.</summary>
public sealed record Placing(IReadOnlyList<long> Posts, long Excess);

/// <summary>
/// Places line posts between two fixed ones: (1) least total excess over the largest bay, (2) fewest bays, (3) smallest largest
/// bay, (4) least sum of squared bays. In an optimum every post that is not at an edge of a forbidden stretch has equal
/// neighbours, so a dynamic program over those edges and the number of bays finds it exactly. All lengths are whole nanometres.
/// </summary>
public sealed class BayPlacer
{
    private const long Never = long.MaxValue / 4;

    private readonly long[] points;
    private readonly Forbidden[] forbidden;
    private readonly long largest;
    private readonly long smallest;

    private BayPlacer(long length, long largest, long smallest, IReadOnlyList<Forbidden> forbidden)
    {
        (this.largest, this.smallest, this.forbidden) = (largest, smallest, Merge(forbidden, length));
        points = [.. this.forbidden.SelectMany(f => new[] { f.From, f.To }).Append(0).Append(length)
            .Where(p => p >= 0 && p <= length).Distinct().Order()];
    }

    /// <param name="length">Distance between the two fixed posts.</param>
    /// <param name="largest">Largest bay allowed, its tolerance included.</param>
    /// <param name="smallest">Smallest bay wanted next to a forbidden stretch.</param>
    /// <param name="forbidden">Where no post may stand.</param>
    public static Placing Place(long length, long largest, long smallest, IReadOnlyList<Forbidden> forbidden)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(largest, 1);
        var even = (length - 1) / largest + 1;
        var simple = Even(0, length, even);
        var placer = new BayPlacer(length, largest, smallest, forbidden);
        return placer.forbidden.Length == 0 || placer.IsFree(simple) ? new Placing(simple, 0) : placer.Solve();
    }

    private static long[] Even(long from, long to, long bays)
        => [.. Enumerable.Range(0, (int)bays + 1).Select(i => At(from, to, bays, i))];

    /// <summary>Post i of evenly divided bays, rounded to the nanometre from the start so that the bays add up.</summary>
    private static long At(long from, long to, long bays, long i) => from + (long)((2 * (Int128)(to - from) * i + bays) / (2 * (Int128)bays));

    private static Forbidden[] Merge(IReadOnlyList<Forbidden> zones, long length)
    {
        List<Forbidden> merged = [];
        foreach (var zone in zones.Where(z => z.To > z.From && z.To > 0 && z.From < length).OrderBy(z => z.From))
            if (merged.Count > 0 && zone.From < merged[^1].To) merged[^1] = merged[^1] with { To = Math.Max(merged[^1].To, zone.To) };
            else merged.Add(zone);
        return [.. merged];
    }

    private bool IsFree(ReadOnlySpan<long> posts)
    {
        foreach (var post in posts[1..^1])
            if (IsForbidden(post)) return false;
        return true;
    }

    private bool IsForbidden(long post)
    {
        foreach (var zone in forbidden)
            if (post > zone.From && post < zone.To) return true;
        return false;
    }

    private Placing Solve()
    {
        var (excess, bays) = Fewest();
        var cap = SmallestLargest(excess, bays);
        return new Placing(LeastSquares(excess, bays, cap), excess);
    }

    /// <summary>Least excess, then fewest bays, by shortest path over the fixed points.</summary>
    private (long Excess, int Bays) Fewest()
    {
        var best = new (long Excess, int Bays)[points.Length];
        for (var q = 1; q < points.Length; q++)
        {
            best[q] = (Never, int.MaxValue);
            for (var p = 0; p < q; p++)
            {
                var (excess, bays) = Step(p, q);
                var through = (best[p].Excess + excess, best[p].Bays + bays);
                if (through.CompareTo(best[q]) < 0) best[q] = through;
            }
        }
        return best[^1];
    }

    /// <summary>From one fixed point straight to another: the fewest free even bays, or one bay that is too long.</summary>
    private (long Excess, int Bays) Step(int p, int q)
    {
        var distance = points[q] - points[p];
        var least = (int)((distance - 1) / largest + 1);
        var most = (int)Math.Max(least, distance / Math.Max(1, smallest));
        for (var bays = least; bays <= most; bays++)
            if (Free(p, q, bays)) return (0, bays);
        return (distance - largest, 1);
    }

    private bool Free(int p, int q, int bays)
    {
        for (var i = 1; i < bays; i++)
            if (IsForbidden(At(points[p], points[q], bays, i))) return false;
        return true;
    }

    /// <summary>The smallest largest bay with that excess and that many bays, among bays that keep the limit.</summary>
    private long SmallestLargest(long excess, int bays)
        => Run<long>(bays, 0, (so, p, q, k) => Allowed(p, q, k, largest) is { } cost ? Math.Max(so, cost) : null, excess).Cost;

    private long[] LeastSquares(long excess, int bays, long cap)
    {
        var path = Run<Int128>(bays, 0, (so, p, q, k) => Allowed(p, q, k, cap) is null ? null : so + Squares(points[q] - points[p], k), excess).Path;
        List<long> posts = [0];
        foreach (var (p, q, k) in path) posts.AddRange(Even(points[p], points[q], k).AsSpan(1));
        return [.. posts];
    }

    /// <summary>The largest of k even bays between two points, 0 for a single one over the limit, nothing where they cannot be.</summary>
    private long? Allowed(int p, int q, int k, long cap)
    {
        var distance = points[q] - points[p];
        var bay = (distance - 1) / k + 1;
        if (k == 1 && distance > largest) return 0;
        return bay <= cap && Free(p, q, k) ? bay : null;
    }

    private static Int128 Squares(long distance, int k)
    {
        var (bay, rest) = (Int128)distance / k is var b ? (b, (Int128)distance - b * k) : default;
        return (k - rest) * b * b + rest * (b + 1) * (b + 1);
    }

    private delegate T? Extend<T>(T soFar, int p, int q, int bays) where T : struct;

    /// <summary>Cheapest path to the far end with exactly the given bays and excess.</summary>
    private (T Cost, IReadOnlyList<(int P, int Q, int K)> Path) Run<T>(int bays, T start, Extend<T> extend, long excess)
        where T : struct, IComparable<T>
    {
        var best = new Dictionary<(int Point, int Bays, long Excess), (T Cost, int From, int K)> { [(0, 0, 0)] = (start, -1, 0) };
        for (var q = 1; q < points.Length; q++)
            for (var p = 0; p < q; p++)
                foreach (var (state, so) in best.Where(s => s.Key.Point == p).ToList())
                    for (var k = 1; k <= bays - state.Bays; k++)
                    {
                        var over = k == 1 ? Math.Max(0, points[q] - points[p] - largest) : 0;
                        if (state.Excess + over > excess || extend(so.Cost, p, q, k) is not { } cost) continue;
                        var key = (q, state.Bays + k, state.Excess + over);
                        if (!best.TryGetValue(key, out var known) || cost.CompareTo(known.Cost) < 0) best[key] = (cost, p, k);
                    }
        var end = (points.Length - 1, bays, excess);
        return (best[end].Cost, Back(best, end));
    }

    private List<(int P, int Q, int K)> Back<T>(Dictionary<(int Point, int Bays, long Excess), (T Cost, int From, int K)> best, (int Point, int Bays, long Excess) at)
    {
        List<(int, int, int)> path = [];
        while (at.Point > 0)
        {
            var (_, from, k) = best[at];
            path.Add((from, at.Point, k));
            var over = k == 1 ? Math.Max(0, points[at.Point] - points[from] - largest) : 0;
            at = (from, at.Bays - k, at.Excess - over);
        }
        path.Reverse();
        return path;
    }
}
