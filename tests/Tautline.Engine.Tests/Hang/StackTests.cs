using CsCheck;
using Tautline.Engine.Fabric;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>What slides on a terminal, in which order, at which diamond.</summary>
public sealed class StackTests
{
    private static readonly Length band = In(0.875);

    private static StackEnd End(ResolvedSpec spec, string name)
        => StackEnd.Of(name, spec, FasteningChoice.Of(spec, spec.Width - In(2), spec.Rules.BandMax).Held);

    private static ResolvedSpec Braced(double inches) => Spec(inches, change: s => s with { Brace = "yes" });

    private static StackCard Card(ResolvedSpec spec, string[] runs, params StackPart[] more) => Stacking.Card(new TerminalParts(
        [.. runs.Select(r => End(spec, r))], [.. runs.SelectMany(r => TerminalParts.Usual(spec, r)), .. more], StackKind.Cap, band));

    /// <summary>
    /// 84 in braced, by hand: 24 1/2 diamonds; bands at 1, 5, 9, 13, 17, 21, 23 1/2; brace rail at 12, rod at 23, wire at 24. Bands at 13 and
    /// 23 1/2 stay, each half a diamond or more away.
    /// </summary>
    [Fact]
    public void OneEndSlidesOnFromTheBottomAndTheCapComesLast()
    {
        var card = Card(Braced(84), ["run 1"]);
        Assert.Equal(
            [
                "1 wire band (bottom wire, run 1) at 24",
                "1 tension band (run 1) at 23 1/2",
                "1 rod band (truss rod, run 1) at 23: holds the truss rod; last turn of the rod when all else is done",
                "3 tension bands (run 1) at 21, 17, 13",
                "1 brace band (brace rail, run 1) at 12: holds a rail end",
                "3 tension bands (run 1) at 9, 5, 1",
                "1 rail end band (top rail, run 1) at 1/2: holds a rail end",
                "1 cap: last, over all bands",
            ], HangWords.Stack(card));
        Assert.Empty(card.Problems);
    }

    /// <summary>Row 20 of trade_practice.md, common practice, no source: the second pull's bands stack directly on the first's, same spacing.</summary>
    [Fact]
    public void TwoPullsStackDirectly()
    {
        var one = Card(Spec(84), ["run 1"]).Items.Where(i => i.Kind == StackKind.TensionBand).SelectMany(i => i.Diamonds);
        var two = Card(Spec(84), ["run 1", "run 2"]);
        var bands = two.Items.Where(i => i.Kind == StackKind.TensionBand).ToList();
        Assert.Equal(one, bands.SelectMany(i => i.Diamonds));
        Assert.Equal(14, bands.Sum(i => i.Count));
        Assert.All(bands, b => Assert.Equal("2 at each diamond, one directly on the other", b.Note));
        Assert.Equal(StackKind.Cap, two.Items[^1].Kind);
    }

    /// <summary>
    /// 84 in, bands at 1, 5, 9, 13, 17, 21, 23 1/2: four diamonds are 13.71 in, four and a half 15.43, over the 15-in limit. So where the brace
    /// band takes 13 its band goes up to 12 1/2 and the two below follow by half; the last space then is 3, within the limit.
    /// </summary>
    [Fact]
    public void ABandOnTheBraceBandGivesWayByHalfADiamondAndItsNeighboursFollow()
    {
        var card = Card(Spec(84), ["run 1"], new StackPart(StackKind.BraceBand, "brace rail, run 1", 13));
        Assert.Equal([(13, 12.5), (17, 16.5), (21, 20.5)], card.Moves.Select(m => (m.From, m.To)));
        Assert.Equal("brace rail, run 1", card.Moves[0].For);
        Assert.Empty(card.Problems);
        Assert.Contains("The band at 13 moves 1/2 up to 12 1/2: it misses brace rail, run 1.", HangWords.Stack(card));
    }

    /// <summary>The first band is at 1; a hinge there moves it up half a diamond, for down would leave the top edge farther from a band.</summary>
    [Fact]
    public void TheTopBandDoesNotLeaveTheEdge()
    {
        var card = Stacking.Card(new TerminalParts([End(Spec(60), "run 1")], [new StackPart(StackKind.Hinge, "gate hinge", 1)], StackKind.Cap, band));
        Assert.Equal((1, 0.5), (card.Moves[0].From, card.Moves[0].To));
        Assert.Empty(card.Problems);
    }

    [Fact]
    public void WhatCannotGiveWayIsTold()
    {
        StackPart[] wall = [.. Enumerable.Range(9, 19).Select(i => new StackPart(StackKind.Hinge, "gate hinge", i / 2.0 + 4))];
        var card = Card(Spec(84), ["run 1"], wall);
        Assert.NotEmpty(card.Problems);
        Assert.All(card.Problems, p => Assert.Equal((ProblemCode.StackClash, Severity.Warning), (p.Code, p.Severity)));
        Assert.Contains("tension band of run 1", Said(card.Problems[0]), StringComparison.Ordinal);
        Assert.Contains("gate hinge", Said(card.Problems[0]), StringComparison.Ordinal);
    }

    /// <summary>check_jobs.md job 11: 8 to 4 ft at one post: two bars, each with its own bands; the lower fence's count from its own top.</summary>
    [Fact]
    public void AChangeOfHeightCountsEachFabricFromItsOwnTop()
    {
        var (high, low) = (Spec(96), Spec(48));
        var ends = new[] { End(high, "high"), End(low, "low") with { Drop = In(48) } };
        var card = Stacking.Card(new TerminalParts(ends, [.. TerminalParts.Usual(high, "high"), .. TerminalParts.Usual(low, "low", 1)], StackKind.Cap, band));
        Assert.Equal(ends.Sum(e => e.Bands.Count), card.Items.Where(i => i.Kind == StackKind.TensionBand).Sum(i => i.Count));
        // By hand: the lower top rail, half a diamond (1.78 in) under 48, lies between the high fabric's bands at 13 (45.4 in) and 17 (59.3 in).
        var order = card.Items.Select(i => (i.Name, i.Diamonds)).ToList();
        var rail = order.FindIndex(i => i.Name == "top rail, low");
        Assert.True(order.FindIndex(i => i.Name == "high" && i.Diamonds.Contains(17)) < rail);
        Assert.True(rail < order.FindIndex(i => i.Name == "high" && i.Diamonds.Contains(13)));
    }

    private static readonly Gen<(int Inches, int Pulls, double[] Parts)> genStack =
        Gen.Select(Gen.OneOf(Gen.Const(48), Gen.Const(60)), Gen.Int[1, 2], Gen.Int[1, 34].Array[0, 5].Select(h => h.Select(i => i / 2.0).ToArray()));

    /// <summary>Against trying every choice of moves: as few bands left in the way as can be, then as little moved.</summary>
    [Fact]
    public void NoChoiceOfMovesIsBetter() => genStack.Always((inches, pulls, parts) =>
    {
        var spec = Spec(inches);
        var end = End(spec, "run");
        var used = parts.Where(p => p < end.Rows).Distinct().Select(p => new StackPart(StackKind.BraceBand, "part", p)).ToList();
        var card = Stacking.Card(new TerminalParts([.. Enumerable.Repeat(end, pulls)], used, StackKind.Cap, band));
        var found = (card.Problems.Count, card.Moves.Sum(m => Math.Abs(m.To - m.From)));
        Assert.Equal(Best(end, pulls, used), found);
    }, iter: 200);

    private static (int, double) Best(StackEnd end, int pulls, List<StackPart> parts)
    {
        var at = end.Bands.Diamonds;
        var best = (int.MaxValue, 0.0);
        for (var code = 0; code < Math.Pow(5, at.Count); code++)
        {
            var rest = code;
            var moved = at.Select(d => (From: d, To: d + (rest % 5 - 2) / 2.0 + 0 * (rest /= 5))).ToList();
            if (!Allowed(end, at, [.. moved.Select(m => m.To)])) continue;
            // Bands are 7/8 in; stacks may give way a quarter inch.
            var inTheWay = moved.Count(m => parts.Any(p => Math.Abs(p.Diamond - m.To) * end.Pitch.Inches + 0.25 < (pulls + 1) / 2.0 * 0.875));
            var score = (inTheWay, moved.Sum(m => Math.Abs(m.To - m.From)));
            if (score.CompareTo(best) < 0) best = score;
        }
        return best;
    }

    private static bool Allowed(StackEnd end, IReadOnlyList<double> before, double[] to)
    {
        for (var i = 0; i < to.Length; i++)
        {
            if (to[i] < 0.5 || to[i] > end.Rows - 0.5) return false;
            if (i == 0) continue;
            var most = Math.Max(15, (before[i] - before[i - 1]) * end.Pitch.Inches);
            if (to[i] <= to[i - 1] || (to[i] - to[i - 1]) * end.Pitch.Inches > most + 1e-6) return false;
        }
        var edge = 5 / end.Pitch.Inches; // 4 in from the bar's end, which stops an inch inside
        return to[0] <= Math.Max(edge, before[0]) + 1e-9 && end.Rows - to[^1] <= Math.Max(edge, end.Rows - before[^1]) + 1e-9;
    }
}
