namespace Tautline.Engine.Layout.Fit;

/// <summary>Finds out whether bends and rakes can be kept between the pins, and loosens by the least sum those that cannot.</summary>
internal static class HardLimits
{
    private const double Noticed = 1e-8;
    private const double Costly = 1e-5;

    /// <summary>Loosens the block's limits where they must be; nothing where they all can be kept.</summary>
    public static PhaseCertificate? Loosen(FitBlock block)
    {
        var straight = BetweenPins(block);
        if (Kept(block, straight)) return null;
        var chain = BlockRows.Hard(block, straight).ToArrays();
        Array.Fill(chain.Price, 1);
        Array.Fill(chain.Use, SlackUse.Open);
        var answer = new InteriorPoint(chain, null, 1, new double[block.Count]).Solve(1e-11, 1e-11);
        Take(block, chain, answer, [.. straight.Select((top, i) => top + answer.X[i])]);
        return new PhaseCertificate(FitPhase.HardLimits, answer.Value, answer.Residual, answer.Dual, answer.Gap, answer.Iterations, answer.Converged);
    }

    /// <summary>
    /// The breach can be shared out in many ways; the one found, which shares it evenly, is kept: what is broken, and what could only be
    /// kept by breaking more, stays as it is.
    /// </summary>
    private static void Take(FitBlock block, ChainArrays chain, ChainAnswer answer, double[] tops)
    {
        var stays = new bool[chain.Groups];
        for (var g = 0; g < chain.Groups; g++) stays[g] = answer.Y[g] > Noticed;
        for (var r = 0; r < chain.Rows; r++) stays[chain.Group[r]] |= answer.AtLow[r] > Costly;
        for (var i = 0; i < block.Bays; i++)
        {
            var slope = Slope(block, tops, i);
            if (stays[2 * i]) block.Rakes[i] = new SlopeRange(slope, slope);
            if (!stays[2 * i + 1] || !block.RunsThrough(i + 1)) continue;
            var bend = Slope(block, tops, i + 1) - slope;
            block.Bends[i + 1] = new SlopeRange(bend, bend);
        }
    }

    private static double Slope(FitBlock block, double[] tops, int bay) => (tops[bay + 1] - tops[bay]) / block.Bay(bay);

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
            if (!block.Rakes[i].Holds(Slope(block, tops, i))) return false;
            if (block.RunsThrough(i + 1) && !block.Bends[i + 1].Holds(Slope(block, tops, i + 1) - Slope(block, tops, i))) return false;
        }
        return true;
    }
}
