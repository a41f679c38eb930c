using System.Runtime.InteropServices;

namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// Rolls for pulls in a fixed order with one roll open: a dynamic program over (pull, splice class and rest of the open roll, limited stock
/// used). The wishes add up pull by pull and are compared in their order, so the best way to each such state is all that is kept. Where
/// nothing is limited there are fewer states after a pull than pickets in a roll, so time grows with the number of pulls. Limited stock
/// multiplies them; past a width they are trimmed and the result is not proven.
/// </summary>
public sealed class HangSearch
{
    private const int Widest = 4000;
    private const int Narrow = 8;
    private const int MostTries = 8_000;

    /// <summary>Labels and tries of limited stock over all pulls, shared out among them; ten times the tries where nothing is limited.</summary>
    private const int AllLabels = 200_000;
    private const int AllTries = 2_000_000;

    private readonly HangCase work;
    private readonly StockOrder order;
    private readonly UsedTable used;
    private readonly List<Step> steps = [];
    private readonly HangCost? known;
    private readonly Dictionary<(int Class, int Left, int Used), int> kept = [];
    private List<Label> next = [];
    private bool proven = true;
    private readonly int mostTries;
    private int width;
    private int pull;
    private int tries;
    private long ahead;

    private HangSearch(HangCase work, int width, HangCost? known)
    {
        (this.work, this.known, order, used) = (work, known, new StockOrder(work), new UsedTable(work.Stock.Count));
        var pulls = Math.Max(1, work.Needs.Count);
        var counted = Array.Exists(order.Ascending, k => !order.Free[k]);
        this.width = counted ? Math.Min(width, Math.Max(64, AllLabels / pulls)) : width == 1 ? 1 : Widest;
        mostTries = counted ? Math.Clamp(AllTries / pulls, 1000, MostTries) : Math.Max(MostTries, 10 * AllTries / pulls);
    }

    /// <summary>A way to have hung the pulls so far: what is left of the open roll, and the last step that led here.</summary>
    private readonly record struct Label(int Class, int Rest, int Used, HangCost Cost, int Step);

    /// <summary>So many rolls of a stock opened one after the other.</summary>
    private readonly record struct Step(int Parent, int Stock, int Count, int FreshAt);

    /// <summary>A pull partly filled.</summary>
    private readonly record struct Part(int Class, int Open, int Pieces, int Used, HangCost Cost, int Step, int FreshAt);

    /// <summary>The best plan, or nothing where the stock does not suffice.</summary>
    /// <remarks>
    /// What cannot be proven is compared with the plans that do without the last remnants listed, so that one more at the end of the list
    /// never makes it worse.
    /// </remarks>
    public static Hanging? Best(HangCase work)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(work.Gaps.Count, work.Needs.Count);
        var best = Pooled(work, Widest);
        for (var last = work.Stock.Count - 1; last >= 0 && best is not { Proven: true }; last--)
        {
            if (work.Stock[last] is not { Bought: false, Missing: false, Limit: > 0 }) continue;
            work = work with { Stock = [.. work.Stock.Select((s, i) => i == last ? s with { Limit = 0 } : s)] };
            if (Pooled(work, Widest) is not { } less) continue;
            if (best is null || less.Cost < best.Cost) best = less with { Proven = false };
            if (less.Proven) break;
        }
        return best;
    }

    /// <summary>A plan found with few states kept where stock is limited: to compare many orders with.</summary>
    public static Hanging? Rough(HangCase work) => Pooled(work, Narrow);

    private static Hanging? Pooled(HangCase work, int width)
    {
        var pool = new StockPool(work.Stock);
        // Lots of a stated number seldom run out; a plan that pays them no heed and stays within them is the best there is.
        if (Search(work with { Stock = pool.Unlimited }, width) is { } free && pool.Share(free) is { } shared) return shared;
        return Search(work with { Stock = pool.Stock }, width) is { } plan ? pool.Share(plan) : null;
    }

    private static Hanging? Search(HangCase work, int width)
    {
        var quick = new HangSearch(work, 1, null).Solve();
        var full = new HangSearch(work, width, quick?.Cost).Solve();
        return full is null || (quick is not null && quick.Cost < full.Cost) ? quick : full;
    }

    private Hanging? Solve()
    {
        List<Label> labels = [new Label(-1, 0, 0, default, -1)];
        ahead = work.Needs.Sum(n => (long)n);
        for (pull = 0; pull < work.Needs.Count; pull++)
        {
            ahead -= work.Needs[pull];
            labels = Hang(labels);
            if (labels.Count == 0) return null;
        }
        return Finish(labels);
    }

    private List<Label> Hang(List<Label> labels)
    {
        (next, tries) = (new List<Label>(labels.Count + 1), 0);
        kept.Clear();
        for (var i = 0; i < labels.Count; i++)
            if (tries < 4L * mostTries || i == 0) Hang(labels[i]);
            else proven = false;
        if (tries > mostTries) width = Math.Min(width, Math.Max(32, (int)((long)labels.Count * mostTries / tries)));
        Outdone();
        return Trim();
    }

    private void Hang(Label from)
    {
        var need = work.Needs[pull];
        if (from.Rest > 0 && (need <= from.Rest || from.Rest >= work.LeastUseful)) Continue(from, need);
        Fill(0, 0, new Part(-1, need, 0, from.Used, SetAside(from), from.Step, Fresh(from)));
    }

    private void Continue(Label from, int need)
    {
        var cost = from.Cost with { CarryNm = from.Cost.CarryNm + work.Gaps[pull] };
        if (need > from.Rest) Fill(0, 0, new Part(from.Class, need - from.Rest, 1, from.Used, cost, from.Step, -1));
        else if (IsBest(from.Class, from.Rest - need, from.Used, cost) is >= 0 and var at) next[at] = next[at] with { Step = from.Step };
    }

    private HangCost SetAside(Label label) => label.Cost with
    {
        Left = label.Cost.Left + label.Rest,
        Scrap = label.Cost.Scrap + (label.Rest < work.LeastUseful ? label.Rest : 0),
    };

    // A roll that ends with its pull is followed, not set aside: at another advance it may reach a picket further.
    private int Fresh(Label from) => from.Rest > 0 ? pull : -1;

    /// <summary>
    /// Fills what is open with stock in ascending length. Which rolls come first in a pull does not matter to what is left, and with the
    /// longest last any set can be tried whose rolls are all reached.
    /// </summary>
    private void Fill(int first, int depth, Part part)
    {
        if (depth == order.Depth) Exhaust(first, part);
        else for (var i = first; i < order.Ascending.Length; i++) Try(i, depth, part);
    }

    private void Try(int i, int depth, Part part)
    {
        var k = order.Ascending[i];
        var most = MostOf(k, part);
        var fills = (part.Open - 1) / work.Stock[k].Pickets + 1;
        if (most >= fills) Open(k, fills, part);
        if (order.LastOfClass[k]) return;
        for (var count = 1; count <= most && count < fills; count++) Fill(i + 1, depth + 1, Open(k, count, part));
    }

    /// <summary>Past the depth no more choices are tried: all there is of each is taken, the longest first, until the pull is full.</summary>
    private void Exhaust(int first, Part part)
    {
        if (first < order.Ascending.Length) proven = false;
        for (var i = order.Ascending.Length - 1; i >= first && part.Open > 0; i--)
            if (MostOf(order.Ascending[i], part) is var most and > 0) part = Open(order.Ascending[i], most, part);
    }

    private int MostOf(int k, Part part)
    {
        if (part.Class >= 0 && part.Class != work.Stock[k].Class) return 0;
        var there = order.Free[k] ? int.MaxValue : work.Stock[k].Limit - used.Of(part.Used, k);
        return Math.Min(Math.Min(there, order.MostInPull[k]), (part.Open - 1) / work.Stock[k].Pickets + 1);
    }

    /// <summary>Opens so many; what comes of it is kept where that fills the pull, else the part that is filled then is returned.</summary>
    private Part Open(int k, int count, Part part)
    {
        tries++;
        var stock = work.Stock[k];
        var splices = part.Pieces > 0 ? count : count - 1;
        var cost = Bought(part.Cost, stock, count) with { Splices = part.Cost.Splices + splices };
        var then = order.Free[k] ? part.Used : used.With(part.Used, k, count);
        var open = part.Open - (int)Math.Min((long)count * stock.Pickets, part.Open);
        var step = new Step(part.Step, k, count, part.Pieces > 0 ? -1 : FreshFor(part, stock));
        if (open > 0) return new Part(stock.Class, open, part.Pieces + count, then, cost, Add(step), -1);
        if (IsBest(stock.Class, (int)((long)count * stock.Pickets - part.Open), then, cost) is >= 0 and var at) next[at] = next[at] with { Step = Add(step) };
        return part with { Open = 0 };
    }

    private int FreshFor(Part part, HangStock stock)
        => part.FreshAt >= 0 || part.Step < 0 || work.Stock[steps[part.Step].Stock].Class == stock.Class ? part.FreshAt : pull;

    private static HangCost Bought(HangCost cost, HangStock stock, int count)
    {
        if (stock.Missing) return cost with { MissingNm = cost.MissingNm + count * stock.LengthNm, Rolls = cost.Rolls + count };
        return stock.Bought ? cost with { BoughtNm = cost.BoughtNm + count * stock.LengthNm, Rolls = cost.Rolls + count } : cost;
    }

    private int Add(Step step)
    {
        steps.Add(step);
        return steps.Count - 1;
    }

    /// <summary>Where a label with that much left is kept, if it is the best way there so far; its last step is to be put in.</summary>
    private int IsBest(int of, int rest, int then, HangCost cost)
    {
        if (known is { MissingNm: 0 } best && Hopeless(best, rest, cost)) return -1;
        var key = (rest > 0 ? of : -1, rest, then);
        ref var index = ref CollectionsMarshal.GetValueRefOrAddDefault(kept, key, out var there);
        if (!there)
        {
            index = next.Count;
            next.Add(new Label(key.Item1, rest, then, cost, -1));
        }
        else if (cost < next[index].Cost) next[index] = next[index] with { Cost = cost };
        else return -1;
        return index;
    }

    /// <summary>Even the cheapest rolls for what is ahead cost more than a plan that is known; a thousandth of a millimetre is allowed for rounding.</summary>
    private bool Hopeless(HangCost best, int rest, HangCost cost) => cost.MissingNm > 0 || Estimate(cost, rest) > best.BoughtNm + 1000.0;

    private double Estimate(HangCost cost, int rest) => cost.BoughtNm + Math.Max(0, ahead - rest - order.InYard) * order.Cheapest;

    /// <summary>Drops labels with as much left as another, no cheaper and with no more stock left.</summary>
    private void Outdone()
    {
        if (next.Count < 2 || next.TrueForAll(l => l.Used == next[0].Used)) return;
        List<Label> best = [];
        foreach (var group in next.GroupBy(l => (l.Class, l.Rest)))
        {
            var from = best.Count;
            foreach (var label in group.OrderBy(l => l.Cost))
                if (!best.Skip(from).Any(k => used.IsWithin(k.Used, label.Used))) best.Add(label);
        }
        next = best;
    }

    private List<Label> Trim()
    {
        if (next.Count <= width) return next;
        proven = false;
        return [.. next.OrderBy(l => l.Cost.MissingNm).ThenBy(l => Estimate(l.Cost, l.Rest)).ThenBy(l => l.Cost).Take(width)];
    }

    private Hanging Finish(List<Label> labels)
    {
        var (best, cost) = (labels[0], SetAside(labels[0]));
        foreach (var label in labels)
            if (SetAside(label) is var end && end < cost) (best, cost) = (label, end);
        return new Hanging(Back(best.Step), cost, proven);
    }

    private List<PlannedRoll> Back(int step)
    {
        List<PlannedRoll> rolls = [];
        for (; step >= 0; step = steps[step].Parent)
            for (var i = steps[step].Count - 1; i >= 0; i--)
                rolls.Add(new PlannedRoll(steps[step].Stock, i == 0 ? steps[step].FreshAt : -1));
        rolls.Reverse();
        return rolls;
    }
}
