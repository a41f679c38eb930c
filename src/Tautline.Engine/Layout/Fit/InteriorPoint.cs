using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>Where an interior-point run ended.</summary>
/// <param name="X">Heights counted from the reference, with two unused places at the end.</param>
/// <param name="Y">Slacks, with an unused place at the end.</param>
/// <param name="AtLow">Multiplier of each row's lower bound, in units of the largest price.</param>
/// <param name="AtHigh">The same of the upper bound.</param>
/// <param name="Merit">Worst of gap and residuals as a share of what was asked for.</param>
internal sealed record ChainAnswer(
    double[] X, double[] Y, double[] AtLow, double[] AtHigh, double Value, double Residual, double Dual, double Gap, int Iterations, double Merit)
{
    // By how much rounding may keep a run from the goal, which is set as near as it mostly gets; and what it may leave behind.
    public const double Good = 1e4;
    private const double Kept = 1e-8;
    private const double Flat = 1e-6;

    public bool Converged => Merit <= Good && Residual <= Kept && Dual <= Flat;
}

/// <summary>
/// Primal-dual interior-point method with Mehrotra's corrector and further ones for centrality, for a <see cref="ChainArrays"/>: least sum
/// of price times slack plus scale times a sum of squares. Starts from any x; work per step in proportion to posts plus rows.
/// </summary>
internal sealed class InteriorPoint
{
    private const int MostSteps = 200;
    private const int Patience = 25;
    private const int Settling = 4;
    private const double Feasible = 1e-10;
    private const double Stationary = 1e-8;
    private const double Reach = 0.995;

    // A step this long needs no further correction; one correction tries for this much more; and so often.
    private const double Long = 0.9;
    private const double Longer = 0.3;
    private const int Corrections = 3;

    // A step shorter than this is given up for one back to the path.
    private const double Short = 0.1;

    private const double Faint = 1e-13;

    private readonly ChainArrays chain;
    private readonly Squares? squares;
    private readonly double scale;
    private readonly ChainRows rows;
    private readonly ChainSides sides;
    private readonly RigidRows rigid;
    private readonly NewtonSystem newton;
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] z;
    private readonly double[] dx;
    private readonly double[] dy;
    private readonly double[] dz;
    private readonly double[] gradX;
    private readonly double[] gradY;
    private readonly double[] push;

    /// <param name="scale">What the sum of squares is multiplied with, so that its gradient is about one.</param>
    /// <param name="start">Heights to start from, counted from the reference.</param>
    public InteriorPoint(ChainArrays chain, Squares? squares, double scale, double[] start)
    {
        (this.chain, this.squares, this.scale) = (chain, squares, scale);
        rows = new ChainRows(chain);
        (sides, rigid) = (new ChainSides(chain, rows), new RigidRows(chain, rows));
        newton = new NewtonSystem(rows, squares, scale);
        (x, y, z) = ([.. start.AsSpan(0, chain.Posts), 0, 0], new double[chain.Groups + 1], new double[rows.Count]);
        (dx, dy, dz) = (new double[chain.Posts + 2], new double[chain.Groups + 1], new double[rows.Count]);
        (gradX, gradY, push) = (new double[chain.Posts + 2], new double[chain.Groups + 1], new double[rows.Count]);
    }

    /// <param name="relative">Duality gap wanted as a share of the value.</param>
    /// <param name="absolute">Duality gap that is always small enough.</param>
    public ChainAnswer Solve(double relative, double absolute)
    {
        StartSlacks();
        rows.Read(x, y, z);
        sides.Begin(z);
        rigid.Begin(z);
        ChainAnswer? best = null;
        var least = double.PositiveInfinity;
        for (var (step, since) = (0, 0); ; step++, since++)
        {
            var here = State(relative, absolute);
            if (here.Merit < 0.9 * least)
            {
                (least, since) = (here.Merit, 0);
                // Only near the goal can it be the best: further off keeping it would cost more than the step.
                best = least <= ChainAnswer.Good ? Answer(here, step) : null;
            }
            if (least <= 1 || step == MostSteps || since == (best is null ? Patience : Settling)) return best ?? Answer(here, step);
            Step(here.Gap, 0.1 * (relative * here.Value + absolute));
        }
    }

    private ChainAnswer Answer((double Merit, double Value, double Residual, double Dual, double Gap) here, int steps)
    {
        rows.Read(x, y, z);
        var residual = Math.Max(here.Residual, Math.Max(sides.Breach(z), rigid.Breach(z)));
        var (low, high) = sides.Multipliers(rows, chain.Rows + chain.Groups);
        return new ChainAnswer([.. x], [.. y], low, high, here.Value, residual, here.Dual, here.Gap, steps, here.Merit);
    }

    /// <summary>Slacks as large as the start needs them.</summary>
    private void StartSlacks()
    {
        for (var r = 0; r < rows.Count; r++)
        {
            var (i, g, low) = (rows.Lead[r], rows.Slack[r], chain.Low[rows.Source[r]]);
            if (g < rows.Groups && double.IsFinite(low)) y[g] = Math.Max(y[g], low - (rows.A0[r] * x[i] + rows.A1[r] * x[i + 1] + rows.A2[r] * x[i + 2]));
        }
    }

    /// <summary>Value, residuals and gap here; a merit of one or less is the goal.</summary>
    private (double Merit, double Value, double Residual, double Dual, double Gap) State(double relative, double absolute)
    {
        var (residual, gap) = sides.State();
        residual = Math.Max(residual, rigid.Residual());
        var (value, dual) = (Value(), Stationarity());
        var merit = Math.Max(gap / (relative * value + absolute), Math.Max(residual / Feasible, dual / Stationary));
        // What rounding leaves grows with the forces; the goal does not, but how far off it the end may be does.
        return (merit, value, residual, dual / Math.Max(1, Largest(push)), gap);
    }

    private double Value()
    {
        var value = squares is null ? 0 : scale * squares.Value(x);
        for (var g = 0; g < chain.Groups; g++)
            if (rows.Own[g] >= 0) value += chain.Price[g] * y[g];
        return value;
    }

    /// <summary>The gradient of the Lagrangian; its largest component comes back.</summary>
    private double Stationarity()
    {
        Array.Clear(gradX);
        Array.Clear(push);
        squares?.AddGradient(x, 2 * scale, gradX);
        for (var g = 0; g < chain.Groups; g++) gradY[g] = rows.Own[g] >= 0 ? chain.Price[g] : 0;
        sides.AddForces(push);
        rigid.AddForces(push);
        rows.Spread(push, -1, gradX, gradY);
        return Math.Max(Largest(gradX), Largest(gradY));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Largest(double[] of)
    {
        var largest = 0.0;
        foreach (var one in of) largest = Math.Max(largest, Math.Abs(one));
        return largest;
    }

    /// <param name="enough">A gap that need not be made smaller: nearer the corner rounding takes over.</param>
    private void Step(double gap, double enough)
    {
        var mean = gap / sides.Shares;
        Factor(mean);
        sides.ClearCorrections();
        Direction(0);
        var (primal, dual) = Lengths(1);
        var share = sides.Ahead(primal, dual) / gap;
        sides.Correct(mean);
        var target = Math.Max(enough, gap * share * share * share) / sides.Shares;
        Direction(target);
        (primal, dual) = Lengths(Reach);
        for (var round = 0; round < Corrections && Math.Min(primal, dual) < Long; round++) (primal, dual) = Correct(target, primal, dual);
        if (Math.Min(primal, dual) < Short) (primal, dual) = Centre(mean);
        Move(primal, dual);
    }

    private void Factor(double mean)
    {
        Array.Clear(push);
        sides.AddWeights(push);
        rigid.AddWeights(push);
        // As if every post had bounds a metre away that move with it: where nothing else holds a post it does not run off, and as
        // these bounds fade with all others they change nothing of the answer.
        newton.Factor(push, mean + Faint);
    }

    private (double Primal, double Dual) Correct(double target, double primal, double dual)
    {
        sides.Recentre(target, Math.Min(1, primal + Longer), Math.Min(1, dual + Longer));
        Direction(target);
        return Lengths(Reach);
    }

    /// <summary>Towards the path and not along it.</summary>
    private (double Primal, double Dual) Centre(double mean)
    {
        sides.ClearCorrections();
        Direction(mean);
        return Lengths(Reach);
    }

    /// <summary>The Newton step towards complementarity target with the corrections the sides hold.</summary>
    private void Direction(double target)
    {
        Array.Clear(push);
        sides.AddPushes(target, push);
        rigid.AddPushes(push);
        for (var i = 0; i < dx.Length; i++) dx[i] = -gradX[i];
        for (var g = 0; g < dy.Length; g++) dy[g] = -gradY[g];
        rows.Spread(push, 1, dx, dy);
        newton.Solve(dx, dy);
        rows.Read(dx, dy, dz);
        sides.Direct(target, dz);
        rigid.Direct(dz);
    }

    // With a curved goal the two belong together: apart they would spoil stationarity.
    private (double Primal, double Dual) Lengths(double reach)
    {
        var (primal, dual) = sides.Lengths(reach);
        return squares is null ? (primal, dual) : (Math.Min(primal, dual), Math.Min(primal, dual));
    }

    private void Move(double primal, double dual)
    {
        for (var i = 0; i < chain.Posts; i++) x[i] += primal * dx[i];
        for (var g = 0; g < chain.Groups; g++) y[g] += primal * dy[g];
        sides.Move(primal, dual);
        rigid.Move(primal, dual, dz);
    }
}
