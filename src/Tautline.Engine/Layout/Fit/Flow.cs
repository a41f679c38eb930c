namespace Tautline.Engine.Layout.Fit;

/// <summary>How the rail likes to run where the limits leave it free.</summary>
internal static class Flow
{
    private const double SmoothWeight = 1e-3;
    private const double FollowWeight = 100;

    /// <summary>The squares of a block: changes of slope at line posts, and at every post the weighted deviation from the wanted gap.</summary>
    public static Squares Of(FitBlock block, double[] reference, double[] plumb)
    {
        var squares = new Squares(block.Count);
        for (var i = 0; i < block.Count; i++)
        {
            AddDeviation(block, squares, i, reference[i] - Wanted(block, i, plumb));
            if (block.RunsThrough(i + 1)) AddBend(block, squares, i, reference);
        }
        return squares;
    }

    /// <summary>The height at which the top line has the wanted gap at a post.</summary>
    public static double Wanted(FitBlock block, int i, double[] plumb)
    {
        var (before, after) = (plumb[Math.Max(0, i - 1)], plumb[Math.Min(block.Bays - 1, i)]);
        return block.GroundAt(i) + block.Limits.WantedGap + 0.5 * (before + after);
    }

    /// <summary>The top line that flows best when no limit holds it; pins do.</summary>
    public static double[] Unbounded(FitBlock block, double[] plumb)
    {
        double[] reference = [.. Enumerable.Range(0, block.Count).Select(i => block.Post(i).Pinned ?? Wanted(block, i, plumb))];
        var squares = Of(block, reference, plumb);
        var root = new BandRoot(block.Count);
        root.Start();
        for (var i = 0; i < block.Count; i++)
        {
            root.Add(squares.B0[i], squares.B1[i], squares.B2[i]);
            root.Add(squares.G[i], 0);
            if (block.Pinned[i]) root.Add(1, 0);
            root.Finish(i);
        }
        var x = new double[block.Count + 2];
        squares.AddGradient(new double[block.Count + 2], -1, x);
        root.Solve(x);
        return [.. reference.Select((height, i) => height + x[i])];
    }

    private static void AddDeviation(FitBlock block, Squares squares, int i, double deviation)
    {
        if (block.Pinned[i]) return;
        var weight = block.Limits.GapWeight ?? (block.Mode == FitMode.Follow ? FollowWeight : SmoothWeight);
        squares.G[i] = Math.Sqrt(weight);
        squares.D[i] = squares.G[i] * deviation;
    }

    private static void AddBend(FitBlock block, Squares squares, int i, double[] reference)
    {
        var (before, after) = (1 / block.Bay(i), 1 / block.Bay(i + 1));
        squares.B[i] = (reference[i + 2] - reference[i + 1]) * after - (reference[i + 1] - reference[i]) * before;
        squares.B0[i] = block.Pinned[i] ? 0 : before;
        squares.B1[i] = block.Pinned[i + 1] ? 0 : -before - after;
        squares.B2[i] = block.Pinned[i + 2] ? 0 : after;
    }
}
