using CsCheck;
using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>The three phases against a general solver that sees every raw vertex.</summary>
public sealed class OptimumTests
{
    private static readonly FitLimits Limits = new(1.83, 0.02, 0.12, 0.05, 0.6, 0.06, 1, 1.5);

    [Theory]
    [InlineData("gully along", FitMode.Smooth)]
    [InlineData("gully across", FitMode.Smooth)]
    [InlineData("gully aslant", FitMode.Follow)]
    [InlineData("lot back", FitMode.Smooth)]
    [InlineData("lot aslant", FitMode.Follow)]
    [InlineData("lot east", FitMode.Smooth)]
    [InlineData("subdivision along", FitMode.Smooth)]
    [InlineData("subdivision aslant", FitMode.Follow)]
    public void OverRealGroundTheFitIsTheBestOne(string profile, FitMode mode)
    {
        var ground = RealGround.Profile(profile);
        var length = ground[^1].Station;
        foreach (var (limits, bend) in new[] { (Limits, 0), (Limits with { GreatestBend = 0.02 }, 15), (Limits with { LeastGap = -0.05, MostGap = 0.3, GreatestBend = 0.15 }, 0) })
            IsBest(new FitInput(Grounds.Posts(length, (int)Math.Ceiling(length / 3.05), bend, 1.95), ground, limits, Mode: mode));
    }

    [Fact]
    public void OverRandomGroundTheFitIsTheBestOne() => GenInput.Each(IsBest, 150);

    [Fact]
    public void OverAllRandomGroundTheFitIsSound() => GenInput.Each(input => Assert.True(GroundFit.Fit(input).Certificate.Sound), 400);

    private static readonly Gen<FitInput> GenInput =
        from bays in Gen.Int[1, 25]
        from lengths in Gen.Double[0.6, 3.5].Array[bays]
        from terminals in Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from heights in Gen.Double[-0.4, 0.4].Array[bays * 4 + 1]
        from slope in Gen.Double[-0.3, 0.3]
        from bend in Gen.Double[0.005, 0.2]
        from gap in Gen.Double[0, 0.1]
        from fill in Gen.Double[0.2, 3]
        from longest in Gen.Double[1.85, 2.2].Array[bays + 1]
        from stock in Gen.Frequency((4, Gen.Const(true)), (1, Gen.Const(false))).Array[bays + 1]
        from pins in Gen.Frequency((14, Gen.Const(false)), (1, Gen.Const(true))).Array[bays + 1]
        from walls in Gen.Frequency((9, Gen.Const(false)), (1, Gen.Const(true))).Array[bays * 4 + 1]
        from roughness in Gen.Double[0, 1]
        from mode in Gen.Bool
        let stations = Enumerable.Range(0, bays + 1).Select(i => lengths.Take(i).Sum()).ToList()
        let ground = heights.Select((h, i) => new GroundVertex(Place(stations, i, walls[i]), roughness * h + slope * i / 4)).ToList()
        let posts = stations.Select((s, i) => new FitPost(s, terminals[i], pins[i] ? Grounds.At(ground, s) + longest[i] - 0.1 : null, stock[i] ? longest[i] : double.PositiveInfinity)).ToList()
        select new FitInput(posts, ground, new FitLimits(1.83, 0.01, 0.01 + gap, 0.01 + gap / 2, 0.7, bend, 1, fill), Mode: mode ? FitMode.Smooth : FitMode.Follow);

    /// <summary>Four vertices to a bay, the first at its post; one that stands over the one before it makes a wall, at a post or between.</summary>
    private static double Place(List<double> stations, int i, bool wall)
    {
        if (wall && i % 4 != 0 && i > 0) i--;
        return i % 4 == 0 ? stations[i / 4] : stations[i / 4] + (stations[i / 4 + 1] - stations[i / 4]) * (i % 4) / 4;
    }

    private static void IsBest(FitInput input)
    {
        var fit = GroundFit.Fit(input);
        Assert.True(fit.Certificate.Sound, $"{fit.Certificate} {string.Join(", ", fit.Certificate.Phases)}");
        // Pins may leave no line that keeps bends and rakes; nothing else may break them.
        if (fit.Violations.Count > 0) Assert.Contains(input.Posts, p => p.Pinned is not null);
        if (fit.Violations.Count > 0) return;
        var raw = new RawProgram(input, fit.Bays);
        var (cost, excess, length) = (fit.Cost(input.Limits), fit.Excess.Sum(), input.Posts[^1].Station);
        var grading = raw.Grading();
        // 1e-8 m2 a metre: what the general solver's own tolerance of 1e-9 and ours allow where the optimum is nothing.
        Near(grading, cost, 1e-6 * grading + 1e-8 * length);
        var most = Math.Max(cost, grading);
        var least = raw.PostLength(most);
        Assert.InRange(excess, raw.PostLength(cost + 1e-6 * grading) - 1e-7 * input.Posts.Count, least * (1 + 1e-6) + 1e-7 * input.Posts.Count);
        var flow = new Flowing(input, fit.Bays);
        var gap = raw.FlowGap(flow.Gradient(fit.Tops), fit.Tops, most + 1e-11, Math.Max(excess, least) + 1e-11);
        Assert.InRange(gap, double.NegativeInfinity, 1e-5 * flow.Value(fit.Tops) + 1e-7);
    }

    private static void Near(double wanted, double found, double tolerance)
        => Assert.True(Math.Abs(wanted - found) <= tolerance, $"wanted {wanted:R}, found {found:R}, off by {found - wanted:0.0e0}, allowed {tolerance:0.0e0}");
}
