using CsCheck;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>Pulls hung in any order: exact for a few, a heuristic with a bound for more.</summary>
public sealed class FreeOrderTests
{
    /// <summary>Against all ways to hang in all orders.</summary>
    [Fact]
    public void UpToFourPullsNoOrderOfAllIsBetter() => GenFree(1, 4).Always(request =>
    {
        var best = Orders(request).Select(EveryHanging.Best).Min();
        var plan = RollPlanner.Plan(request);
        if (best is null) Assert.Contains(plan.Findings, f => f.Kind == RollFindingKind.Shortage);
        else Assert.Equal((best, true), (plan.Kinds[0].AtHigh, plan.Kinds[0].Bound.Proven));
    }, iter: 80);

    [Fact]
    public void OneMoreRemnantNeverMakesAFewPullsWorse() => Gen.Select(GenFree(1, 4), Gen.Int[2, 7]).Always((request, pickets) =>
    {
        var more = request with { Remnants = [.. request.Remnants, new("more", "old", "6", "a", 100 * pickets)] };
        Assert.True(RollPlanner.Plan(more).Kinds[0].AtHigh.CompareTo(RollPlanner.Plan(request).Kinds[0].AtHigh) <= 0);
    }, iter: 120);

    /// <summary>Six pulls are packed by the heuristic: never better than the best of all 720 orders, never worse than the order listed, never under its bound.</summary>
    [Fact]
    public void SixPullsLieBetweenTheBestOrderAndTheOneListed()
    {
        var (all, best) = (0, 0);
        GenFree(6, 6).Always(request =>
        {
            var found = RollPlanner.Plan(request).Kinds[0];
            var least = Orders(request).Select(o => HangSearch.Best(o)?.Cost).Min();
            if (least is not { } optimum) return;
            Assert.True(found.AtHigh.CompareTo(optimum) >= 0);
            Assert.True(found.AtHigh.CompareTo(RollPlanner.Plan(request with { Order = HangingOrder.AsListed }).Kinds[0].AtHigh) <= 0);
            Assert.True(found.Bound.BoughtNm <= optimum.BoughtNm && (found.Bound.BoughtNm < optimum.BoughtNm || found.Bound.Splices <= optimum.Splices));
            Interlocked.Increment(ref all);
            if (found.AtHigh with { CarryNm = 0 } == optimum with { CarryNm = 0 }) Interlocked.Increment(ref best);
        }, iter: 40);
        TestContext.Current.TestOutputHelper?.WriteLine($"{best} of {all} are the best but for carrying");
        Assert.True(best * 2 > all);
    }

    private static Gen<RollRequest> GenFree(int least, int most) => Gen.Select(
        Gen.Select(Gen.Int[1, 9], Gen.Int[0, 3]).Array[least, most], Gen.Int[3, 5], Gen.Int[2, 7].Array[0, 2], Gen.Int[0, 2], Gen.Bool, (pulls, roll, remnants, useful, both) =>
        {
            var from = 0L;
            return new RollRequest
            {
                Kinds = [new("6", 100, 100, false, 1)],
                Pulls = [.. pulls.Select((p, i) => new FabricPull($"p{i}", "6", 100 * p.Item1, PicketRange.Exactly(p.Item1), from += 100 * p.Item2, from += 100 * p.Item1))],
                New = both ? [new("n", "l", "6", "a", 100 * roll), new("m", "l", "6", "a", 200 * roll + 100)] : [new("n", "l", "6", "a", 100 * roll)],
                Remnants = [.. remnants.Select((r, i) => new Remnant($"r{i}", "old", "6", i == 0 ? "a" : "b", 100 * r))],
                LeastUsefulNm = 100 * useful,
                Order = HangingOrder.Free,
            };
        });

    private static IEnumerable<HangCase> Orders(RollRequest request)
    {
        List<HangStock> stock = [
            .. request.New.Select(n => new HangStock((int)(n.LengthNm / 100), n.LengthNm, 0, int.MaxValue, true)),
            .. request.Remnants.Select(r => new HangStock((int)(r.LengthNm / 100), r.LengthNm, r.SpliceClass == "a" ? 0 : 1, 1, false))];
        foreach (var order in Permutations([.. request.Pulls]))
            yield return new HangCase([.. order.Select(p => p.Pickets.High)], [0, .. order.Zip(order.Skip(1), Apart)], stock, (int)(request.LeastUsefulNm / 100));
    }

    private static long Apart(FabricPull a, FabricPull b) => a.ToNm <= b.FromNm ? b.FromNm - a.ToNm : a.FromNm - b.ToNm;

    private static IEnumerable<List<FabricPull>> Permutations(List<FabricPull> pulls)
        => pulls.Count < 2 ? [pulls] : pulls.SelectMany(p => Permutations([.. pulls.Where(o => o != p)]).Select(rest => (List<FabricPull>)[p, .. rest]));
}
