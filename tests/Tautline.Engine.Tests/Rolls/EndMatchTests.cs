using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>
/// Half and whole by hand. One end must start with a whole diamond and the other with a half (common practice, no source: trade_practice.md,
/// 13); the state changes from each picket to the next; free fixes before a picket is taken off (trade_notes.md, 8, calculated).
/// </summary>
public sealed class EndMatchTests
{
    private const EndState H = EndState.Half;
    private const EndState W = EndState.Whole;

    private static (SpliceMatch Match, PieceTurn First, PieceTurn Second) Join(int pickets, EndState? one, EndState? two, bool turnsOver = false)
    {
        var request = Fence.Request([Fence.Pull("a", 0, 90, 2 * pickets)], Fence.Rolls(counted: pickets)) with
        {
            Kinds = [Fence.Kind(turnsOver: turnsOver)],
            Seen = [new SeenRoll(new("new", 1), one, null), new SeenRoll(new("new", 2), two, null)],
        };
        var feed = RollPlanner.Plan(request).Feeds[0];
        return (feed.Splices[0].Match, feed.Pieces[0].Turn, feed.Pieces[1].Turn);
    }

    [Fact]
    public void UnopenedRollsAreResolvedOnSite() => Assert.Equal(SpliceMatch.ResolveOnSite, Join(428, null, null).Match);

    [Fact]
    public void OneEndSeenIsNotEnough() => Assert.Equal(SpliceMatch.ResolveOnSite, Join(428, H, null).Match);

    /// <summary>428 pickets after a half: a half again, which needs a whole.</summary>
    [Fact]
    public void AnEvenRollKeepsItsState()
    {
        Assert.Equal((SpliceMatch.Matches, PieceTurn.None, PieceTurn.None), Join(428, H, W));
        Assert.Equal((SpliceMatch.OnePicket, PieceTurn.None, PieceTurn.None), Join(428, H, H));
    }

    /// <summary>427 pickets after a half: a whole, which needs a half.</summary>
    [Fact]
    public void AnOddRollChangesIt() => Assert.Equal((SpliceMatch.Matches, PieceTurn.None, PieceTurn.None), Join(427, H, H));

    [Fact]
    public void AnOddRollIsUnrolledFromItsOtherEnd()
    {
        var (match, first, second) = Join(427, H, W);
        Assert.Equal(SpliceMatch.Matches, match);
        Assert.Single(new[] { first, second }, PieceTurn.OtherEndFirst);
    }

    [Fact]
    public void AnEvenPieceIsTurnedTopForBottomOnlyWhereThatChangesIt()
    {
        var (match, first, second) = Join(428, H, H, turnsOver: true);
        Assert.Equal(SpliceMatch.Matches, match);
        Assert.Single(new[] { first, second }, PieceTurn.TopForBottom);
    }

    /// <summary>A remnant of 101 pickets, whole outside: its far end is a half, and so is where it is cut after 40 + 61.</summary>
    [Fact]
    public void WhatIsLeftKnowsItsEnds()
    {
        var request = Fence.Request([Fence.Pull("a", 0, 5, 41)]) with { New = [], Remnants = [new("r", "old", "6", "a", 12 * Fence.Foot, 101, W)] };
        var roll = Assert.Single(RollPlanner.Plan(request).Rolls);
        Assert.Equal((60, H, H), (roll.Left.High, roll.LeftState, roll.FarState));
    }

    [Fact]
    public void AReportSettlesASpliceAndChangesNothingElse()
    {
        var before = RollPlanner.Plan(Fence.TwoPulls());
        var after = RollPlanner.Plan(Fence.TwoPulls() with { Seen = [.. before.Rolls.Select(r => new SeenRoll(r.Id, H, null))] });
        Assert.Equal(before.Kinds, after.Kinds);
        Assert.All(before.Feeds.SelectMany(f => f.Splices), s => Assert.Equal(SpliceMatch.ResolveOnSite, s.Match));
        // 428 is even, so full rolls meet half to half. The third roll is cut into 173 and 255, odd both: each is turned end for end.
        Assert.Equal(
            [SpliceMatch.OnePicket, SpliceMatch.Matches, SpliceMatch.Matches, SpliceMatch.OnePicket], after.Feeds.SelectMany(f => f.Splices).Select(s => s.Match));
        Assert.Equal([2, 3], after.Feeds.SelectMany(f => f.Pieces).Index().Where(p => p.Item.Turn == PieceTurn.EndForEnd).Select(p => p.Index));
    }
}
