namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Chooses the top line of a fence over the ground. In this order: keep pins, bends and rakes; keep limits for which no remedy is
/// allowed; least priced cut and fill; least post length over stock; smoothest rail. The formulas stand in docs/ground-fit.md.
/// </summary>
public static class GroundFit
{
    /// <summary>The plumb height of the fabric has settled when no bay's changes by more than this, metres.</summary>
    public const double HeightTolerance = 1e-4;

    /// <summary>Largest breach of a constraint that counts as kept, metres.</summary>
    public const double ResidualTolerance = 1e-4;

    /// <exception cref="ArgumentException">Posts or ground out of order, or limits out of range: the message names them.</exception>
    public static FittedLine Fit(FitInput input)
    {
        FitCheck.Check(input);
        var ground = new GroundProfile(input.Ground);
        var hulls = new BayHulls(input.Posts, ground);
        return input.Mode == FitMode.Stepped ? SteppedFit.Fit(input, ground, hulls) : Follow(input, ground, hulls);
    }

    private static FittedLine Follow(FitInput input, GroundProfile ground, BayHulls hulls)
    {
        var (tops, plumb) = (new double[input.Posts.Count], new double[input.Posts.Count - 1]);
        List<FitCertificate> certificates = [];
        foreach (var block in FitBlock.Of(input, hulls, ground))
        {
            var hard = HardLimits.Loosen(block);
            certificates.Add(Settle(block, hard, tops.AsSpan(block.First, block.Count), plumb.AsSpan(block.First, block.Bays)));
        }
        var bays = plumb.Select((p, i) => FitReport.Bay(input, hulls, i, tops[i], tops[i + 1], p)).ToList();
        return FitReport.Of(input, ground, bays, tops, Merge(certificates));
    }

    /// <summary>Fits a block again and again until the plumb heights it holds are those of the slopes it finds.</summary>
    private static FitCertificate Settle(FitBlock block, PhaseCertificate? hard, Span<double> tops, Span<double> plumb)
    {
        var heights = new PlumbHeights(FirstPlumb(block), Plumb(block, 0), Plumb(block, block.Limits.GreatestRake));
        for (var pass = 1; ; pass++)
        {
            var (own, phases) = BlockFit.Solve(block, heights.Held);
            var found = PlumbOf(block, own);
            var change = heights.Off(found);
            if (change <= HeightTolerance || pass == PlumbHeights.MostPasses)
            {
                own.CopyTo(tops);
                heights.Held.CopyTo(plumb);
                return new FitCertificate(pass, change, hard is null ? phases : [hard, .. phases]);
            }
            heights.Take(found);
        }
    }

    /// <summary>Plumb heights to start with: of the rail that no limit holds.</summary>
    private static double[] FirstPlumb(FitBlock block)
    {
        var plumb = new double[block.Bays];
        Array.Fill(plumb, block.Limits.FabricHeight);
        for (var round = 0; round < 3; round++) plumb = PlumbOf(block, Flow.Unbounded(block, plumb));
        return plumb;
    }

    private static double[] PlumbOf(FitBlock block, double[] tops)
    {
        var plumb = new double[block.Bays];
        for (var i = 0; i < plumb.Length; i++)
        {
            // Where the ground is steeper than any rail may be, the first guess shall not run away.
            var slope = Math.Clamp((tops[i + 1] - tops[i]) / block.Bay(i), block.Rakes[i].Low, block.Rakes[i].High);
            plumb[i] = Plumb(block, slope);
        }
        return plumb;
    }

    /// <summary>Fabric square to the rail stands H*sqrt(1 + g^2) tall.</summary>
    private static double Plumb(FitBlock block, double slope) => block.Limits.FabricHeight * Math.Sqrt(1 + slope * slope);

    private static FitCertificate Merge(List<FitCertificate> blocks)
        => new(blocks.Max(b => b.Passes), blocks.Max(b => b.HeightChange), Merge(blocks.SelectMany(b => b.Phases)));

    private static List<PhaseCertificate> Merge(IEnumerable<PhaseCertificate> phases) =>
    [
        .. phases.GroupBy(p => p.Phase).OrderBy(g => g.Key).Select(g => new PhaseCertificate(
            g.Key, g.Sum(p => p.Value), g.Max(p => p.Residual), g.Max(p => p.Dual), g.Sum(p => p.Gap), g.Max(p => p.Iterations), g.All(p => p.Converged))),
    ];
}
