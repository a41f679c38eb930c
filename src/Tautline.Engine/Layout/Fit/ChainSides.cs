using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The bounds of a phase, one by one: sign * (activity - bound) = room, room above zero, with a multiplier above zero each. On the path to
/// the answer room times multiplier is share times a common number that goes to zero; bounds that leave little between them have a
/// small share, or their multipliers would begin enormous.
/// </summary>
internal sealed class ChainSides
{
    // Where a run begins: metres of room to a bound, and room times multiplier.
    private const double Start = 0.3;
    private const double FirstMean = 0.1;

    // Of the mean complementarity; a correction far larger than what it corrects would take a multiplier all the way to zero.
    private const double Trust = 2;

    private readonly int[] row;
    private readonly double[] sign;
    private readonly double[] bound;
    private readonly double[] share;
    private readonly double[] off;
    private readonly double[] room;
    private readonly double[] inverse;
    private readonly double[] multiplier;
    private readonly double[] roomMove;
    private readonly double[] multiplierMove;
    private readonly double[] correction;

    public ChainSides(ChainArrays chain, ChainRows rows)
    {
        var count = 0;
        for (var r = 0; r < rows.Count; r++) count += Sides(chain, rows.Source[r]);
        (row, sign, bound, share) = (new int[count], new double[count], new double[count], new double[count]);
        for (var (r, j) = (0, 0); r < rows.Count; r++)
        {
            if (Sides(chain, rows.Source[r]) == 0) continue;
            var (low, high) = (chain.Low[rows.Source[r]], chain.High[rows.Source[r]]);
            var wide = Math.Min(1, 0.5 * (high - low) / Start);
            if (double.IsFinite(low)) (row[j], sign[j], bound[j], share[j++]) = (r, 1, low, wide);
            if (double.IsFinite(high)) (row[j], sign[j], bound[j], share[j++]) = (r, -1, high, wide);
        }
        foreach (var one in share) Shares += one;
        (room, inverse, off, multiplier) = (new double[count], new double[count], new double[count], new double[count]);
        (roomMove, multiplierMove, correction) = (new double[count], new double[count], new double[count]);
    }

    /// <summary>Sum of all shares.</summary>
    public double Shares { get; }

    /// <summary>Every bound gets room whether or not the activity leaves it any, and a multiplier to match.</summary>
    public void Begin(double[] z)
    {
        for (var j = 0; j < row.Length; j++)
        {
            var least = share[j] * Start;
            var there = sign[j] * (z[row[j]] - bound[j]);
            room[j] = share[j] < 1 ? Math.Clamp(there, 0.2 * least, 1.8 * least) : Math.Max(there, least);
            multiplier[j] = share[j] * FirstMean / room[j];
            off[j] = there - room[j];
        }
    }

    /// <summary>Largest difference between the room there is and the room booked, and the duality gap.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Residual, double Gap) State()
    {
        var (residual, gap) = (0.0, 0.0);
        for (var j = 0; j < row.Length; j++)
        {
            residual = Math.Max(residual, Math.Abs(off[j]));
            gap += room[j] * multiplier[j];
        }
        return (residual, gap);
    }

    /// <summary>Largest breach of a bound, read anew.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Breach(double[] z)
    {
        var breach = 0.0;
        for (var j = 0; j < row.Length; j++) breach = Math.Max(breach, sign[j] * (bound[j] - z[row[j]]));
        return breach;
    }

    /// <summary>Adds the multipliers to their rows: pushing up counts as positive.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void AddForces(double[] force)
    {
        for (var j = 0; j < row.Length; j++) force[row[j]] += sign[j] * multiplier[j];
    }

    /// <summary>Begins a step: adds each bound's weight to its row.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void AddWeights(double[] weight)
    {
        for (var j = 0; j < row.Length; j++)
        {
            inverse[j] = 1 / room[j];
            weight[row[j]] += multiplier[j] * inverse[j];
        }
    }

    public void ClearCorrections() => Array.Clear(correction);

    /// <summary>Adds what each row is to be pushed by before it moves, towards share times target.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void AddPushes(double target, double[] push)
    {
        for (var j = 0; j < row.Length; j++)
            push[row[j]] += sign[j] * ((share[j] * target - correction[j] - multiplier[j] * off[j]) * inverse[j] - multiplier[j]);
    }

    /// <summary>The steps of room and multiplier that belong to the rows' moves.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Direct(double target, double[] move)
    {
        for (var j = 0; j < row.Length; j++)
        {
            roomMove[j] = off[j] + sign[j] * move[row[j]];
            multiplierMove[j] = (share[j] * target - correction[j] - multiplier[j] * roomMove[j]) * inverse[j] - multiplier[j];
        }
    }

    /// <summary>How far the steps may go, up to one, with a share of the way to the nearest bound kept.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Primal, double Dual) Lengths(double reach)
    {
        var (primal, dual) = (1.0, 1.0);
        for (var j = 0; j < row.Length; j++)
        {
            if (-roomMove[j] * primal > reach * room[j]) primal = reach * room[j] / -roomMove[j];
            if (-multiplierMove[j] * dual > reach * multiplier[j]) dual = reach * multiplier[j] / -multiplierMove[j];
        }
        return (primal, dual);
    }

    /// <summary>The duality gap that a step would leave.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Ahead(double primal, double dual)
    {
        var gap = 0.0;
        for (var j = 0; j < row.Length; j++) gap += (room[j] + primal * roomMove[j]) * (multiplier[j] + dual * multiplierMove[j]);
        return gap;
    }

    /// <summary>Makes up for the product of the two steps, which the linear equations leave out; for no more than it can be trusted with.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Correct(double mean)
    {
        for (var j = 0; j < row.Length; j++)
        {
            var most = Trust * share[j] * mean;
            correction[j] = Math.Clamp(roomMove[j] * multiplierMove[j], -most, most);
        }
    }

    /// <summary>Corrects the bounds that a longer step would throw far off the path.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Recentre(double target, double primal, double dual)
    {
        for (var j = 0; j < row.Length; j++)
        {
            var (wanted, product) = (share[j] * target, (room[j] + primal * roomMove[j]) * (multiplier[j] + dual * multiplierMove[j]));
            correction[j] -= Math.Max(Math.Clamp(product, 0.1 * wanted, 10 * wanted) - product, -10 * wanted);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Move(double primal, double dual)
    {
        for (var j = 0; j < row.Length; j++)
        {
            room[j] += primal * roomMove[j];
            multiplier[j] += dual * multiplierMove[j];
            // Not read from the heights again: where room is a billionth of a millimetre their rounding would drown it.
            off[j] *= 1 - primal;
        }
    }

    /// <summary>Multipliers by row of the program, of lower and of upper bounds.</summary>
    public (double[] Low, double[] High) Multipliers(ChainRows rows, int count)
    {
        var (low, high) = (new double[count], new double[count]);
        for (var j = 0; j < row.Length; j++) (sign[j] > 0 ? low : high)[rows.Source[row[j]]] = multiplier[j];
        return (low, high);
    }

    private static int Sides(ChainArrays chain, int row)
        => chain.Low[row] == chain.High[row] ? 0 : (double.IsFinite(chain.Low[row]) ? 1 : 0) + (double.IsFinite(chain.High[row]) ? 1 : 0);
}
