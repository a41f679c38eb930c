namespace Tautline.Engine.Fabric.Rolls;

/// <summary>A piece of stock as it was listed.</summary>
internal sealed record StockItem(string Id, string Lot, string Class, long LengthNm, int? Count, int? Counted, Remnant? Remnant)
{
    public PicketRange Pickets(FabricKind kind) => Counted is { } counted ? PicketRange.Exactly(counted)
        : new PicketRange((int)(LengthNm / kind.AdvanceHighNm), (int)(LengthNm / kind.AdvanceLowNm));
}

/// <summary>What feeds the pulls of one kind, at both ends of the advance's range.</summary>
/// <param name="Pulls">Indices in the request, in the order they are hung.</param>
internal sealed record KindHanging(
    FabricKind Kind, IReadOnlyList<StockItem> Stock, IReadOnlyList<int> Pulls, Hung Low, Hung High, RollBound Bound);

/// <summary>Plans one kind of fabric: pulls of different kinds never share a roll.</summary>
internal static class KindStage
{
    public static KindHanging Plan(FabricKind kind, IReadOnlyList<StockItem> stock, IReadOnlyList<int> pulls, RollRequest request)
    {
        var listed = Case(kind, stock, pulls, request, true);
        Choice? best = null;
        foreach (var order in Orders(pulls, listed, request))
            if (Choose(kind, stock, order, request) is var next && (best is null || next.Worst < best.Worst)) best = next;
        if (request.Order == HangingOrder.Free && Improved(kind, stock, best!, request) is var moved && moved.Worst < best!.Worst) best = moved;
        var tried = request.Order == HangingOrder.AsListed || pulls.Count <= PoolOrder.All;
        return new KindHanging(kind, stock, best!.Pulls, best.Low, best.High, Bound(listed, best.High, tried && best.Proven));
    }

    private static IEnumerable<IReadOnlyList<int>> Orders(IReadOnlyList<int> pulls, HangCase listed, RollRequest request)
        => request.Order == HangingOrder.AsListed ? [pulls]
            : PoolOrder.Of(listed.Needs, listed.Stock, [.. pulls.Select(p => request.Pulls[p].FromNm)]).Select(o => (IReadOnlyList<int>)[.. o.Select(i => pulls[i])]);

    private static Choice Improved(FabricKind kind, IReadOnlyList<StockItem> stock, Choice best, RollRequest request)
        => Choose(kind, stock, PoolOrder.Improved([.. best.Pulls], order => HangSearch.Rough(Case(kind, stock, order, request, true))?.Cost), request);

    private sealed record Choice(IReadOnlyList<int> Pulls, Hung Low, Hung High, bool Proven)
    {
        public HangCost Worst => Low.Cost > High.Cost ? Low.Cost : High.Cost;
    }

    /// <summary>Plans for either end of the range, hung at both; the one whose worse end is better.</summary>
    private static Choice Choose(FabricKind kind, IReadOnlyList<StockItem> stock, IReadOnlyList<int> pulls, RollRequest request)
    {
        var high = Case(kind, stock, pulls, request, true);
        var low = Case(kind, stock, pulls, request, false);
        var first = Hang(high, low, high, pulls);
        if (Same(low, high)) return first;
        var second = Hang(low, low, high, pulls);
        return (second.Worst < first.Worst ? second : first) with { Proven = false };
    }

    private static Choice Hang(HangCase planned, HangCase low, HangCase high, IReadOnlyList<int> pulls)
    {
        if (HangSearch.Best(planned) is not { } plan)
        {
            (planned, low, high) = (WithMissing(planned), WithMissing(low), WithMissing(high));
            plan = HangSearch.Best(planned)!;
        }
        var atHigh = Hanger.Hang(high, plan.Rolls);
        return new Choice(pulls, Same(low, high) ? atHigh : Hanger.Hang(low, plan.Rolls), atHigh, plan.Proven);
    }

    private static bool Same(HangCase a, HangCase b)
        => a.LeastUseful == b.LeastUseful && a.Needs.SequenceEqual(b.Needs) && a.Stock.SequenceEqual(b.Stock);

    /// <summary>Rolls nobody has, as long as the longest there is, of a lot that goes with none.</summary>
    private static HangCase WithMissing(HangCase work)
    {
        var longest = work.Stock.MaxBy(s => s.Pickets)!;
        var missing = new HangStock(longest.Pickets, longest.LengthNm, work.Stock.Max(s => s.Class) + 1, int.MaxValue, true, true);
        return work with { Stock = [.. work.Stock, missing] };
    }

    private static HangCase Case(FabricKind kind, IReadOnlyList<StockItem> stock, IReadOnlyList<int> pulls, RollRequest request, bool high)
    {
        var advance = high ? kind.AdvanceLowNm : kind.AdvanceHighNm;
        var classes = stock.Select(s => s.Class).Distinct().ToList();
        List<FabricPull> hung = [.. pulls.Select(p => request.Pulls[p])];
        return new HangCase(
            [.. hung.Select(p => high ? p.Pickets.High : p.Pickets.Low)],
            [.. hung.Select((p, i) => i == 0 ? 0 : Apart(hung[i - 1], p))],
            [.. stock.Select(s => new HangStock(
                high ? s.Pickets(kind).High : s.Pickets(kind).Low, s.LengthNm, classes.IndexOf(s.Class), s.Count ?? int.MaxValue, s.Remnant is null))],
            (int)((request.LeastUsefulNm + advance - 1) / advance));
    }

    private static long Apart(FabricPull a, FabricPull b) => Math.Max(0, Math.Max(b.FromNm - a.ToNm, a.FromNm - b.ToNm));

    /// <summary>
    /// Rolls: what must be bought over the cheapest way to buy a picket. Splices: of n pickets at least the rolls they fill, less one; where
    /// all rolls are equal, each splice more saves at most one roll against packing without any.
    /// </summary>
    private static RollBound Bound(HangCase work, Hung plan, bool proven)
    {
        var order = new StockOrder(work);
        var longest = work.Stock.Max(s => s.Pickets);
        var buy = Math.Max(0, work.Needs.Sum(n => (long)n) - order.InYard);
        var splices = work.Needs.Sum(n => (n - 1) / longest);
        if (work.Stock.All(s => s.Pickets == longest))
            splices += Math.Max(0, PackBound.Best([.. work.Needs.Select(n => PoolOrder.Residue(n, longest))], longest) - (plan.Rolls.Count - splices));
        var one = work.Stock.Where(s => s.Bought).ToList();
        var bought = one.Count == 1 ? (buy + one[0].Pickets - 1) / one[0].Pickets * one[0].LengthNm : (long)(buy * order.Cheapest);
        return new RollBound(bought, splices, proven);
    }
}
