namespace Tautline.Engine.Layout.Fit;

/// <summary>Finds out whether bends and rakes can be kept between the pins, and loosens by the least sum those that cannot.</summary>
internal static class HardLimits
{
    private const double Noticed = 1e-7;

    /// <summary>Loosens the block's limits where they must be; nothing where they all can be kept.</summary>
    public static PhaseCertificate? Loosen(FitBlock block)
    {
        var straight = BetweenPins(block);
        if (Kept(block, straight)) return null;
        var chain = BlockRows.Hard(block, straight).ToArrays();
        Array.Fill(chain.Price, 1);
        Array.Fill(chain.Use, SlackUse.Open);
        var answer = new InteriorPoint(chain, null, 1, new double[block.Count]).Solve(1e-9, 1e-9);
        Take(block, answer);
        return new PhaseCertificate(FitPhase.HardLimits, answer.Value, answer.Residual, answer.Dual, answer.Gap, answer.Iterations, answer.Converged);
    }

    private static void Take(FitBlock block, ChainAnswer answer)
    {
        for (var i = 0; i < block.Bays; i++)
        {
            if (answer.Y[2 * i] > Noticed) block.RakeLimit[i] += answer.Y[2 * i] / block.Bay(i);
            if (answer.Y[2 * i + 1] > Noticed) block.BendLimit[i + 1] += answer.Y[2 * i + 1] / block.Lever(i + 1);
        }
    }

    /// <summary>Straight from pin to pin, level beyond the outer ones: no line has a smaller greatest slope.</summary>
    private static double[] BetweenPins(FitBlock block)
    {
        var tops = new double[block.Count];
        int[] pins = [.. Enumerable.Range(0, block.Count).Where(i => block.Pinned[i])];
        if (pins.Length == 0) return tops;
        Array.Fill(tops, block.Post(pins[0]).Pinned!.Value);
        for (var k = 1; k < pins.Length; k++) Between(block, tops, pins[k - 1], pins[k]);
        Array.Fill(tops, block.Post(pins[^1]).Pinned!.Value, pins[^1], block.Count - pins[^1]);
        return tops;
    }

    private static void Between(FitBlock block, double[] tops, int from, int to)
    {
        var (a, b) = (block.Post(from), block.Post(to));
        var slope = (b.Pinned!.Value - a.Pinned!.Value) / (b.Station - a.Station);
        for (var i = from; i <= to; i++) tops[i] = a.Pinned.Value + slope * (block.Post(i).Station - a.Station);
        tops[to] = b.Pinned.Value;
    }

    public static bool Kept(FitBlock block, double[] tops)
    {
        for (var i = 0; i < block.Bays; i++)
        {
            var slope = (tops[i + 1] - tops[i]) / block.Bay(i);
            if (Math.Abs(slope) > block.RakeLimit[i]) return false;
            if (block.RunsThrough(i + 1) && Math.Abs((tops[i + 2] - tops[i + 1]) / block.Bay(i + 1) - slope) > block.BendLimit[i + 1]) return false;
        }
        return true;
    }
}
