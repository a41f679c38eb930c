namespace Tautline.Engine.Layout.Fit;

/// <summary>Solves the phases of one block one after the other, each within the best answers of those before it.</summary>
internal sealed class BlockFit
{
    private const double Slight = 1e-9;
    private const double Flowing = 1e-10;

    private readonly FitBlock block;
    private readonly double[] plumb;
    private readonly double[] reference;
    private readonly ChainArrays chain;
    private readonly BlockSlacks slacks;
    private readonly List<PhaseCertificate> phases = [];
    private double[] x;

    private BlockFit(FitBlock block, double[] plumb, double[] reference)
    {
        (this.block, this.plumb, this.reference) = (block, plumb, reference);
        (var program, slacks) = BlockRows.All(block, reference, plumb);
        chain = program.ToArrays();
        x = new double[block.Count];
    }

    /// <param name="plumb">Height of the fabric per bay, held.</param>
    /// <returns>Tops of the block's posts and what each phase reached.</returns>
    public static (double[] Tops, IReadOnlyList<PhaseCertificate> Phases) Solve(FitBlock block, double[] plumb)
    {
        var free = Flow.Unbounded(block, plumb);
        if (Suits(block, free, plumb)) return (free, [new PhaseCertificate(FitPhase.Flow, Flow.Of(block, free, plumb).Value(new double[block.Count + 2]), 0, 0, 0, 0, true)]);
        var fit = new BlockFit(block, plumb, free);
        fit.Run();
        return ([.. free.Select((top, i) => top + fit.x[i])], fit.phases);
    }

    /// <summary>Whether tops keep every limit with nothing left over: then they need no phases.</summary>
    private static bool Suits(FitBlock block, double[] tops, double[] plumb)
    {
        if (!HardLimits.Kept(block, tops)) return false;
        for (var i = 0; i < block.Count; i++)
        {
            if (tops[i] - block.GroundAt(i) > block.Post(i).LongestAbove + Slight) return false;
            if (i == block.Bays) break;
            var (least, most) = block.Gaps(i, tops[i], tops[i + 1], plumb[i]);
            if (least < block.Limits.LeastGap - Slight || most > block.Limits.MostGap + Slight) return false;
        }
        return true;
    }

    private void Run()
    {
        var cutAllowed = block.Allows(Remedies.TrimOrBury | Remedies.Grading);
        var fillAllowed = block.Allows(Remedies.ClosurePiece | Remedies.Grading);
        var longer = block.Allows(Remedies.LongerPost);
        Least(FitPhase.Forbidden, PriceBays(cutAllowed ? 0 : 1, fillAllowed ? 0 : 1) + PricePosts(longer ? 0 : 1));
        Least(FitPhase.Grading, PriceBays(cutAllowed ? block.Limits.CutCost : 0, fillAllowed ? block.Limits.FillCost : 0));
        Least(FitPhase.PostLength, PricePosts(longer ? 1 : 0));
        Smooth();
    }

    /// <summary>Prices cut and fill per metre of bay; a price of zero leaves those slacks alone.</summary>
    private double PriceBays(double cut, double fill)
    {
        var sum = 0.0;
        for (var i = 0; i < block.Bays; i++) sum += Price(slacks.Cut[i], cut * block.Bay(i)) + Price(slacks.Fill[i], fill * block.Bay(i));
        return sum;
    }

    private double PricePosts(double price)
    {
        var sum = 0.0;
        foreach (var slack in slacks.Excess.Where(s => s != ChainProgram.None)) sum += Price(slack, price);
        return sum;
    }

    private double Price(int slack, double price)
    {
        if (price == 0) return 0;
        (chain.Price[slack], chain.Use[slack]) = (price, SlackUse.Open);
        return price;
    }

    private void Least(FitPhase phase, double prices)
    {
        if (prices == 0) return;
        var unit = chain.Price.Max();
        for (var g = 0; g < chain.Groups; g++) chain.Price[g] /= unit;
        var answer = new InteriorPoint(chain, null, 1, x).Solve(1e-13, 1e-15 * prices / unit);
        Note(phase, answer, unit);
        x = answer.X;
        Narrowing.ToBest(chain, answer, 1e-11 * answer.Value + 1e-12 * prices / unit);
        Array.Clear(chain.Price);
    }

    private void Smooth()
    {
        var squares = Flow.Of(block, reference, plumb);
        var gradient = new double[block.Count + 2];
        squares.AddGradient([.. x.AsSpan(0, block.Count), 0, 0], 2, gradient);
        var unit = Math.Max(1e-9, gradient.Max(Math.Abs));
        var answer = new InteriorPoint(chain, squares, 1 / unit, x).Solve(Flowing, 1e-12);
        Note(FitPhase.Flow, answer, unit);
        x = answer.X;
    }

    private void Note(FitPhase phase, ChainAnswer answer, double unit)
        => phases.Add(new PhaseCertificate(phase, answer.Value * unit, answer.Residual, answer.Dual, answer.Gap * unit, answer.Iterations, answer.Converged));
}
