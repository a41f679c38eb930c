namespace Tautline.Engine.Site.Ground;

/// <summary>
/// The two questions of plane geometry, answered exactly: in doubles where an error bound shows that the sign is safe, in exact expansions
/// where not (Shewchuk 1997, sections 4.3 and 4.4 give the bounds). Coordinates are taken as they stand; nothing is snapped to a grid.
/// </summary>
internal static class PlanTest
{
    private const double HalfUlp = 1.1102230246251565e-16; // 2^-53
    private const double TurnBound = (3 + 16 * HalfUlp) * HalfUlp;
    private const double CircleBound = (10 + 96 * HalfUlp) * HalfUlp;

    /// <summary>Twice the area of a, b, p: positive where p lies left of the way from a to b, zero exactly where all are in one line.</summary>
    public static double Turn(in GroundPoint a, in GroundPoint b, in GroundPoint p) => Turn(a.East, a.North, b.East, b.North, p.East, p.North);

    /// <inheritdoc cref="Turn(in GroundPoint, in GroundPoint, in GroundPoint)"/>
    public static double Turn(double ae, double an, double be, double bn, double pe, double pn) => Turn(ae, an, be, bn, pe, pn, TurnBound);

    /// <summary>The same, not only of the right sign but good to a billionth of itself, for sums that go on with it.</summary>
    public static double CloseTurn(double ae, double an, double be, double bn, double pe, double pn) => Turn(ae, an, be, bn, pe, pn, TurnBound * 1e9);

    private static double Turn(double ae, double an, double be, double bn, double pe, double pn, double bound)
    {
        var left = (ae - pe) * (bn - pn);
        var right = (an - pn) * (be - pe);
        var turn = left - right;
        // A difference of doubles is zero only if it is exactly zero, so a zero product leaves the sign of the other.
        if (left == 0 || right == 0) return turn;
        return Math.Abs(turn) > bound * (Math.Abs(left) + Math.Abs(right)) ? turn : ExactTurn(ae, an, be, bn, pe, pn);
    }

    /// <summary>Positive where d lies inside the circle through a, b and c, which turn left; zero exactly where it lies on it.</summary>
    public static double InCircle(in GroundPoint a, in GroundPoint b, in GroundPoint c, in GroundPoint d)
    {
        var (ae, an) = (a.East - d.East, a.North - d.North);
        var (be, bn) = (b.East - d.East, b.North - d.North);
        var (ce, cn) = (c.East - d.East, c.North - d.North);
        var (bc, cb) = (be * cn, ce * bn);
        var (ca, ac) = (ce * an, ae * cn);
        var (ab, ba) = (ae * bn, be * an);
        var (a2, b2, c2) = (ae * ae + an * an, be * be + bn * bn, ce * ce + cn * cn);
        var inside = a2 * (bc - cb) + b2 * (ca - ac) + c2 * (ab - ba);
        var size = a2 * (Math.Abs(bc) + Math.Abs(cb)) + b2 * (Math.Abs(ca) + Math.Abs(ac)) + c2 * (Math.Abs(ab) + Math.Abs(ba));
        return Math.Abs(inside) > CircleBound * size ? inside : ExactInCircle(a, b, c, d);
    }

    /// <summary>Whether two sides are strictly opposite.</summary>
    public static bool Opposite(double side, double other) => side > 0 && other < 0 || side < 0 && other > 0;

    private static double ExactTurn(double ae, double an, double be, double bn, double pe, double pn)
    {
        // ae*bn - an*be + be*pn - bn*pe + pe*an - pn*ae, where every product is two parts.
        Span<double> sum = stackalloc double[12];
        Span<double> room = stackalloc double[12];
        var count = Expansion.Product(ae, bn, sum);
        count = Add(sum, count, -an, be, room);
        count = Add(sum, count, be, pn, room);
        count = Add(sum, count, -bn, pe, room);
        count = Add(sum, count, pe, an, room);
        count = Add(sum, count, -pn, ae, room);
        return Expansion.Estimate(sum[..count]);
    }

    private static int Add(Span<double> sum, int count, double a, double b, Span<double> room)
    {
        Span<double> product = stackalloc double[2];
        var parts = Expansion.Product(a, b, product);
        count = Expansion.Sum(sum[..count], product[..parts], room);
        room[..count].CopyTo(sum);
        return count;
    }

    private static double ExactInCircle(in GroundPoint a, in GroundPoint b, in GroundPoint c, in GroundPoint d)
    {
        var (pa, pb, pc) = (new Offset(a, d), new Offset(b, d), new Offset(c, d));
        // Where points are near each other their differences are exact and everything is sixteen times shorter.
        var most = pa.IsShort && pb.IsShort && pc.IsShort ? 32 : 512;
        Span<double> first = stackalloc double[most];
        Span<double> second = stackalloc double[most];
        Span<double> both = stackalloc double[2 * most];
        Span<double> all = stackalloc double[3 * most];
        var count = Term(pa, pb, pc, first);
        var more = Term(pb, pc, pa, second);
        var sum = Expansion.Sum(first[..count], second[..more], both);
        count = Term(pc, pa, pb, first);
        return Expansion.Estimate(all[..Expansion.Sum(both[..sum], first[..count], all)]);
    }

    /// <summary>The square of a's length times the cross product of b and c.</summary>
    private static int Term(in Offset a, in Offset b, in Offset c, Span<double> parts)
    {
        Span<double> square = stackalloc double[16];
        Span<double> cross = stackalloc double[16];
        var squares = PairSum(a.East, a.East, a.North, a.North, 1, square);
        var crosses = PairSum(b.East, c.North, c.East, b.North, -1, cross);
        return Expansion.Product(square[..squares], cross[..crosses], parts);
    }

    /// <summary>p * q + sign * r * s.</summary>
    private static int PairSum(Pair p, Pair q, Pair r, Pair s, int sign, Span<double> parts)
    {
        Span<double> left = stackalloc double[8];
        Span<double> right = stackalloc double[8];
        var lefts = PairProduct(p, q, left);
        var rights = PairProduct(r, s, right);
        if (sign < 0) Expansion.Negate(right[..rights]);
        return Expansion.Sum(left[..lefts], right[..rights], parts);
    }

    private static int PairProduct(Pair p, Pair q, Span<double> parts)
    {
        Span<double> first = stackalloc double[2];
        Span<double> second = stackalloc double[2];
        return Expansion.Product(p.Write(first), q.Write(second), parts);
    }

    /// <summary>A difference of two doubles: one part or two.</summary>
    private readonly struct Pair
    {
        private readonly double low;
        private readonly double high;

        public Pair(double a, double b) => high = Expansion.TwoSum(a, -b, out low);

        public bool IsShort => low == 0;

        public ReadOnlySpan<double> Write(Span<double> room)
        {
            if (low == 0)
            {
                room[0] = high;
                return room[..1];
            }
            (room[0], room[1]) = (low, high);
            return room;
        }
    }

    private readonly struct Offset(in GroundPoint p, in GroundPoint from)
    {
        public Pair East { get; } = new(p.East, from.East);

        public Pair North { get; } = new(p.North, from.North);

        public bool IsShort => East.IsShort && North.IsShort;
    }
}
