using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Plans counted out by hand.</summary>
public sealed class HandWorkedTests
{
    /// <summary>2 x 1029 pickets from rolls of 428: 4.8 rolls, so five with four roll ends inside the pulls and 82 pickets left.</summary>
    [Fact]
    public void RollEndsInsideAPullAreSplicesNotWaste()
    {
        var plan = RollPlanner.Plan(Fence.TwoPulls());
        Assert.Equal(["0: 0-428", "1: 0-428", "2: 0-173"], Fence.Pieces(plan, 0));
        Assert.Equal(["2: 173-428", "3: 0-428", "4: 0-346"], Fence.Pieces(plan, 1));
        var all = Assert.Single(plan.Kinds);
        Assert.Equal((5, 4, 82), (all.AtHigh.Rolls, all.AtHigh.Splices, all.AtHigh.Left));
        Assert.Equal(new PicketLedger(2140, 2054, 0, 4, 0, 82), all.LedgerAtHigh);
        Assert.True(all.Bound.Proven);
        Assert.Empty(plan.Findings);
    }

    /// <summary>428 / 1029 of 120 ft is 49.913 ft, 856 / 1029 is 99.825 ft.</summary>
    [Fact]
    public void SplicesAndDropsHaveStations()
    {
        var plan = RollPlanner.Plan(Fence.TwoPulls());
        Assert.Equal([49.913, 99.825], plan.Feeds[0].Splices.Select(s => Math.Round(s.Station.High / (double)Fence.Foot, 3)));
        Assert.Equal([0, 49.913, 99.825, 150.738, 200.65], plan.Rolls.Select(r => Math.Round(r.Drop.Low / (double)Fence.Foot, 3)));
        Assert.Equal(["one", "one", "one", "two", "two"], plan.Rolls.Select(r => r.FirstPull));
        Assert.All(plan.Rolls, r => Assert.Equal(60.96, r.Kilograms, 6));
    }

    /// <summary>The third roll is carried on over the foot between the pulls.</summary>
    [Fact]
    public void CarryingIsTheWayFromPullToPull() => Assert.Equal(Fence.Foot, RollPlanner.Plan(Fence.TwoPulls()).Kinds[0].AtHigh.CarryNm);

    /// <summary>Where the sum leaves room for it, a fresh roll saves a splice: 400 + 400 + 28 in three rolls needs none, in hanging order.</summary>
    [Fact]
    public void ARollIsSetAsideWhereThatSavesASpliceAndNoRoll()
    {
        var plan = RollPlanner.Plan(Fence.Request([Fence.Pull("a", 0, 46, 400), Fence.Pull("b", 46, 46, 400), Fence.Pull("c", 92, 50, 428)]));
        Assert.Equal((3, 0, 56), (plan.Kinds[0].AtHigh.Rolls, plan.Kinds[0].AtHigh.Splices, plan.Kinds[0].AtHigh.Left));
    }

    /// <summary>125 ft: 100 + 25 is the least bought; of two ways to buy 100 ft one roll goes before two.</summary>
    [Fact]
    public void LeastLengthIsBoughtFirstThenFewestRolls()
    {
        var plan = RollPlanner.Plan(Fence.Request([Fence.Pull("a", 0, 124, 1063)], Fence.Rolls("25", 25), Fence.Rolls("50", 50), Fence.Rolls("100", 100)));
        Assert.Equal(["100", "25"], plan.Rolls.Select(r => r.Id.Stock).Order(StringComparer.Ordinal));
        Assert.Equal((125 * Fence.Foot, 2, 1), (plan.Kinds[0].AtHigh.BoughtNm, plan.Kinds[0].AtHigh.Rolls, plan.Kinds[0].AtHigh.Splices));
    }

    [Fact]
    public void ARemnantThatSavesARollIsUsedAndOneThatSavesNothingStays()
    {
        var request = Fence.Request([Fence.Pull("a", 0, 60, 515)]) with { Remnants = [new("short", "old", "6", "a", 5 * Fence.Foot), new("right", "old", "6", "a", 12 * Fence.Foot)] };
        var plan = RollPlanner.Plan(request);
        Assert.Equal(["new", "right"], plan.Rolls.Select(r => r.Id.Stock).Order(StringComparer.Ordinal));
        Assert.Equal([new Unopened("short", "old", true, 1)], plan.Returned);
    }

    /// <summary>A splice of two lots that differ would save a roll: it is not made.</summary>
    [Fact]
    public void LotsThatDifferAreNeverSpliced()
    {
        var request = Fence.Request([Fence.Pull("a", 0, 60, 515)]) with { Remnants = [new("other", "old", "6", "b", 12 * Fence.Foot)] };
        var plan = RollPlanner.Plan(request);
        Assert.Equal(["new", "new"], plan.Rolls.Select(r => r.Id.Stock));
        Assert.Equal("other", Assert.Single(plan.Returned).Stock);
    }

    /// <summary>100 pickets of 428 are left after the first pull and are shorter than the least useful length, so not woven in again.</summary>
    [Fact]
    public void WhatIsTooShortIsScrapAndNotWovenIn()
    {
        var request = Fence.Request([Fence.Pull("a", 0, 38, 328), Fence.Pull("b", 38, 38, 328)]) with { LeastUsefulNm = 12 * Fence.Foot };
        var plan = RollPlanner.Plan(request);
        Assert.Equal((2, 0, 200, 200), (plan.Kinds[0].AtHigh.Rolls, plan.Kinds[0].AtHigh.Splices, plan.Kinds[0].AtHigh.Scrap, plan.Kinds[0].AtHigh.Left));
        Assert.All(plan.Rolls, r => Assert.Equal((100, 0), (r.Scrap.High, r.Left.High)));
    }

    [Fact]
    public void RollsThatNobodyOpensGoBack()
    {
        var plan = RollPlanner.Plan(Fence.Request([Fence.Pull("a", 0, 120, 1029)], Fence.Rolls(count: 10)));
        Assert.Equal([new Unopened("new", "lot new", false, 7)], plan.Returned);
    }

    /// <summary>A machine carries up to three 50-ft rolls woven together: common practice, no source (trade_practice.md, 17).</summary>
    [Fact]
    public void ThreeRollsMakeAMachineLoad()
    {
        var plan = RollPlanner.Plan(Fence.Request([Fence.Pull("a", 0, 340, 2915)]));
        Assert.Equal([(0, 3), (3, 3), (6, 1)], plan.Loads.Select(l => (l.FirstPiece, l.Pieces)));
        // 3 x 428 pickets of 35.56 mm are 45.659 m, at 4 kg/m 182.6 kg.
        Assert.Equal(182.6, plan.Loads[0].Kilograms, 1);
        Assert.DoesNotContain(plan.Loads, l => l.Over);
    }

    [Fact]
    public void ARollLongerThanTheLimitIsCarriedAloneAndTold()
    {
        var plan = RollPlanner.Plan(Fence.Request([Fence.Pull("a", 0, 340, 2915)], Fence.Rolls("200", 200)));
        Assert.Equal([(0, 1, true), (1, 1, false)], plan.Loads.Select(l => (l.FirstPiece, l.Pieces, l.Over)));
    }
}
