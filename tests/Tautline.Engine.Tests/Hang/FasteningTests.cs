using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Quantities;
using static Tautline.Engine.Tests.Hang.Hung;

namespace Tautline.Engine.Tests.Hang;

/// <summary>Practice and limit side by side.</summary>
public sealed class FasteningTests
{
    private static FasteningChoice Bands(double inches) => FasteningChoice.Of(Spec(inches), In(inches - 2), Spec(inches).Rules.BandMax);

    private static readonly UnitSystem us = UnitSystem.UsCustomary;

    /// <summary>
    /// Row 4 of trade_practice.md, common practice, no source: 84 in takes 6 bands, one every 4 diamonds, the odd one at 4 1/2, about 15.4 in:
    /// over the 15-in limit. The limit gives 7.
    /// </summary>
    [Fact]
    public void BandsOf84Inches()
    {
        var choice = Bands(84);
        Assert.Equal((6, "every 4, last one 4 1/2"), (choice.Practice!.Count, DiamondText.Spaces(choice.Practice)));
        Assert.Equal(15.4, choice.PracticeSpace!.Value.Inches, 1);
        Assert.True(choice.PracticeOverLimit);
        Assert.Equal(
            [
                "7 bands: 1 down, then every 4, last one 2 1/2 (at most 13 11/16\", limit 15\").",
                "By inches 6, by whole diamonds 7: the tighter holds.",
                "Practice: 6 bands, every 4, last one 4 1/2 (15 7/16\"), exceeds the 15\" limit (common practice, verify).",
            ], HangWords.Fastenings(choice, "band", us));
    }

    /// <summary>Row 5, common practice, no source: as many ties as bands.</summary>
    [Fact]
    public void TiesAreAsManyAsBands()
    {
        var ties = FasteningChoice.Of(Spec(84), In(82), Spec(84).Rules.TiePostMax);
        Assert.Equal(6, ties.Practice!.Count);
        Assert.Equal(Bands(84).Held.Diamonds, ties.Held.Diamonds);
    }

    /// <summary>Where both counts agree nothing is said of it: 6 ft by inches ceil(62 / 15) + 1 = 6; by diamonds ceil(18.5 / 4) + 1 = 6.</summary>
    [Fact]
    public void WhereTheCountsAgreeOneLineLess()
    {
        var choice = Bands(72);
        Assert.Equal((6, 6, Tighter.Neither), (choice.ByInches, choice.ByDiamonds, choice.Tighter));
        Assert.DoesNotContain(HangWords.Fastenings(choice, "band", us), w => w.Contains("tighter", StringComparison.Ordinal));
    }

    /// <summary>check_jobs.md job 11: a 94-in bar takes 7 bands by inches; by whole diamonds 8 (trade notes 11: snapping down raises counts).</summary>
    [Fact]
    public void TheTighterOfTheTwoIsHeldAt96Inches()
    {
        var choice = Bands(96);
        Assert.Equal((7, 8, 8, Tighter.Diamonds), (choice.ByInches, choice.ByDiamonds, choice.Held.Count, choice.Tighter));
        Assert.Null(choice.Practice);
        Assert.True(choice.HeldSpace <= choice.Limit.Length);
    }

    /// <summary>Row 9, common practice, no source: rings every 9 diamonds, 24.4 to 25.5 in, over the 24-in limit, which gives 8 at 1.40.</summary>
    [Fact]
    public void RingsEveryNineDiamonds()
    {
        var rings = AlongChoice.Rings(Spec(84, calibrated: true));
        Assert.Equal((8, 9, true), (rings.Every, rings.PracticeEvery, rings.PracticeOverLimit));
        Assert.Equal(22.4, rings.SpaceHigh.Inches, 9);
        Assert.InRange(rings.PracticeHigh!.Value.Inches, 24.4, 25.5);
        Assert.Equal(
            ["A ring every 8 diamonds (22 3/8\", limit 24\").", "Practice: every 9 (25 3/16\"), exceeds the 24\" limit (common practice, verify)."],
            HangWords.Fastenings(rings, "ring", us));
    }

    /// <summary>Trade notes 11: where the limit is 18 in (Caltrans, Connecticut DOT, seen) six diamonds remain at 1.40: 16.8 in.</summary>
    [Fact]
    public void AnEighteenInchLimitLeavesSixDiamonds()
    {
        var spec = Spec(84, calibrated: true) with { Rules = RuleSets.Find("caltrans")! };
        Assert.Equal(6, AlongChoice.Rings(spec).Every);
    }

    /// <summary>Row 21, common practice, no source, gives no figure of its own: rail ties keep the rail's limit.</summary>
    [Fact]
    public void RailTiesKeepTheRailsLimit()
    {
        var ties = AlongChoice.RailTies(Spec(72, calibrated: true));
        Assert.Equal((8, (int?)null), (ties.Every, ties.PracticeEvery));
        Assert.Equal(["A rail tie every 8 diamonds (22 3/8\", limit 24\")."], HangWords.Fastenings(ties, "rail tie", us));
    }

    /// <summary>For a limit of 12 in (Caltrans 80-3.03) by inches: ceil((82 - 8) / 12) + 1 = 8; by diamonds 3 fit 12 in: ceil(22.5 / 3) + 1 = 9.</summary>
    [Fact]
    public void TwelveInchBandsByCaltrans()
    {
        var spec = Spec(84) with { Rules = RuleSets.Find("caltrans")! };
        var choice = FasteningChoice.Of(spec, In(82), spec.Rules.BandMax);
        Assert.Equal((8, 9, 9), (choice.ByInches, choice.ByDiamonds, choice.Held.Count));
    }
}
