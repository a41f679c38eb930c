namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// A line of level bays. Neighbouring bays of one level form a group; between two groups fabric ends, so a line post there becomes a
/// terminal. The rail meets a pinned post at its pin from both sides. Among all ways to group the bays and to choose the groups'
/// levels, in this order: least deviation from pins that no single level can meet; least cut and fill for which no remedy is
/// allowed; least priced cut and fill; fewest steps at line posts; lowest fence (sum of length times level). Post length over stock is
/// reported, not weighed. Lengths and levels count in whole nanometres, so equal costs are equal. Exact, by dynamic programming over where a
/// group ends: time in proportion to bays where they must step, to their square where one level suits many of them.
/// </summary>
internal static class SteppedFit
{
    public static FittedLine Fit(FitInput input, GroundProfile ground, BayHulls hulls)
    {
        var starts = Starts(input, hulls, out var levels);
        var bays = new FittedBay[input.Posts.Count - 1];
        for (var to = bays.Length; to > 0; to = starts[to])
            for (var i = starts[to]; i < to; i++) bays[i] = FitReport.Bay(input, hulls, i, levels[to], levels[to], input.Limits.FabricHeight);
        double[] tops = [.. input.Posts.Select((post, i) => post.Pinned ?? Math.Max(bays[Math.Max(0, i - 1)].TopTo, bays[Math.Min(bays.Length - 1, i)].TopFrom))];
        var line = FitReport.Of(input, ground, bays, tops, new FitCertificate(1, 0, Phases(input, bays)));
        return line with { Violations = [.. line.Violations, .. Missed(input, bays)] };
    }

    /// <summary>For every number of bays the start of the last group in the cheapest way to cover them, and that group's level.</summary>
    private static int[] Starts(FitInput input, BayHulls hulls, out double[] levels)
    {
        var count = input.Posts.Count - 1;
        var starts = new int[count + 1];
        levels = new double[count + 1];
        var best = new SteppedCost[count + 1];
        var group = new LevelGroup(input);
        for (var to = 1; to <= count; to++)
        {
            group.Clear();
            (best[to], starts[to]) = (default, -1);
            for (var from = to - 1; from >= 0; from--)
            {
                group.Add(from, hulls.Upper(from), hulls.Lower(from));
                // A longer group never costs less; alone it may cost more already than all bays do with the last start found.
                if (starts[to] >= 0 && group.Cost.Weighed.CompareTo(best[to].Weighed) > 0) break;
                var whole = best[from] + group.Cost with { Steps = from == 0 || input.Posts[from].Terminal ? 0 : 1 };
                if (starts[to] < 0 || whole.CompareTo(best[to]) < 0) (best[to], starts[to], levels[to]) = (whole, from, LevelGroup.Metres(group.Level));
            }
        }
        return starts;
    }

    private static IReadOnlyList<PhaseCertificate> Phases(FitInput input, FittedBay[] bays)
    {
        var cut = (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) != 0;
        var fill = (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) != 0;
        var forbidden = bays.Sum(b => b.Length * ((cut ? 0 : b.Cut) + (fill ? 0 : b.Fill)));
        var grading = bays.Sum(b => b.Length * ((cut ? input.Limits.CutCost * b.Cut : 0) + (fill ? input.Limits.FillCost * b.Fill : 0)));
        return [new(FitPhase.Forbidden, forbidden, 0, 0, 0, 0, true), new(FitPhase.Grading, grading, 0, 0, 0, 0, true)];
    }

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
