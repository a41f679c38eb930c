using CsCheck;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>What holds for every fit.</summary>
public sealed class PromiseTests
{
    private static readonly FitLimits Limits = new(1.83, 0.02, 0.12, 0.05, 0.6, 0.06);

    [Fact]
    public void OverLevelGroundTheTopIsLevelAndNothingIsLeftOver()
    {
        var fit = GroundFit.Fit(new FitInput(Grounds.Posts(300, 100), Grounds.Of(300, 0.3, _ => 12.5), Limits));
        Assert.All(fit.Tops, top => Assert.Equal(14.38, top, 12));
        Assert.Equal(0, fit.Cost(Limits));
        Assert.Empty(fit.Misfits);
        Assert.True(fit.Certificate.Sound);
    }

    [Fact]
    public void OverAnEvenSlopeTheRailIsStraight()
    {
        var fit = GroundFit.Fit(new FitInput(Grounds.Posts(90, 30), Grounds.Of(90, 0.3, s => 100 + 0.25 * s), Limits));
        Assert.All(fit.Bays, bay => Assert.Equal(0.25, bay.Slope, 9));
        // 1.83 x sqrt(1.0625) = 1.886320..., and 0.05 m of gap.
        Assert.Equal(101.936320, fit.Tops[0], 5);
        Assert.Equal(0, fit.Cost(Limits));
    }

    [Fact]
    public void APinnedTopNeverMovesAndAHardLimitNeverBreaksUnsaid() => GenInput.Each(input =>
    {
        var fit = GroundFit.Fit(input);
        for (var i = 0; i < input.Posts.Count; i++)
            if (input.Posts[i].Pinned is { } pin) Assert.Equal(pin, fit.Tops[i]);
        foreach (var bay in fit.Bays)
            if (Math.Abs(bay.Slope) > input.Limits.GreatestRake + 2e-6) Assert.Contains(fit.Violations, v => v.Limit == FitLimit.Rake && v.Index == bay.Index);
        for (var i = 1; i < fit.Bays.Count; i++)
            if (!input.Posts[i].Terminal && Math.Abs(fit.Bays[i].Slope - fit.Bays[i - 1].Slope) > input.Limits.GreatestBend + 2e-6)
                Assert.Contains(fit.Violations, v => v.Limit == FitLimit.Bend && v.Index == i);
        Assert.True(fit.Certificate.Residual <= 1e-4, fit.Certificate.ToString());
    }, 300);

    [Fact]
    public void ALineRunBackwardsHasTheSameTops() => GenInput.Each(input =>
    {
        var length = input.Posts[^1].Station;
        var mirrored = input with
        {
            Posts = [.. input.Posts.Reverse().Select(p => p with { Station = length - p.Station })],
            Ground = [.. input.Ground.Reverse().Select(g => g with { Station = length - g.Station })],
        };
        var (there, back) = (GroundFit.Fit(input), GroundFit.Fit(mirrored));
        if (there.Violations.Count > 0) return;
        var off = there.Tops.Select((top, i) => Math.Abs(top - back.Tops[^(i + 1)])).Max();
        Assert.True(off <= 1e-4, $"{off:0.0e0} {there.Certificate} {string.Join(", ", there.Certificate.Phases)} {back.Certificate} {string.Join(", ", back.Certificate.Phases)}");
    }, 150);

    [Fact]
    public void PinsTooFarApartAreReportedWithTheLeastBreach()
    {
        // 1.8 m of rise over 3 m between two pins, 0.3 allowed: slope 0.6 breaks the rake by 0.3.
        FitPost[] posts = [new(0, true, 2), new(3, true, 3.8)];
        var broken = Assert.Single(GroundFit.Fit(new FitInput(posts, [new(0, 0), new(3, 1.8)], Limits with { GreatestRake = 0.3 })).Violations);
        Assert.Equal((FitLimit.Rake, 0), (broken.Limit, broken.Index));
        Assert.Equal(0.3, broken.Amount, 6);
    }

    [Fact]
    public void APinnedLinePostThatBendsTheRailTooFarIsReported()
    {
        // Level pins with the middle one 0.3 m up: slopes 0.1 and -0.1, a bend of 0.2 where 0.06 is allowed.
        FitPost[] posts = [new(0, true, 2), new(3, false, 2.3), new(6, true, 2)];
        var fit = GroundFit.Fit(new FitInput(posts, [new(0, 0), new(6, 0)], Limits));
        var broken = fit.Violations.Single(v => v.Limit == FitLimit.Bend);
        Assert.Equal(1, broken.Index);
        Assert.Equal(0.14, broken.Amount, 6);
        Assert.Equal([2, 2.3, 2], fit.Tops);
    }

    [Fact]
    public void APinnedTerminalPartsTheLine()
    {
        var ground = Grounds.Of(60, 0.5, s => 0.4 * Math.Sin(s / 3));
        var posts = Grounds.Posts(60, 20).Select((p, i) => i == 10 ? p with { Terminal = true, Pinned = 2 } : p).ToList();
        var whole = GroundFit.Fit(new FitInput(posts, ground, Limits));
        var half = GroundFit.Fit(new FitInput([.. posts.Take(11)], ground, Limits));
        for (var i = 0; i <= 10; i++) Assert.Equal(half.Tops[i], whole.Tops[i], 3);
    }

    [Theory]
    [InlineData(0, "GreatestRake is 0; it must be above zero.")]
    [InlineData(double.NaN, "GreatestRake is NaN; it must be above zero.")]
    public void ALimitOutOfRangeIsNamed(double rake, string message)
        => Assert.Equal(message, Assert.Throws<ArgumentException>(() => GroundFit.Fit(new FitInput(Grounds.Posts(9, 3), [new(0, 0), new(9, 0)], Limits with { GreatestRake = rake }))).Message);

    private static readonly Gen<FitInput> GenInput =
        from bays in Gen.Int[2, 16]
        from heights in Gen.Double[-0.5, 0.5].Array[bays * 5 + 1]
        from terminals in Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from pins in Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from tops in Gen.Double[1.5, 2.4].Array[bays + 1]
        from bend in Gen.Double[0, 0.2]
        from rake in Gen.Double[0.05, 0.7]
        from remedies in Gen.Int[0, 15]
        let posts = Enumerable.Range(0, bays + 1).Select(i => new FitPost(2.9 * i, terminals[i] || i == 0 || i == bays, pins[i] ? tops[i] : null, 1.95)).ToList()
        let ground = heights.Select((h, i) => new GroundVertex(i == heights.Length - 1 ? posts[^1].Station : 0.58 * i, h)).ToList()
        select new FitInput(posts, ground, new FitLimits(1.83, 0.02, 0.12, 0.05, rake, bend), (Remedies)remedies);
}
