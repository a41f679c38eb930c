using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Triangular root R of a sum of outer products of rows that reach over three neighbouring posts: R'R = sum of r r'. Built by
/// Householder reflections on the rows themselves, post after post, so the sum is never formed: of weights that
/// differ by twenty and more powers of ten, as an interior point's do, the light ones keep their digits, which a Cholesky factor of the
/// sum would lose.
/// </summary>
internal sealed class BandRoot
{
    private readonly double[] r0;
    private readonly double[] r1;
    private readonly double[] r2;

    // Rows over two posts, by far the most; they shrink to two before they meet those over three.
    private double[] p = new double[64];
    private double[] q = new double[64];
    private int narrow;

    // Rows over three posts, three numbers each.
    private double[] wide = new double[3 * 16];
    private int count;

    public BandRoot(int posts) => (r0, r1, r2) = (new double[posts], new double[posts], new double[posts]);

    /// <summary>Starts anew at the first post.</summary>
    public void Start() => (narrow, count) = (0, 0);

    /// <summary>Adds a row led by the current post.</summary>
    public void Add(double c0, double c1)
    {
        if (narrow == p.Length)
        {
            Array.Resize(ref p, 2 * narrow);
            Array.Resize(ref q, 2 * narrow);
        }
        (p[narrow], q[narrow]) = (c0, c1);
        narrow++;
    }

    /// <summary>Adds a row led by the current post.</summary>
    public void Add(double c0, double c1, double c2)
    {
        if (3 * count + 3 > wide.Length) Array.Resize(ref wide, 2 * wide.Length);
        (wide[3 * count], wide[3 * count + 1], wide[3 * count + 2]) = (c0, c1, c2);
        count++;
    }

    /// <summary>Finishes a post and carries what is left of its rows on to the next.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Finish(int post)
    {
        Shrink();
        for (var column = 0; column < Math.Min(3, count); column++) Reflect(column);
        (r0[post], r1[post], r2[post]) = (wide[0], wide[1], wide[2]);
        Carry();
    }

    /// <summary>Solves R'R x = right in place; x has two more places than posts, the last two of no meaning.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Solve(double[] x)
    {
        var n = r0.Length;
        for (var i = 0; i < n; i++)
        {
            var rest = x[i];
            if (i > 0) rest -= r1[i - 1] * x[i - 1];
            if (i > 1) rest -= r2[i - 2] * x[i - 2];
            x[i] = rest / r0[i];
        }
        (x[n], x[n + 1]) = (0, 0);
        for (var i = n - 1; i >= 0; i--) x[i] = (x[i] - r1[i] * x[i + 1] - r2[i] * x[i + 2]) / r0[i];
    }

    private void Carry()
    {
        var left = Math.Min(count, 3) - 1;
        if (left > 0) (wide[0], wide[1], wide[2]) = (wide[4], wide[5], 0);
        if (left > 1) (wide[3], wide[4], wide[5]) = (0, wide[8], 0);
        count = left;
    }

    /// <summary>Turns the rows over two posts into a triangle of two. The heaviest goes first: then light rows keep their digits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Shrink()
    {
        if (narrow == 0) return;
        var norm = Math.Sqrt(HeaviestFirst(p.AsSpan(0, narrow), q.AsSpan(0, narrow)));
        if (norm > 0) Turn(p.AsSpan(0, narrow), q.AsSpan(0, narrow), norm);
        var rest = 0.0;
        foreach (var value in q.AsSpan(1, narrow - 1)) rest += value * value;
        Add(p[0], q[0], 0);
        if (rest > 0) Add(0, Math.Sqrt(rest), 0);
        narrow = 0;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double HeaviestFirst(Span<double> first, Span<double> second)
    {
        var (heaviest, most, norm) = (0, 0.0, 0.0);
        for (var r = 0; r < first.Length; r++)
        {
            var square = first[r] * first[r];
            norm += square;
            if (square > most) (heaviest, most) = (r, square);
        }
        (first[0], first[heaviest], second[0], second[heaviest]) = (first[heaviest], first[0], second[heaviest], second[0]);
        return norm;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Turn(Span<double> first, Span<double> second, double norm)
    {
        var alpha = first[0] > 0 ? -norm : norm;
        var lead = first[0] - alpha;
        var dot = lead * second[0];
        for (var r = 1; r < first.Length; r++) dot += first[r] * second[r];
        dot /= alpha * lead;
        second[0] += dot * lead;
        for (var r = 1; r < first.Length; r++) second[r] += dot * first[r];
        first[0] = alpha;
    }

    /// <summary>Makes a column of the rows over three posts zero below its diagonal.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Reflect(int column)
    {
        Lift(column);
        var norm = 0.0;
        for (var at = 3 * column + column; at < 3 * count; at += 3) norm += wide[at] * wide[at];
        if (norm == 0) return;
        var head = 3 * column + column;
        var alpha = wide[head] > 0 ? -Math.Sqrt(norm) : Math.Sqrt(norm);
        var lead = wide[head] - alpha;
        for (var other = 1; other < 3 - column; other++) Apply(head, other, lead, 1 / (alpha * lead));
        wide[head] = alpha;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Apply(int head, int other, double lead, double scale)
    {
        var dot = lead * wide[head + other];
        for (var at = head + 3; at < 3 * count; at += 3) dot += wide[at] * wide[at + other];
        dot *= scale;
        wide[head + other] += dot * lead;
        for (var at = head + 3; at < 3 * count; at += 3) wide[at + other] += dot * wide[at];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Lift(int column)
    {
        var heaviest = column;
        for (var r = column + 1; r < count; r++)
            if (Math.Abs(wide[3 * r + column]) > Math.Abs(wide[3 * heaviest + column])) heaviest = r;
        if (heaviest == column) return;
        for (var c = column; c < 3; c++) (wide[3 * column + c], wide[3 * heaviest + c]) = (wide[3 * heaviest + c], wide[3 * column + c]);
    }
}
