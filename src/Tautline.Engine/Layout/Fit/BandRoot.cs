namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Triangular root R of a sum of outer products of rows that reach over three neighbouring posts: R'R = sum of r r'. Built by
/// Householder reflections on the rows themselves, post after post, so the sum is never formed: weights that
/// differ by twenty and more powers of ten, as an interior point's do, keep half their digits more than in a Cholesky factor.
/// </summary>
internal sealed class BandRoot
{
    private readonly double[] r0;
    private readonly double[] r1;
    private readonly double[] r2;
    private double[] rows = new double[3 * 64];
    private int count;

    public BandRoot(int posts) => (r0, r1, r2) = (new double[posts], new double[posts], new double[posts]);

    /// <summary>Starts anew at the first post.</summary>
    public void Start() => count = 0;

    /// <summary>Adds a row led by the current post.</summary>
    public void Add(double c0, double c1, double c2)
    {
        if (3 * count + 3 > rows.Length) Array.Resize(ref rows, 2 * rows.Length);
        (rows[3 * count], rows[3 * count + 1], rows[3 * count + 2]) = (c0, c1, c2);
        count++;
    }

    /// <summary>Finishes a post and carries what is left of its rows on to the next.</summary>
    public void Finish(int post)
    {
        for (var column = 0; column < 3; column++)
            if (column < count) Reflect(column);
        (r0[post], r1[post], r2[post]) = (rows[0], rows[1], rows[2]);
        Carry();
    }

    /// <summary>Solves R'R x = right in place; both have two more places than posts.</summary>
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
        if (left > 0) (rows[0], rows[1], rows[2]) = (rows[4], rows[5], 0);
        if (left > 1) (rows[3], rows[4], rows[5]) = (0, rows[8], 0);
        count = left;
    }

    /// <summary>Makes a column zero below its diagonal. The heaviest row goes first: then light rows keep their digits.</summary>
    private void Reflect(int column)
    {
        Lift(column);
        var norm = 0.0;
        for (var r = column; r < count; r++) norm += rows[3 * r + column] * rows[3 * r + column];
        if (norm == 0) return;
        var head = 3 * column + column;
        var alpha = rows[head] > 0 ? -Math.Sqrt(norm) : Math.Sqrt(norm);
        var lead = rows[head] - alpha;
        var scale = 1 / (alpha * lead);
        for (var c = column + 1; c < 3; c++) Apply(column, c, lead, scale);
        rows[head] = alpha;
    }

    private void Apply(int column, int target, double lead, double scale)
    {
        var head = 3 * column;
        var dot = lead * rows[head + target];
        for (var r = column + 1; r < count; r++) dot += rows[3 * r + column] * rows[3 * r + target];
        dot *= scale;
        rows[head + target] += dot * lead;
        for (var r = column + 1; r < count; r++) rows[3 * r + target] += dot * rows[3 * r + column];
    }

    private void Lift(int column)
    {
        var heaviest = column;
        for (var r = column + 1; r < count; r++)
            if (Math.Abs(rows[3 * r + column]) > Math.Abs(rows[3 * heaviest + column])) heaviest = r;
        if (heaviest == column) return;
        for (var c = column; c < 3; c++) (rows[3 * column + c], rows[3 * heaviest + c]) = (rows[3 * heaviest + c], rows[3 * column + c]);
    }
}
