using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Tests.Rolls;

/// <summary>All ways to hang a few pulls with one roll open, one after the other: nothing is pruned or remembered.</summary>
internal sealed class EveryHanging
{
    private readonly HangCase work;
    private readonly int[] used;
    private HangCost? best;

    private EveryHanging(HangCase work) => (this.work, used) = (work, new int[work.Stock.Count]);

    public static HangCost? Best(HangCase work)
    {
        var all = new EveryHanging(work);
        all.Pull(0, -1, 0, default);
        return all.best;
    }

    private void Pull(int pull, int open, int left, HangCost cost)
    {
        if (pull == work.Needs.Count)
        {
            var end = Aside(cost, left);
            if (best is null || end.CompareTo(best.Value) < 0) best = end;
            return;
        }
        var need = work.Needs[pull];
        if (left > 0 && (left >= need || left >= work.LeastUseful))
        {
            var on = cost with { CarryNm = cost.CarryNm + work.Gaps[pull] };
            if (left >= need) Pull(pull + 1, open, left - need, on);
            else More(pull, need - left, work.Stock[open].Class, 1, on);
        }
        More(pull, need, -1, 0, Aside(cost, left));
    }

    private void More(int pull, int need, int of, int pieces, HangCost cost)
    {
        for (var k = 0; k < work.Stock.Count; k++)
        {
            var stock = work.Stock[k];
            if (used[k] == stock.Limit || (of >= 0 && stock.Class != of)) continue;
            used[k]++;
            var after = cost with
            {
                BoughtNm = cost.BoughtNm + (stock.Bought ? stock.LengthNm : 0),
                Rolls = cost.Rolls + (stock.Bought ? 1 : 0),
                Splices = cost.Splices + (pieces > 0 ? 1 : 0),
            };
            if (stock.Pickets >= need) Pull(pull + 1, k, stock.Pickets - need, after);
            else More(pull, need - stock.Pickets, stock.Class, pieces + 1, after);
            used[k]--;
        }
    }

    private HangCost Aside(HangCost cost, int left) => cost with { Left = cost.Left + left, Scrap = cost.Scrap + (left < work.LeastUseful ? left : 0) };
}
