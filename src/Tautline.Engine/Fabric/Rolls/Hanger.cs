namespace Tautline.Engine.Fabric.Rolls;

/// <summary>A roll as it is opened; the same planned roll at either end of the advance's range is the same roll.</summary>
/// <param name="Planned">Index among the planned rolls; an extra one follows it.</param>
/// <param name="Extra">0 for the planned roll itself, counted on for those that turn out to be needed after it.</param>
public readonly record struct RollKey(int Planned, int Extra) : IComparable<RollKey>
{
    public int CompareTo(RollKey other) => Planned != other.Planned ? Planned.CompareTo(other.Planned) : Extra.CompareTo(other.Extra);
}

/// <param name="Stock">Index in the case's stock; -1 where nothing of its class can be had.</param>
/// <param name="Used">Pickets hung or woven.</param>
public sealed record OpenedRoll(RollKey Key, int Stock, int Pickets, long LengthNm, bool Bought, bool Missing, int Used = 0);

/// <param name="Roll">Index among the opened rolls.</param>
public readonly record struct HungPiece(int Pull, int Roll, int From, int To);

/// <summary>The rolls and pieces of a plan at one end of the advance's range.</summary>
public sealed record Hung(IReadOnlyList<OpenedRoll> Rolls, IReadOnlyList<HungPiece> Pieces, HangCost Cost);

/// <summary>
/// Hangs planned rolls pull by pull, as a crew would. The plan was made for one end of the advance's range; at the other a roll may reach a
/// little more or less far: a planned roll that is not reached stays shut, one that is short is followed by an extra one of its class.
/// </summary>
public sealed class Hanger
{
    private readonly HangCase work;
    private readonly IReadOnlyList<PlannedRoll> plan;
    private readonly List<OpenedRoll> rolls = [];
    private readonly List<HungPiece> pieces = [];
    private readonly int[] opened;
    private readonly Dictionary<int, int> fresh = [];
    private HangCost cost;
    private int planned;
    private int extra;
    private int open = -1;

    private Hanger(HangCase work, IReadOnlyList<PlannedRoll> plan)
    {
        (this.work, this.plan, opened) = (work, plan, new int[work.Stock.Count]);
        for (var i = 0; i < plan.Count; i++)
            if (plan[i].FreshAt >= 0) fresh[plan[i].FreshAt] = i;
    }

    public static Hung Hang(HangCase work, IReadOnlyList<PlannedRoll> plan)
    {
        var hanger = new Hanger(work, plan);
        for (var pull = 0; pull < work.Needs.Count; pull++) hanger.Hang(pull);
        hanger.SetAside();
        return new Hung(hanger.rolls, hanger.pieces, hanger.cost);
    }

    private int Rest => open < 0 ? 0 : rolls[open].Pickets - rolls[open].Used;

    private void Hang(int pull)
    {
        var need = work.Needs[pull];
        if (Skip(pull) || (need > Rest && Rest < work.LeastUseful)) SetAside();
        if (Rest > 0) cost = cost with { CarryNm = cost.CarryNm + work.Gaps[pull] };
        for (var count = 0; need > 0; count++)
        {
            if (Rest == 0) Open(pull);
            var taken = Math.Min(need, Rest);
            pieces.Add(new HungPiece(pull, open, rolls[open].Used, rolls[open].Used + taken));
            rolls[open] = rolls[open] with { Used = rolls[open].Used + taken };
            need -= taken;
            if (count > 0) cost = cost with { Splices = cost.Splices + 1 };
        }
    }

    /// <summary>Whether a planned roll starts afresh with this pull; planned rolls before it that were not reached are passed over.</summary>
    private bool Skip(int pull)
    {
        if (!fresh.TryGetValue(pull, out var at)) return false;
        (planned, extra) = (at, 0);
        return true;
    }

    private void SetAside()
    {
        if (Rest == 0) return;
        cost = cost with { Left = cost.Left + Rest, Scrap = cost.Scrap + (Rest < work.LeastUseful ? Rest : 0) };
        open = -1;
    }

    private void Open(int pull)
    {
        var next = planned < plan.Count && plan[planned].FreshAt <= pull ? Planned() : Extra();
        cost = next.Missing ? cost with { MissingNm = cost.MissingNm + next.LengthNm, Rolls = cost.Rolls + 1 }
            : next.Bought ? cost with { BoughtNm = cost.BoughtNm + next.LengthNm, Rolls = cost.Rolls + 1 } : cost;
        rolls.Add(next);
        open = rolls.Count - 1;
    }

    private OpenedRoll Planned()
    {
        extra = 0;
        return Of(new RollKey(planned, 0), plan[planned++].Stock);
    }

    private OpenedRoll Extra()
    {
        var last = rolls[^1];
        var key = new RollKey(Math.Max(0, planned - 1), ++extra);
        var of = last.Stock < 0 ? -1 : work.Stock[last.Stock].Class;
        for (var k = 0; k < work.Stock.Count; k++)
            if (work.Stock[k].Class == of && work.Stock[k].Limit > Planned(k) + opened[k]) return Of(key, k);
        return new OpenedRoll(key, -1, last.Pickets, last.LengthNm, true, true);
    }

    /// <summary>How many of a stock the plan still counts on.</summary>
    private int Planned(int stock) => work.Stock[stock].Limit == int.MaxValue ? 0 : plan.Skip(planned).Count(p => p.Stock == stock);

    private OpenedRoll Of(RollKey key, int k)
    {
        opened[k]++;
        var stock = work.Stock[k];
        return new OpenedRoll(key, k, stock.Pickets, stock.LengthNm, stock.Bought, stock.Missing);
    }
}
