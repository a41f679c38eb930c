using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The linear equations of one interior-point step. The slacks are taken out first: a slack's rows shrink to their deviations from
/// their weighted mean, which is the same sum without its cancellation. What is left reaches over three posts.
/// </summary>
internal sealed class NewtonSystem
{
    private readonly ChainRows rows;
    private readonly Squares? squares;
    private readonly double squareRoot;
    private readonly BandRoot root;
    private readonly double[] sum;
    private readonly double[] m0;
    private readonly double[] m1;
    private readonly double[] m2;

    /// <param name="scale">What the sum of squares is multiplied with.</param>
    public NewtonSystem(ChainRows rows, Squares? squares, double scale)
    {
        (this.rows, this.squares, squareRoot) = (rows, squares, Math.Sqrt(2 * scale));
        root = new BandRoot(rows.Posts);
        (sum, m0, m1, m2) = (new double[rows.Groups], new double[rows.Groups], new double[rows.Groups], new double[rows.Groups]);
    }

    /// <summary>Takes the weight of every row.</summary>
    /// <param name="anchor">Weight with which every post clings to where it is; above zero.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Factor(double[] weight, double anchor)
    {
        var cling = Math.Sqrt(anchor);
        root.Start();
        for (var i = 0; i < rows.Posts; i++)
        {
            root.Add(cling, 0);
            if (squares is not null) AddSquares(squares, i);
            Means(i, weight);
            AddRows(i, weight);
            AddSlacks(i, weight);
            root.Finish(i);
        }
    }

    /// <summary>Solves for the steps in place: right sides on entry, dx with two and dy with one unused place at the end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Solve(double[] dx, double[] dy)
    {
        for (var g = 0; g < rows.Groups; g++)
        {
            if (rows.Own[g] < 0) continue;
            var i = rows.GroupLead[g];
            dx[i] -= m0[g] * dy[g];
            dx[i + 1] -= m1[g] * dy[g];
            dx[i + 2] -= m2[g] * dy[g];
        }
        root.Solve(dx);
        for (var g = 0; g < rows.Groups; g++)
        {
            var i = rows.GroupLead[g];
            dy[g] = rows.Own[g] < 0 ? 0 : dy[g] / sum[g] - (m0[g] * dx[i] + m1[g] * dx[i + 1] + m2[g] * dx[i + 2]);
        }
    }

    private void AddSquares(Squares of, int i)
    {
        root.Add(squareRoot * of.B0[i], squareRoot * of.B1[i], squareRoot * of.B2[i]);
        root.Add(squareRoot * of.G[i], 0);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Means(int i, double[] weight)
    {
        var (from, to) = (rows.GroupFirst[i], rows.GroupFirst[i + 1]);
        for (var g = from; g < to; g++) (sum[g], m0[g], m1[g], m2[g]) = (rows.Own[g] < 0 ? 0 : weight[rows.Own[g]], 0, 0, 0);
        for (var r = rows.First[i]; r < rows.First[i + 1]; r++)
        {
            var (g, w) = (rows.Slack[r], weight[r]);
            if (g == rows.Groups) continue;
            sum[g] += w;
            m0[g] += w * rows.A0[r];
            m1[g] += w * rows.A1[r];
            m2[g] += w * rows.A2[r];
        }
        for (var g = from; g < to; g++)
            if (sum[g] > 0) (m0[g], m1[g], m2[g]) = (m0[g] / sum[g], m1[g] / sum[g], m2[g] / sum[g]);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddRows(int i, double[] weight)
    {
        for (var r = rows.First[i]; r < rows.First[i + 1]; r++)
        {
            var (g, q) = (rows.Slack[r], Math.Sqrt(weight[r]));
            if (g == rows.Groups) Add(q * rows.A0[r], q * rows.A1[r], q * rows.A2[r]);
            else Add(q * (rows.A0[r] - m0[g]), q * (rows.A1[r] - m1[g]), q * (rows.A2[r] - m2[g]));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddSlacks(int i, double[] weight)
    {
        for (var g = rows.GroupFirst[i]; g < rows.GroupFirst[i + 1]; g++)
        {
            if (rows.Own[g] < 0) continue;
            var q = Math.Sqrt(weight[rows.Own[g]]);
            Add(-q * m0[g], -q * m1[g], -q * m2[g]);
        }
    }

    private void Add(double c0, double c1, double c2)
    {
        if (c2 == 0) root.Add(c0, c1);
        else root.Add(c0, c1, c2);
    }
}
