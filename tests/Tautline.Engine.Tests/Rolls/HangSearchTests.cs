using CsCheck;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>The dynamic program against all ways to hang a few pulls, and against what must hold for any.</summary>
public sealed class HangSearchTests
{
    [Fact]
    public void NoWayOfAllIsBetterWithRollsBoughtInTwoLengths()
        => GenCase.Small(GenCase.Unlimited).Always(Agrees, iter: 2000);

    [Fact]
    public void NoWayOfAllIsBetterWithRemnantsAndLotsThatDiffer()
        => GenCase.Small(GenCase.Mixed).Always(Agrees, iter: 2000);

    [Fact]
    public void HangingThePlanCostsWhatTheSearchSays()
        => GenCase.Small(GenCase.Mixed).Always(work =>
        {
            if (HangSearch.Best(work) is not { } plan) return;
            Assert.Equal(plan.Cost, Hanger.Hang(work, plan.Rolls).Cost);
        }, iter: 2000);

    [Fact]
    public void ALineHungFromItsOtherEndTakesTheSame()
        => GenCase.Small(GenCase.Mixed).Always(work =>
        {
            // What is too short to weave in depends on where cuts fall, so only without that rule both directions are the same.
            var free = work with { LeastUseful = 0 };
            var back = free with { Needs = [.. free.Needs.Reverse()], Gaps = [0, .. free.Gaps.Skip(1).Reverse()] };
            Assert.Equal(HangSearch.Best(free)?.Cost, HangSearch.Best(back)?.Cost);
        }, iter: 2000);

    [Fact]
    public void OneMoreRemnantNeverMakesItWorse()
        => Gen.Select(GenCase.Small(GenCase.Mixed), GenCase.Remnant).Always((work, remnant) =>
        {
            if (HangSearch.Best(work) is not { } before) return;
            var after = HangSearch.Best(work with { Stock = [.. work.Stock, remnant] });
            Assert.True(after is { Proven: true } && after.Cost.CompareTo(before.Cost) <= 0);
        }, iter: 2000);

    /// <summary>More remnants than can be tried together: nothing is proven, still none that is added to the list does harm.</summary>
    [Fact]
    public void OneMoreOfManyRemnantsNeverMakesItWorseEither()
        => Gen.Select(Gen.Int[20, 190].Array[8], Gen.Int[5, 40].Array[10], Gen.Int[5, 40]).Always((needs, yard, one) =>
        {
            HangStock[] stock = [new(43, 430, 0, int.MaxValue, true), .. yard.Select((p, i) => new HangStock(p, p, i % 3 / 2, 1, false))];
            var work = new HangCase(needs, new long[needs.Length], stock, 3);
            var after = HangSearch.Best(work with { Stock = [.. stock, new HangStock(one, one, 0, 1, false)] })!;
            Assert.True(after.Cost.CompareTo(HangSearch.Best(work)!.Cost) <= 0);
            Assert.Equal(after.Cost, Hanger.Hang(work with { Stock = [.. stock, new HangStock(one, one, 0, 1, false)] }, after.Rolls).Cost);
        }, iter: 15);

    private static void Agrees(HangCase work)
    {
        var found = HangSearch.Best(work);
        var best = EveryHanging.Best(work);
        Assert.True(best == found?.Cost, $"{found?.Cost} where {best} can be, {GenCase.Text(work)}");
        Assert.True(found is null || found.Proven);
    }
}
