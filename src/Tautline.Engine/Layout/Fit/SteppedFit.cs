namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// A line of level bays. Neighbouring bays of one level form a group; between two groups fabric ends, so a line post there becomes a
/// terminal. The rail meets a pinned post at its pin from both sides. Among all ways to group the bays and to choose the groups'
/// levels, in this order: least deviation from pins that no single level can meet; least cut and fill for which no remedy is
/// allowed; least priced cut and fill; fewest steps at line posts; lowest fence (sum of length times level). Post length over stock is
/// reported, not weighed. Costs are compared in whole 1e-7 m or m2. Exact, by dynamic programming over where a group ends.
/// </summary>
internal static class SteppedFit
{
    public static FittedLine Fit(FitInput input, GroundProfile ground, BayHulls hulls)
    {
        var starts = Starts(input, hulls, out var levels, out var total);
        var bays = new FittedBay[input.Posts.Count - 1];
        for (var to = bays.Length; to > 0; to = starts[to])
            for (var i = starts[to]; i < to; i++) bays[i] = FitReport.Bay(input, hulls, i, levels[to], levels[to], input.Limits.FabricHeight);
        double[] tops = [.. input.Posts.Select((post, i) => post.Pinned ?? Math.Max(bays[Math.Max(0, i - 1)].TopTo, bays[Math.Min(bays.Length - 1, i)].TopFrom))];
        var line = FitReport.Of(input, ground, bays, tops, new FitCertificate(1, 0, [Phase(FitPhase.Forbidden, total.Forbidden), Phase(FitPhase.Grading, total.Grading)]));
        return line with { Violations = [.. line.Violations, .. Missed(input, bays)] };
    }

    /// <summary>For every number of bays the start of the last group in the cheapest way to cover them, and that group's level.</summary>
    private static int[] Starts(FitInput input, BayHulls hulls, out double[] levels, out SteppedCost total)
    {
        var count = input.Posts.Count - 1;
        var starts = new int[count + 1];
        levels = new double[count + 1];
        var best = new SteppedCost[count + 1];
        var group = new LevelGroup(input, input.Ground.Min(g => g.Height));
        for (var to = 1; to <= count; to++)
        {
            group.Clear();
            best[to] = new SteppedCost(long.MaxValue, 0, 0, 0, 0);
            for (var from = to - 1; from >= 0; from--)
            {
                group.Add(from, hulls.Upper(from), hulls.Lower(from));
                var (level, cost) = group.Best();
                // A longer group never costs less cut and fill, but for the rounding of its sums.
                if ((cost.Pins - 2, cost.Forbidden - 2, cost.Grading - 2).CompareTo((best[to].Pins, best[to].Forbidden, best[to].Grading)) > 0) break;
                var whole = best[from] + cost with { Steps = from == 0 || input.Posts[from].Terminal ? 0 : 1 };
                if (whole.CompareTo(best[to]) < 0) (best[to], starts[to], levels[to]) = (whole, from, level);
            }
        }
        total = best[count];
        return starts;
    }

    private static PhaseCertificate Phase(FitPhase phase, long whole) => new(phase, whole * 1e-7, 0, 0, 0, 0, true);

    private static IEnumerable<FitViolation> Missed(FitInput input, FittedBay[] bays)
    {
        foreach (var bay in bays)
        {
            for (var i = bay.Index; i <= bay.Index + 1; i++)
                if (input.Posts[i].Pinned is { } pin && Math.Abs(pin - bay.TopFrom) > 1e-6)
                    yield return new FitViolation(FitLimit.Pinned, bay.Index, input.Posts[i].Station, Math.Abs(pin - bay.TopFrom));
        }
    }
}
