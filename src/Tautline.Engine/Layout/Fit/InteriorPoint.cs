namespace Tautline.Engine.Layout.Fit;

/// <summary>Where an interior-point run ended.</summary>
/// <param name="X">Heights counted from the reference, with two unused places at the end.</param>
/// <param name="Y">Slacks.</param>
/// <param name="AtLow">Multiplier of each row's lower bound, in units of the largest price.</param>
/// <param name="AtHigh">The same of the upper bound.</param>
internal sealed record ChainAnswer(
    double[] X, double[] Y, double[] AtLow, double[] AtHigh, double Value, double Residual, double Dual, double Gap, int Iterations, bool Converged);

/// <summary>
/// Primal-dual interior-point method with Mehrotra's corrector for a <see cref="ChainArrays"/>: least sum of price times slack plus
/// scale times a sum of squares. Starts from any x; work per step in proportion to posts plus rows.
/// </summary>
internal sealed class InteriorPoint
{
    private const int MostSteps = 200;
    private const double Feasible = 1e-10;
    private const double Stationary = 1e-8;
    private const double Reach = 0.995;
    private const int Patience = 25;
    private const double Faint = 1e-13;

    // Where a run begins: metres of room to every bound, and room times multiplier.
    private const double Room = 0.1;
    private const double FirstMean = 0.01;

    private readonly ChainArrays chain;
    private readonly Squares? squares;
    private readonly double scale;
    private readonly NewtonSystem newton;
    private readonly int[] slack;
    private readonly bool[] atLow;
    private readonly bool[] atHigh;
    private readonly int bounds;
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] s;
    private readonly double[] w;
    private readonly double[] lam;
    private readonly double[] eta;
    private readonly double[] z;
    private readonly double[] ds;
    private readonly double[] dw;
    private readonly double[] dlam;
    private readonly double[] deta;
    private readonly double[] cs;
    private readonly double[] cw;
    private readonly double[] weight;
    private readonly double[] k;
    private readonly double[] dx;
    private readonly double[] dy;
    private readonly double[] gradX;
    private readonly double[] gradY;

    /// <param name="scale">What the sum of squares is multiplied with, so that its gradient is about one.</param>
    /// <param name="start">Heights to start from, counted from the reference.</param>
    public InteriorPoint(ChainArrays chain, Squares? squares, double scale, double[] start)
    {
        (this.chain, this.squares, this.scale) = (chain, squares, scale);
        var all = chain.Rows + chain.Groups;
        slack = [.. Enumerable.Range(0, chain.Rows).Select(chain.Slack)];
        atLow = [.. Enumerable.Range(0, all).Select(r => chain.Counts(r) && double.IsFinite(chain.Low[r]))];
        atHigh = [.. Enumerable.Range(0, all).Select(r => chain.Counts(r) && double.IsFinite(chain.High[r]))];
        bounds = atLow.Count(b => b) + atHigh.Count(b => b);
        newton = new NewtonSystem(chain, slack, squares, scale);
        (x, y) = ([.. start.AsSpan(0, chain.Posts), 0, 0], new double[chain.Groups]);
        (s, w, lam, eta, z) = (new double[all], new double[all], new double[all], new double[all], new double[all]);
        (ds, dw, dlam, deta) = (new double[all], new double[all], new double[all], new double[all]);
        (cs, cw, weight, k) = (new double[all], new double[all], new double[all], new double[all]);
        (dx, dy) = (new double[chain.Posts + 2], new double[chain.Groups]);
        (gradX, gradY) = (new double[chain.Posts + 2], new double[chain.Groups]);
    }

    /// <param name="relative">Duality gap wanted as a share of the value.</param>
    /// <param name="absolute">Duality gap that is always small enough.</param>
    public ChainAnswer Solve(double relative, double absolute)
    {
        Begin();
        var (least, since) = (double.PositiveInfinity, 0);
        for (var step = 0; ; step++)
        {
            Activities();
            var here = State(relative, absolute);
            (least, since) = here.Merit < 0.9 * least ? (here.Merit, 0) : (least, since + 1);
            if (here.Merit <= 1 || step == MostSteps || since > Patience)
                return new ChainAnswer(x, y, lam, eta, here.Value, here.Residual, here.Dual, here.Gap, step, here.Merit <= 1);
            Step(here.Gap / bounds, 0.1 * (relative * here.Value + absolute) / bounds);
        }
    }

    /// <summary>Every row gets room to its bounds, in the middle of narrow ones, and multipliers of one complementarity.</summary>
    private void Begin()
    {
        for (var g = 0; g < chain.Groups; g++) y[g] = 0;
        for (var r = 0; r < chain.Rows; r++)
            if (slack[r] >= 0 && atLow[r]) y[slack[r]] = Math.Max(y[slack[r]], chain.Low[r] - Height(r, x));
        for (var g = 0; g < chain.Groups; g++)
            if (atLow[chain.Rows + g]) y[g] += Room;
        for (var r = 0; r < z.Length; r++)
        {
            var (value, width) = (Activity(r), chain.High[r] - chain.Low[r]);
            var least = Math.Min(Room, 0.5 * width);
            if (atLow[r]) (s[r], lam[r]) = Pair(Math.Max(value - chain.Low[r], least));
            if (atHigh[r]) (w[r], eta[r]) = Pair(Math.Max(chain.High[r] - value, least));
            if (width <= Room) (s[r], lam[r], w[r], eta[r]) = (0.5 * width, FirstMean / (0.5 * width), 0.5 * width, FirstMean / (0.5 * width));
        }
    }

    private static (double Room, double Multiplier) Pair(double room) => (room, FirstMean / room);

    private double Height(int r, double[] of)
    {
        var i = chain.Lead[r];
        return chain.A0[r] * of[i] + chain.A1[r] * of[i + 1] + chain.A2[r] * of[i + 2];
    }

    private double Activity(int r)
    {
        if (r >= chain.Rows) return y[r - chain.Rows];
        return Height(r, x) + (slack[r] >= 0 ? y[slack[r]] : 0);
    }

    private void Activities()
    {
        for (var r = 0; r < z.Length; r++)
            if (atLow[r] || atHigh[r]) z[r] = Activity(r);
    }

    /// <summary>Value, residuals and gap here; a merit of one or less is the goal.</summary>
    private (double Merit, double Value, double Residual, double Dual, double Gap) State(double relative, double absolute)
    {
        Stationarity();
        var (residual, gap, dual) = (0.0, 0.0, 0.0);
        for (var r = 0; r < z.Length; r++)
        {
            if (atLow[r]) (residual, gap) = (Math.Max(residual, Math.Abs(z[r] - chain.Low[r] - s[r])), gap + s[r] * lam[r]);
            if (atHigh[r]) (residual, gap) = (Math.Max(residual, Math.Abs(chain.High[r] - z[r] - w[r])), gap + w[r] * eta[r]);
        }
        foreach (var part in gradX) dual = Math.Max(dual, Math.Abs(part));
        foreach (var part in gradY) dual = Math.Max(dual, Math.Abs(part));
        var value = Value();
        var merit = Math.Max(gap / (relative * value + absolute), Math.Max(residual / Feasible, dual / Stationary));
        return (merit, value, residual, dual, gap);
    }

    private double Value()
    {
        var value = squares is null ? 0 : scale * squares.Value(x);
        for (var g = 0; g < chain.Groups; g++)
            if (chain.Use[g] == SlackUse.Open) value += chain.Price[g] * y[g];
        return value;
    }

    /// <summary>The gradient of the Lagrangian.</summary>
    private void Stationarity()
    {
        Array.Clear(gradX);
        Array.Clear(gradY);
        squares?.AddGradient(x, 2 * scale, gradX);
        for (var r = 0; r < chain.Rows; r++)
        {
            var q = lam[r] - eta[r];
            if (q == 0) continue;
            var i = chain.Lead[r];
            gradX[i] -= chain.A0[r] * q;
            gradX[i + 1] -= chain.A1[r] * q;
            gradX[i + 2] -= chain.A2[r] * q;
            if (slack[r] >= 0) gradY[slack[r]] -= q;
        }
        for (var g = 0; g < chain.Groups; g++)
            if (chain.Use[g] == SlackUse.Open) gradY[g] += chain.Price[g] - lam[chain.Rows + g] + eta[chain.Rows + g];
    }

    /// <param name="least">Below this the mean complementarity need not go: nearer the corner rounding takes over.</param>
    private void Step(double mean, double least)
    {
        for (var r = 0; r < z.Length; r++) weight[r] = (atLow[r] ? lam[r] / s[r] : 0) + (atHigh[r] ? eta[r] / w[r] : 0);
        // As if every post had bounds a metre away that move with it: where nothing else holds a post it does not run off, and as
        // these bounds fade with all others they change nothing of the answer.
        newton.Factor(weight, mean + Faint);
        Array.Clear(cs);
        Array.Clear(cw);
        Direction(0);
        var (primal, dual) = Lengths(1);
        var share = Ahead(primal, dual) / (mean * bounds);
        Corrections();
        Direction(Math.Max(least, mean * share * share * share));
        (primal, dual) = Lengths(Reach);
        Move(primal, dual);
    }

    /// <summary>The Newton step towards complementarity target with the corrections in cs and cw.</summary>
    private void Direction(double target)
    {
        for (var r = 0; r < z.Length; r++) k[r] = Share(r, target);
        for (var i = 0; i < dx.Length; i++) dx[i] = -gradX[i];
        for (var g = 0; g < dy.Length; g++) dy[g] = -gradY[g];
        newton.Solve(k, dx, dy);
        for (var r = 0; r < z.Length; r++)
        {
            if (!atLow[r] && !atHigh[r]) continue;
            var move = r >= chain.Rows ? dy[r - chain.Rows] : Height(r, dx) + (slack[r] >= 0 ? dy[slack[r]] : 0);
            if (atLow[r])
            {
                ds[r] = move + (z[r] - chain.Low[r] - s[r]);
                dlam[r] = (target - cs[r] - lam[r] * ds[r]) / s[r] - lam[r];
            }
            if (atHigh[r])
            {
                dw[r] = chain.High[r] - z[r] - w[r] - move;
                deta[r] = (target - cw[r] - eta[r] * dw[r]) / w[r] - eta[r];
            }
        }
    }

    private double Share(int r, double target)
    {
        var share = 0.0;
        if (atLow[r]) share += (target - cs[r] - lam[r] * (z[r] - chain.Low[r] - s[r])) / s[r] - lam[r];
        if (atHigh[r]) share -= (target - cw[r] - eta[r] * (chain.High[r] - z[r] - w[r])) / w[r] - eta[r];
        return share;
    }

    private (double Primal, double Dual) Lengths(double reach)
    {
        var (primal, dual) = (1.0, 1.0);
        for (var r = 0; r < z.Length; r++)
        {
            if (atLow[r] && -ds[r] * primal > reach * s[r]) primal = reach * s[r] / -ds[r];
            if (atHigh[r] && -dw[r] * primal > reach * w[r]) primal = reach * w[r] / -dw[r];
            if (atLow[r] && -dlam[r] * dual > reach * lam[r]) dual = reach * lam[r] / -dlam[r];
            if (atHigh[r] && -deta[r] * dual > reach * eta[r]) dual = reach * eta[r] / -deta[r];
        }
        // With a curved goal the two belong together: apart they would spoil stationarity.
        return squares is null ? (primal, dual) : (Math.Min(primal, dual), Math.Min(primal, dual));
    }

    /// <summary>The duality gap that a step would leave.</summary>
    private double Ahead(double primal, double dual)
    {
        var gap = 0.0;
        for (var r = 0; r < z.Length; r++)
        {
            if (atLow[r]) gap += (s[r] + primal * ds[r]) * (lam[r] + dual * dlam[r]);
            if (atHigh[r]) gap += (w[r] + primal * dw[r]) * (eta[r] + dual * deta[r]);
        }
        return gap;
    }

    private void Corrections()
    {
        for (var r = 0; r < z.Length; r++)
        {
            if (atLow[r]) cs[r] = ds[r] * dlam[r];
            if (atHigh[r]) cw[r] = dw[r] * deta[r];
        }
    }

    private void Move(double primal, double dual)
    {
        for (var i = 0; i < chain.Posts; i++) x[i] += primal * dx[i];
        for (var g = 0; g < chain.Groups; g++) y[g] += primal * dy[g];
        for (var r = 0; r < z.Length; r++)
        {
            if (atLow[r]) (s[r], lam[r]) = (s[r] + primal * ds[r], lam[r] + dual * dlam[r]);
            if (atHigh[r]) (w[r], eta[r]) = (w[r] + primal * dw[r], eta[r] + dual * deta[r]);
        }
    }
}
