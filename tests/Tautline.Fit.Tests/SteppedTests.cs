using CsCheck;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>Stepped lines against every way to group the bays.</summary>
public sealed class SteppedTests
{
    private static readonly FitLimits Limits = new(2, 0, 0.1, 0.05, 1, 1, 1, 2);

    [Fact]
    public void ASteppedLineIsTheBestOfAllGroupings() => GenInput.Sample(input =>
    {
        var fit = GroundFit.Fit(input);
        var best = Groupings(input.Posts.Count - 1).Select(g => Cost(input, g)).Min();
        Assert.Equal(best.Forbidden, Forbidden(input, fit), 1e-5);
        Assert.Equal(best.Grading, Priced(input, fit) , 1e-5);
        Assert.Equal(best.Steps, fit.Bays.Skip(1).Count(b => b.TopFrom != fit.Bays[b.Index - 1].TopTo && !input.Posts[b.Index].Terminal));
        Assert.Equal(best.Height, fit.Bays.Sum(b => b.Length * b.TopFrom), 1e-4);
    }, iter: 300);

    [Fact]
    public void OverLevelGroundNothingSteps()
    {
        var fit = GroundFit.Fit(new FitInput(Grounds.Posts(30, 10), Grounds.Of(30, 1, _ => 5), Limits, Mode: FitMode.Stepped));
        // Lowest: 2 m of fabric with no gap.
        Assert.All(fit.Tops, top => Assert.Equal(7, top, 9));
    }

    [Fact]
    public void AHillsideStepsAtEveryPostAndCostsWhatLevelBaysCost()
    {
        // 0.1 in 1: each 3 m bay rises 0.3 m, the gap may vary by 0.1, so 0.2 must be cut or filled; cutting is cheaper: 3 x 0.2 a bay.
        var fit = GroundFit.Fit(new FitInput(Grounds.Posts(9, 3), [new(0, 0), new(9, 0.9)], Limits, Mode: FitMode.Stepped));
        Assert.Equal(1.8, fit.Cost(Limits), 6);
        Assert.Equal([2.1, 2.4, 2.7, 2.7], fit.Tops, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void ThePinnedPostIsMetFromBothSides()
    {
        FitPost[] posts = [new(0, true), new(3, false, 2.4), new(6, true)];
        var fit = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(6, 0)], Limits, Mode: FitMode.Stepped));
        Assert.Equal([2.4, 2.4, 2.4], fit.Tops);
    }

    [Fact]
    public void ABayBetweenTwoDifferentPinsCannotBeLevelAndSaysSo()
    {
        FitPost[] posts = [new(0, true, 2), new(3, true, 2.4)];
        var broken = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(3, 0)], Limits, Mode: FitMode.Stepped)).Violations.Single(v => v.Limit == FitLimit.Pinned);
        Assert.Equal(0.4, broken.Amount, 9);
    }

    private static readonly Gen<FitInput> GenInput =
        from bays in Gen.Int[1, 8]
        from lengths in Gen.Double[1, 3.5].Array[bays]
        from heights in Gen.Double[-0.3, 0.3].Array[bays * 3 + 1]
        from terminals in Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from remedies in Gen.Int[0, 15]
        from roughness in Gen.Bool
        let posts = Enumerable.Range(0, bays + 1).Select(i => new FitPost(lengths.Take(i).Sum(), terminals[i])).ToList()
        let ground = heights.Select((h, i) => new GroundVertex(i == heights.Length - 1 ? posts[^1].Station : posts[^1].Station * i / (heights.Length - 1), (roughness ? 1.0 : 0.1) * h)).ToList()
        select new FitInput(posts, ground, Limits, (Remedies)remedies, FitMode.Stepped);

    private static IEnumerable<int[]> Groupings(int bays)
        => Enumerable.Range(0, 1 << (bays - 1)).Select(bits => Enumerable.Range(1, bays - 1).Where(i => (bits >> (i - 1) & 1) == 1).ToArray());

    private static (double Forbidden, double Grading, int Steps, double Height) Cost(FitInput input, int[] cuts)
    {
        int[] edges = [0, .. cuts, input.Posts.Count - 1];
        var groups = edges.Zip(edges.Skip(1), (from, to) => Best(input, from, to)).ToList();
        return (Math.Round(groups.Sum(g => g.Forbidden), 6), Math.Round(groups.Sum(g => g.Grading), 6), cuts.Count(c => !input.Posts[c].Terminal), groups.Sum(g => g.Height));
    }

    /// <summary>Every level at which some vertex begins to count is tried.</summary>
    private static (double Forbidden, double Grading, double Height) Best(FitInput input, int from, int to)
    {
        var bays = Enumerable.Range(from, to - from).Select(i => (Length: input.Posts[i + 1].Station - input.Posts[i].Station,
            Heights: Grounds.Under(input.Ground, input.Posts[i].Station, input.Posts[i + 1].Station).Select(g => g.Height).ToList())).ToList();
        return bays.SelectMany(b => b.Heights).SelectMany(h => new[] { h + 2, h + 2.1 }).Select(level =>
        {
            var cut = bays.Sum(b => b.Length * Math.Max(0, b.Heights.Max() + 2 - level));
            var fill = bays.Sum(b => b.Length * Math.Max(0, level - 2.1 - b.Heights.Min()));
            var (c, f) = (CanCut(input), CanFill(input));
            return (Math.Round((c ? 0 : cut) + (f ? 0 : fill), 7), Math.Round((c ? cut : 0) + (f ? 2 * fill : 0), 7), bays.Sum(b => b.Length) * level);
        }).Min();
    }

    private static bool CanCut(FitInput input) => (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) != 0;

    private static bool CanFill(FitInput input) => (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) != 0;

    private static double Forbidden(FitInput input, FittedLine fit)
        => fit.Bays.Sum(b => b.Length * ((CanCut(input) ? 0 : b.Cut) + (CanFill(input) ? 0 : b.Fill)));

    private static double Priced(FitInput input, FittedLine fit)
        => fit.Bays.Sum(b => b.Length * ((CanCut(input) ? b.Cut : 0) + (CanFill(input) ? 2 * b.Fill : 0)));
}
