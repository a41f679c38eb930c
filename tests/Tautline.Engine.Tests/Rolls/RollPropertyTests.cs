using CsCheck;
using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>What holds for every plan of rolls.</summary>
public sealed class RollPropertyTests
{
    [Fact]
    public void EveryPicketIsAccountedForAtBothEndsOfTheRange() => GenRolls.Any.Always(request =>
    {
        var plan = RollPlanner.Plan(request);
        foreach (var high in new[] { false, true }) Conserved(request, plan, p => high ? p.High : p.Low, k => high ? (k.AtHigh, k.LedgerAtHigh) : (k.AtLow, k.LedgerAtLow));
    }, iter: 120);

    [Fact]
    public void PiecesOfARollFollowOneAnotherFromItsFirstPicket() => GenRolls.Any.Always(request =>
    {
        var plan = RollPlanner.Plan(request);
        foreach (var pieces in Hung(plan).GroupBy(p => p.Roll))
        {
            Assert.Equal((0, 0), (pieces.Where(p => p.Pickets.Low > 0).Select(p => p.From.Low).FirstOrDefault(), pieces.Where(p => p.Pickets.High > 0).Select(p => p.From.High).FirstOrDefault()));
            Follow(pieces.Where(p => p.Pickets.Low > 0).Select(p => (p.From.Low, p.To.Low)));
            Follow(pieces.Where(p => p.Pickets.High > 0).Select(p => (p.From.High, p.To.High)));
        }
    }, iter: 120);

    [Fact]
    public void NoPullMixesSpliceClasses() => GenRolls.Any.Always(request =>
    {
        var plan = RollPlanner.Plan(request);
        var classes = request.New.Select(n => (n.Id, n.SpliceClass)).Concat(request.Remnants.Select(r => (r.Id, r.SpliceClass))).Append(("", "missing")).ToDictionary();
        Assert.All(plan.Feeds.Where(f => f.Pieces.Count > 0), f => Assert.Single(f.Pieces.Select(p => classes[plan.Rolls[p.Roll].Id.Stock]).Distinct()));
    }, iter: 120);

    [Fact]
    public void NoMoreIsOpenedThanThereIs() => GenRolls.Any.Always(request =>
    {
        var plan = RollPlanner.Plan(request);
        Assert.All(request.New.Where(n => n.Count is not null), n => Assert.True(plan.Rolls.Count(r => r.Id.Stock == n.Id) <= n.Count));
        Assert.All(request.Remnants, m => Assert.Equal(1, plan.Rolls.Count(r => r.Id.Stock == m.Id) + plan.Returned.Count(u => u.Stock == m.Id)));
    }, iter: 120);

    [Fact]
    public void EverySpliceMatchesOrIsMarked() => GenRolls.Any.Always(request =>
    {
        var plan = RollPlanner.Plan(request);
        foreach (var feed in plan.Feeds)
        {
            Assert.Equal(Math.Max(0, feed.Pieces.Count - 1), feed.Splices.Count);
            foreach (var splice in feed.Splices) EndsByPicket.Check(request, plan, feed, splice);
        }
    }, iter: 120);

    /// <summary>The free fixes are used as far as they help: no choice of ends and turns leaves fewer splices that need a picket.</summary>
    [Fact]
    public void NoWayToTurnRollsAndPiecesNeedsFewerPickets() => Gen.Select(GenRolls.Counted, Gen.Bool.Array[40]).Always((request, states) =>
    {
        var open = RollPlanner.Plan(request);
        var seen = request with { Seen = [.. open.Rolls.Select((r, i) => new SeenRoll(r.Id, states[i] ? EndState.Half : EndState.Whole, null))], Remnants = [.. request.Remnants.Select(r => r with { First = null, Far = null })] };
        var plan = RollPlanner.Plan(seen);
        if (plan.Feeds.Sum(f => f.Pieces.Count) > 9) return;
        var splices = plan.Feeds.SelectMany(f => f.Splices).ToList();
        Assert.DoesNotContain(splices, s => s.Match == SpliceMatch.ResolveOnSite);
        Assert.Equal(EndsByPicket.Fewest(seen, plan), splices.Count(s => s.Match == SpliceMatch.OnePicket));
    }, iter: 100);

    private static IEnumerable<FabricPiece> Hung(RollPlan plan) => plan.Feeds.OrderBy(f => f.HangsAs).SelectMany(f => f.Pieces);

    private static void Follow(IEnumerable<(int From, int To)> pieces)
    {
        var list = pieces.ToList();
        Assert.All(list.Zip(list.Skip(1)), p => Assert.Equal(p.First.To, p.Second.From));
    }

    private static void Conserved(RollRequest request, RollPlan plan, Func<PicketRange, int> at, Func<KindRolls, (HangCost Cost, PicketLedger Ledger)> kind)
    {
        Assert.All(plan.Rolls, r => Assert.Equal(at(r.In), at(r.Hung) + at(r.Woven) + at(r.Scrap) + at(r.Left)));
        Assert.All(plan.Feeds.Zip(request.Pulls), p => Assert.Equal(at(p.Second.Pickets), p.First.Pieces.Sum(x => at(x.Pickets))));
        var woven = plan.Feeds.Sum(f => Math.Max(0, f.Pieces.Count(p => at(p.Pickets) > 0) - 1));
        var (cost, ledger) = kind(Assert.Single(plan.Kinds));
        Assert.Equal(ledger.In, ledger.Hung + ledger.Woven + ledger.Scrap + ledger.Left);
        Assert.Equal((woven, woven), (ledger.Woven, cost.Splices));
        Assert.Equal((plan.Rolls.Sum(r => at(r.In)), plan.Rolls.Sum(r => at(r.Hung)), plan.Rolls.Sum(r => at(r.Scrap)), plan.Rolls.Sum(r => at(r.Left))), (ledger.In, ledger.Hung, ledger.Scrap, ledger.Left));
        Assert.Equal((plan.Rolls.Where(r => !r.Remnant && !r.Missing && at(r.In) > 0).Sum(r => r.LengthNm), request.Pulls.Sum(p => p.PartPickets)), (cost.BoughtNm, ledger.Part));
    }
}
