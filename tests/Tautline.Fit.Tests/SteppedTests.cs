using CsCheck;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>Stepped lines against every way to group the bays.</summary>
public sealed class SteppedTests
{
    private static readonly FitLimits Limits = new(2, 0, 0.1, 0.05, 1, 1, 1, 2);

    [Fact]
    public void ASteppedLineIsTheBestOfAllGroupings() => GenInput.Always(input =>
    {
        var fit = GroundFit.Fit(input);
        var best = Groupings(input.Posts.Count - 1).Select(g => Cost(input, g)).Min();
        Assert.Equal((double)best.Pins, Pins(input, fit), 1e-8);
        Assert.Equal((double)best.Forbidden, Forbidden(input, fit), 1e-8);
        Assert.Equal((double)best.Grading, Priced(input, fit), 1e-8);
        Assert.Equal(best.Steps, fit.Bays.Skip(1).Count(b => b.TopFrom != fit.Bays[b.Index - 1].TopTo && !input.Posts[b.Index].Terminal));
        Assert.Equal((double)best.Height, fit.Bays.Sum(b => b.Length * b.TopFrom), 1e-8);
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

    [Fact]
    public void OfThreePinsInOneBayRowTheMiddleOneIsMet()
    {
        // Both bays see the pin of 2.3 between them: off by 0.1 + 0 + 0 + 0.2 at 2.3, by more at any other level, and two levels would miss no less.
        FitPost[] posts = [new(0, true, 2.2), new(3, false, 2.3), new(6, true, 2.5)];
        var fit = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(6, 0)], Limits, Mode: FitMode.Stepped));
        Assert.Equal(0.3, Pins(fit, posts), 9);
    }

    // Whole millimetres, which decimals hold exactly: groupings of equal cost must not differ in the last digit.
    private static readonly Gen<FitInput> GenInput =
        from bays in Gen.Int[1, 8]
        from lengths in Gen.Int[10, 35].Array[bays]
        from heights in Gen.Int[-300, 300].Array[bays * 3 + 1]
        from terminals in Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from pins in Gen.Frequency((9, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from tops in Gen.Int[19, 24].Array[bays + 1]
        from remedies in Gen.Int[0, 15]
        from rough in Gen.Bool
        let posts = Enumerable.Range(0, bays + 1).Select(i => new FitPost(lengths.Take(i).Sum() / 10.0, terminals[i], pins[i] ? tops[i] / 10.0 : null)).ToList()
        let ground = Enumerable.Range(0, bays).SelectMany(i => Enumerable.Range(0, 3).Select(k => new GroundVertex((lengths.Take(i).Sum() + k * lengths[i] / 4) / 10.0, Height(heights[3 * i + k], rough))))
            .Append(new GroundVertex(posts[^1].Station, Height(heights[^1], rough))).ToList()
        select new FitInput(posts, ground, Limits, (Remedies)remedies, FitMode.Stepped);

    private static double Height(int millimetres, bool rough) => (rough ? millimetres : millimetres / 10) / 1000.0;

    private static IEnumerable<int[]> Groupings(int bays)
        => Enumerable.Range(0, 1 << (bays - 1)).Select(bits => Enumerable.Range(1, bays - 1).Where(i => (bits >> (i - 1) & 1) == 1).ToArray());

    private static (decimal Pins, decimal Forbidden, decimal Grading, int Steps, decimal Height) Cost(FitInput input, int[] cuts)
    {
        int[] edges = [0, .. cuts, input.Posts.Count - 1];
        var groups = edges.Zip(edges.Skip(1), (from, to) => Best(input, from, to)).ToList();
        return (groups.Sum(g => g.Pins), groups.Sum(g => g.Forbidden), groups.Sum(g => g.Grading), cuts.Count(c => !input.Posts[c].Terminal), groups.Sum(g => g.Height));
    }

    /// <summary>Every level at which some vertex or pin begins to count is tried.</summary>
    private static (decimal Pins, decimal Forbidden, decimal Grading, decimal Height) Best(FitInput input, int from, int to)
    {
        var bays = Enumerable.Range(from, to - from).Select(i => (
            Length: (decimal)input.Posts[i + 1].Station - (decimal)input.Posts[i].Station,
            Heights: input.Ground.Where(g => g.Station >= input.Posts[i].Station && g.Station <= input.Posts[i + 1].Station).Select(g => (decimal)g.Height).ToList(),
            Pins: input.Posts.Skip(i).Take(2).Where(p => p.Pinned is not null).Select(p => (decimal)p.Pinned!.Value).ToList())).ToList();
        var (c, f) = (CanCut(input), CanFill(input));
        return bays.SelectMany(b => b.Heights).SelectMany(h => new[] { h + 2, h + 2.1m }).Concat(bays.SelectMany(b => b.Pins)).Select(level =>
        {
            var cut = bays.Sum(b => b.Length * Math.Max(0, b.Heights.Max() + 2 - level));
            var fill = bays.Sum(b => b.Length * Math.Max(0, level - 2.1m - b.Heights.Min()));
            return (bays.Sum(b => b.Pins.Sum(p => Math.Abs(p - level))), (c ? 0 : cut) + (f ? 0 : fill), (c ? cut : 0) + (f ? 2 * fill : 0), bays.Sum(b => b.Length) * level);
        }).Min();
    }

    private static double Pins(FitInput input, FittedLine fit) => Pins(fit, [.. input.Posts]);

    private static double Pins(FittedLine fit, FitPost[] posts)
        => fit.Bays.Sum(b => posts.Skip(b.Index).Take(2).Where(p => p.Pinned is not null).Sum(p => Math.Abs(p.Pinned!.Value - b.TopFrom)));

    private static bool CanCut(FitInput input) => (input.Allowed & (Remedies.TrimOrBury | Remedies.Grading)) != 0;

    private static bool CanFill(FitInput input) => (input.Allowed & (Remedies.ClosurePiece | Remedies.Grading)) != 0;

    private static double Forbidden(FitInput input, FittedLine fit)
        => fit.Bays.Sum(b => b.Length * ((CanCut(input) ? 0 : b.Cut) + (CanFill(input) ? 0 : b.Fill)));

    private static double Priced(FitInput input, FittedLine fit)
        => fit.Bays.Sum(b => b.Length * ((CanCut(input) ? b.Cut : 0) + (CanFill(input) ? 2 * b.Fill : 0)));
}
