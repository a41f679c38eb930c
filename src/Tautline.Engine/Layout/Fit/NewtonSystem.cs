namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The linear equations of one interior-point step. The slacks are taken out first: a slack's rows shrink to their deviations from
/// their weighted mean, which is the same sum without its cancellation. What is left reaches over three posts.
/// </summary>
internal sealed class NewtonSystem
{
    private readonly ChainArrays chain;
    private readonly Squares? squares;
    private readonly double squareRoot;
    private readonly int[] slack;
    private readonly BandRoot root;
    private readonly double[] sum;
    private readonly double[] m0;
    private readonly double[] m1;
    private readonly double[] m2;
    private readonly double[] right;

    /// <param name="scale">What the sum of squares is multiplied with.</param>
    public NewtonSystem(ChainArrays chain, int[] slack, Squares? squares, double scale)
    {
        (this.chain, this.slack, this.squares, squareRoot) = (chain, slack, squares, Math.Sqrt(2 * scale));
        root = new BandRoot(chain.Posts);
        (sum, m0, m1, m2) = (new double[chain.Groups], new double[chain.Groups], new double[chain.Groups], new double[chain.Groups]);
        right = new double[chain.Groups];
    }

    /// <summary>Takes the weight of every row (zero where it does not count).</summary>
    /// <param name="anchor">Weight with which every post clings to where it is; above zero.</param>
    public void Factor(double[] weight, double anchor)
    {
        root.Start();
        for (var i = 0; i < chain.Posts; i++)
        {
            root.Add(Math.Sqrt(anchor), 0);
            if (squares is not null) AddSquares(squares, i);
            Means(i, weight);
            AddRows(i, weight);
            AddSlacks(i, weight);
            root.Finish(i);
        }
    }

    /// <summary>
    /// Solves for the steps dx and dy from the negative stationarity residuals (in dx, dy on entry) and each row's share k.
    /// </summary>
    public void Solve(double[] k, double[] dx, double[] dy)
    {
        for (var g = 0; g < chain.Groups; g++) right[g] = sum[g] > 0 ? dy[g] + k[chain.Rows + g] : 0;
        for (var r = 0; r < chain.Rows; r++)
        {
            if (k[r] == 0) continue;
            var i = chain.Lead[r];
            dx[i] += chain.A0[r] * k[r];
            dx[i + 1] += chain.A1[r] * k[r];
            dx[i + 2] += chain.A2[r] * k[r];
            if (slack[r] >= 0) right[slack[r]] += k[r];
        }
        Spread(dx);
        root.Solve(dx);
        for (var g = 0; g < chain.Groups; g++) dy[g] = sum[g] > 0 ? right[g] / sum[g] - Mean(g, dx) : 0;
    }

    private void Spread(double[] dx)
    {
        for (var g = 0; g < chain.Groups; g++)
        {
            if (right[g] == 0) continue;
            var i = chain.GroupLead[g];
            dx[i] -= m0[g] * right[g];
            dx[i + 1] -= m1[g] * right[g];
            dx[i + 2] -= m2[g] * right[g];
        }
    }

    private double Mean(int g, double[] dx)
    {
        var i = chain.GroupLead[g];
        return m0[g] * dx[i] + m1[g] * dx[i + 1] + m2[g] * dx[i + 2];
    }

    private void AddSquares(Squares of, int i)
    {
        root.Add(squareRoot * of.B0[i], squareRoot * of.B1[i], squareRoot * of.B2[i]);
        root.Add(squareRoot * of.G[i], 0);
    }

    private void Means(int i, double[] weight)
    {
        for (var g = chain.GroupFirst[i]; g < chain.GroupFirst[i + 1]; g++) (sum[g], m0[g], m1[g], m2[g]) = (weight[chain.Rows + g], 0, 0, 0);
        for (var r = chain.First[i]; r < chain.First[i + 1]; r++)
        {
            var g = slack[r];
            if (g < 0) continue;
            sum[g] += weight[r];
            m0[g] += weight[r] * chain.A0[r];
            m1[g] += weight[r] * chain.A1[r];
            m2[g] += weight[r] * chain.A2[r];
        }
        for (var g = chain.GroupFirst[i]; g < chain.GroupFirst[i + 1]; g++)
            if (sum[g] > 0) (m0[g], m1[g], m2[g]) = (m0[g] / sum[g], m1[g] / sum[g], m2[g] / sum[g]);
    }

    private void AddRows(int i, double[] weight)
    {
        for (var r = chain.First[i]; r < chain.First[i + 1]; r++)
        {
            if (weight[r] == 0) continue;
            var (g, q) = (slack[r], Math.Sqrt(weight[r]));
            if (g < 0) Add(q * chain.A0[r], q * chain.A1[r], q * chain.A2[r]);
            else Add(q * (chain.A0[r] - m0[g]), q * (chain.A1[r] - m1[g]), q * (chain.A2[r] - m2[g]));
        }
    }

    private void AddSlacks(int i, double[] weight)
    {
        for (var g = chain.GroupFirst[i]; g < chain.GroupFirst[i + 1]; g++)
        {
            var q = Math.Sqrt(weight[chain.Rows + g]);
            if (q > 0) Add(-q * m0[g], -q * m1[g], -q * m2[g]);
        }
    }

    private void Add(double c0, double c1, double c2)
    {
        if (c2 == 0) root.Add(c0, c1);
        else root.Add(c0, c1, c2);
    }
}
