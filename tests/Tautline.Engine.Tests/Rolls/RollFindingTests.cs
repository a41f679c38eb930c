using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>What a person entered wrong is told, all of it; the rest is planned.</summary>
public sealed class RollFindingTests
{
    private static readonly RollRequest good = Fence.TwoPulls();

    public static TheoryData<string, RollFinding> Wrong => new()
    {
        { "length", new(RollFindingKind.RollHasNoLength, "bad") },
        { "short", new(RollFindingKind.RollTooShort, "bad", 2 * Fence.Foot, 3 * Fence.Foot) },
        { "long", new(RollFindingKind.LengthTooGreat, "bad", 10_000_000_000_001, 10_000_000_000_000) },
        { "kind of roll", new(RollFindingKind.KindUnknown, "bad") },
        { "count", new(RollFindingKind.CountWrong, "bad", -1) },
        { "counted", new(RollFindingKind.PicketsWrong, "bad") },
        { "twice", new(RollFindingKind.IdTwice, "new") },
        { "ends", new(RollFindingKind.EndsDisagree, "bad", 100) },
        { "kind of pull", new(RollFindingKind.KindUnknown, "bad") },
        { "need", new(RollFindingKind.NeedNotPositive, "bad") },
        { "pickets", new(RollFindingKind.PicketsWrong, "bad", 9, 8) },
        { "parts", new(RollFindingKind.PartPicketsWrong, "bad", 10, 9) },
        { "stations", new(RollFindingKind.StationsWrong, "bad", 1, 2) },
        { "advance", new(RollFindingKind.AdvanceWrong, "bad", 2, 1) },
        { "weight", new(RollFindingKind.WeightWrong, "bad") },
        { "least", new(RollFindingKind.LeastUsefulWrong, "", -1) },
        { "carry", new(RollFindingKind.CarryLimitWrong, "", 0, 5) },
        { "seen", new(RollFindingKind.SeenRollUnknown, "new", 99) },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void IsTold(string what, RollFinding finding)
    {
        var plan = RollPlanner.Plan(Request(what));
        Assert.Equal([finding], plan.Findings);
        Assert.Equal(5, plan.Rolls.Count);
        Assert.Equal(3, plan.Feeds[0].Pieces.Count);
    }

    [Fact]
    public void AllAreToldTogether()
    {
        var request = good with { New = [.. good.New, Fence.Rolls("x", 0), Fence.Rolls("y") with { Kind = "none" }], Pulls = [.. good.Pulls, Fence.Pull("p", 0, 0, 0)] };
        Assert.Equal(4, RollPlanner.Plan(request).Findings.Count);
    }

    [Fact]
    public void NoFabricAtAllLeavesPullsUnfed()
    {
        var plan = RollPlanner.Plan(good with { New = [] });
        Assert.Equal([new(RollFindingKind.NoStock, "6", 2)], plan.Findings);
        Assert.All(plan.Feeds, f => Assert.Empty(f.Pieces));
    }

    /// <summary>Five rolls are needed, three are there: the plan stands with two that are missing, and they go with no lot.</summary>
    [Fact]
    public void TooFewRollsArePlannedWithWhatIsMissing()
    {
        var plan = RollPlanner.Plan(good with { New = [Fence.Rolls(count: 3)] });
        Assert.Equal([new(RollFindingKind.Shortage, "6", 3, 150 * Fence.Foot)], plan.Findings);
        Assert.Equal([false, false, false, true, true, true], plan.Rolls.Select(r => r.Missing).Order());
    }

    [Fact]
    public void NothingToHangIsAnEmptyPlan()
    {
        var plan = RollPlanner.Plan(good with { Pulls = [] });
        Assert.Empty(plan.Findings);
        Assert.Empty(plan.Rolls);
    }

    private static RollRequest Request(string what) => what switch
    {
        "length" => good with { New = [.. good.New, Fence.Rolls("bad", 0)] },
        "short" => good with { New = [.. good.New, Fence.Rolls("bad", 2)], LeastUsefulNm = 3 * Fence.Foot },
        "long" => good with { New = [.. good.New, Fence.Rolls("bad", 1) with { LengthNm = 10_000_000_000_001 }] },
        "kind of roll" => good with { New = [.. good.New, Fence.Rolls("bad") with { Kind = "none" }] },
        "count" => good with { New = [.. good.New, Fence.Rolls("bad", count: -1)] },
        "counted" => good with { New = [.. good.New, Fence.Rolls("bad", counted: 0)] },
        "twice" => good with { Remnants = [new("new", "old", "6", "a", 12 * Fence.Foot)] },
        "ends" => good with { Remnants = [new("bad", "old", "6", "a", 12 * Fence.Foot, 100, EndState.Half, EndState.Whole)] },
        "kind of pull" => good with { Pulls = [.. good.Pulls, Fence.Pull("bad", 0, 1, 9) with { Kind = "none" }] },
        "need" => good with { Pulls = [.. good.Pulls, Fence.Pull("bad", 0, 0, 9)] },
        "pickets" => good with { Pulls = [.. good.Pulls, Fence.Pull("bad", 0, 1, 9, 8)] },
        "parts" => good with { Pulls = [.. good.Pulls, Fence.Pull("bad", 0, 1, 9) with { PartPickets = 10 }] },
        "stations" => good with { Pulls = [.. good.Pulls, Fence.Pull("bad", 0, 1, 9) with { FromNm = 2, ToNm = 1 }] },
        "advance" => good with { Kinds = [.. good.Kinds, new("bad", 2, 1, false, 1)] },
        "weight" => good with { Kinds = [.. good.Kinds, new("bad", 1, 2, false, double.NaN)] },
        "least" => good with { LeastUsefulNm = -1 },
        "carry" => good with { Carry = new(0, 5) },
        _ => good with { Seen = [new(new("new", 99), EndState.Half, null)] },
    };
}
