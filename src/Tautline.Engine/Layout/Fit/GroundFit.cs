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

    /// <summary>By how much bends and rakes may exceed their limits for the sake of rounding.</summary>
    public const double SlopeTolerance = 1e-9;

    private const int MostPasses = 30;

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
        var blocks = FitBlock.Of(input, hulls, ground);
        PhaseCertificate[] hard = [.. blocks.Select(HardLimits.Loosen).OfType<PhaseCertificate>()];
        var tops = new double[input.Posts.Count];
        var plumb = FirstPlumb(input, blocks);
        for (var pass = 1; ; pass++)
        {
            var phases = hard.ToList();
            foreach (var block in blocks) phases.AddRange(Solve(block, plumb, tops));
            var next = PlumbOf(input, tops);
            var change = next.Zip(plumb, (a, b) => Math.Abs(a - b)).Max();
            if (change <= HeightTolerance || pass == MostPasses)
                return Report(input, ground, hulls, tops, plumb, new FitCertificate(pass, change, Merge(phases)));
            plumb = next;
        }
    }

    private static FittedLine Report(FitInput input, GroundProfile ground, BayHulls hulls, double[] tops, double[] plumb, FitCertificate certificate)
        => FitReport.Of(input, ground, [.. plumb.Select((p, i) => FitReport.Bay(input, hulls, i, tops[i], tops[i + 1], p))], tops, certificate);

    private static IReadOnlyList<PhaseCertificate> Solve(FitBlock block, double[] plumb, double[] tops)
    {
        var (own, phases) = BlockFit.Solve(block, plumb[block.First..(block.First + block.Bays)]);
        own.CopyTo(tops, block.First);
        return phases;
    }

    /// <summary>Plumb heights to start with: of the rail that no limit holds.</summary>
    private static double[] FirstPlumb(FitInput input, List<FitBlock> blocks)
    {
        double[] plumb = [.. Enumerable.Repeat(input.Limits.FabricHeight, input.Posts.Count - 1)];
        var tops = new double[input.Posts.Count];
        for (var round = 0; round < 3; round++)
        {
            foreach (var block in blocks) Flow.Unbounded(block, plumb[block.First..(block.First + block.Bays)]).CopyTo(tops, block.First);
            plumb = PlumbOf(input, tops);
        }
        return plumb;
    }

    /// <summary>Fabric square to the rail stands H*sqrt(1 + g^2) tall.</summary>
    private static double[] PlumbOf(FitInput input, double[] tops)
        => [.. Enumerable.Range(0, tops.Length - 1).Select(i => Plumb(input, (tops[i + 1] - tops[i]) / (input.Posts[i + 1].Station - input.Posts[i].Station)))];

    private static double Plumb(FitInput input, double slope)
    {
        // Where the ground is steeper than any rail may be, the first guess shall not run away.
        var held = Math.Clamp(slope, -input.Limits.GreatestRake, input.Limits.GreatestRake);
        return input.Limits.FabricHeight * Math.Sqrt(1 + held * held);
    }

    private static List<PhaseCertificate> Merge(List<PhaseCertificate> phases) =>
    [
        .. phases.GroupBy(p => p.Phase).OrderBy(g => g.Key).Select(g => new PhaseCertificate(
            g.Key, g.Sum(p => p.Value), g.Max(p => p.Residual), g.Max(p => p.Dual), g.Sum(p => p.Gap), g.Max(p => p.Iterations), g.All(p => p.Converged))),
    ];
}
