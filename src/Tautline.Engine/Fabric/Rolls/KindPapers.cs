namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Writes down what was hung at both ends of the advance's range as one plan: what is the same is one figure, the rest ranges.</summary>
internal sealed class KindPapers
{
    private readonly KindHanging hanging;
    private readonly RollRequest request;
    private readonly int firstRoll;
    private readonly List<RollKey> keys;
    private readonly Dictionary<RollKey, (int Low, int High)> at = [];
    private readonly List<Strand> strands;
    private readonly RollId[] ids;
    private readonly RollEnds[] ends;
    private readonly Matched matched;

    /// <param name="firstRoll">Rolls of other kinds that were written before.</param>
    public KindPapers(KindHanging hanging, RollRequest request, int firstRoll)
    {
        (this.hanging, this.request, this.firstRoll) = (hanging, request, firstRoll);
        foreach (var key in hanging.Low.Rolls.Concat(hanging.High.Rolls).Select(r => r.Key)) at[key] = (-1, -1);
        for (var i = 0; i < hanging.Low.Rolls.Count; i++) at[hanging.Low.Rolls[i].Key] = (i, -1);
        for (var i = 0; i < hanging.High.Rolls.Count; i++) at[hanging.High.Rolls[i].Key] = (at[hanging.High.Rolls[i].Key].Low, i);
        keys = [.. at.Keys.Order()];
        strands = Strand.Of(hanging, keys);
        ids = Ids();
        ends = [.. keys.Select((k, i) => Ends(k, ids[i]))];
        matched = EndMatch.Solve([.. strands.Select(s => new MatchPiece(s.Pull, s.Roll, s.From, s.To, s.Certain))], ends, hanging.Kind.TurnsOver);
    }

    public IReadOnlyList<RollId> Rolls => ids;

    public List<RollUse> Uses()
    {
        var first = strands.GroupBy(s => s.Roll).ToDictionary(g => g.Key, g => g.First());
        var woven = Count(s => s.LowAt > 0, s => s.HighAt > 0);
        return [.. keys.Select((k, i) => Use(k, i, first[i], woven[i]))];
    }

    /// <summary>By index in the request.</summary>
    public IEnumerable<(int Pull, PullFeed Feed)> Feeds()
    {
        var from = 0;
        for (var i = 0; i < hanging.Pulls.Count; i++)
        {
            var to = from;
            while (to < strands.Count && strands[to].Pull == i) to++;
            yield return (hanging.Pulls[i], new PullFeed(PullAt(i).Id, i, [.. Range(from, to).Select(Piece)], [.. Range(from + 1, to).Select(j => Splice(j, j - 1 - from))]));
            from = to;
        }
    }

    public KindRolls Totals() => new(hanging.Kind.Key, hanging.Low.Cost, hanging.High.Cost, Ledger(hanging.Low), Ledger(hanging.High), hanging.Bound);

    /// <summary>How many of a stock are opened at the most.</summary>
    public int Opened(string stock) => ids.Count(id => id.Stock == stock);

    private static IEnumerable<int> Range(int from, int to) => Enumerable.Range(from, Math.Max(0, to - from));

    private FabricPull PullAt(int hung) => request.Pulls[hanging.Pulls[hung]];

    private OpenedRoll? AtLow(RollKey key) => at[key].Low is >= 0 and var i ? hanging.Low.Rolls[i] : null;

    private OpenedRoll? AtHigh(RollKey key) => at[key].High is >= 0 and var i ? hanging.High.Rolls[i] : null;

    private OpenedRoll Either(RollKey key) => AtHigh(key) ?? AtLow(key)!;

    private StockItem? Item(OpenedRoll roll) => roll.Missing || roll.Stock < 0 ? null : hanging.Stock[roll.Stock];

    private RollId[] Ids()
    {
        Dictionary<string, int> numbers = [];
        return [.. keys.Select(k => Item(Either(k))?.Id ?? "").Select(id => new RollId(id, numbers[id] = numbers.GetValueOrDefault(id) + 1))];
    }

    private RollEnds Ends(RollKey key, RollId id)
    {
        var remnant = Item(Either(key))?.Remnant;
        var seen = request.Seen.LastOrDefault(s => s.Roll == id);
        return new RollEnds(seen?.First ?? remnant?.First, seen?.Far ?? remnant?.Far, In(key)).Completed();
    }

    private PicketRange In(RollKey key) => new(AtLow(key)?.Pickets ?? 0, AtHigh(key)?.Pickets ?? 0);

    private PicketRange[] Count(Func<Strand, bool> low, Func<Strand, bool> high)
    {
        var counts = new PicketRange[keys.Count];
        foreach (var s in strands) counts[s.Roll] = new(counts[s.Roll].Low + (low(s) ? 1 : 0), counts[s.Roll].High + (high(s) ? 1 : 0));
        return counts;
    }

    private RollUse Use(RollKey key, int index, Strand first, PicketRange woven)
    {
        var (low, high, roll) = (AtLow(key), AtHigh(key), Either(key));
        var used = new PicketRange(low?.Used ?? 0, high?.Used ?? 0);
        var left = new PicketRange(low is null ? 0 : low.Pickets - low.Used, high is null ? 0 : high.Pickets - high.Used);
        var scrap = new PicketRange(Scrap(left.Low, hanging.Kind.AdvanceHighNm), Scrap(left.High, hanging.Kind.AdvanceLowNm));
        var item = Item(roll);
        var end = matched.OtherEnd[index] ? ends[index].FromOtherEnd : ends[index];
        var remains = left.Least > 0 && low is not null && high is not null;
        return new RollUse(
            ids[index], item?.Lot ?? "", hanging.Kind.Key, roll.LengthNm, item?.Remnant is not null, roll.Missing, low is not null && high is not null, In(key),
            new PicketRange(used.Low - woven.Low, used.High - woven.High), woven, scrap, new PicketRange(left.Low - scrap.Low, left.High - scrap.High),
            Length(new PicketRange(left.Low - scrap.Low, left.High - scrap.High)), remains ? end.At(used) : null, remains ? end.Far : null,
            PullAt(first.Pull).Id, Station(first.Pull, first.LowAt, first.HighAt), Kilograms(roll.LengthNm));
    }

    private int Scrap(int left, long advance) => left < (request.LeastUsefulNm + advance - 1) / advance ? left : 0;

    private double Kilograms(long lengthNm) => lengthNm * 1e-9 * hanging.Kind.KilogramsPerMetre;

    private NanometreRange Length(PicketRange pickets) => NanometreRange.Of(pickets.Low * hanging.Kind.AdvanceHighNm, pickets.High * hanging.Kind.AdvanceLowNm);

    private FabricPiece Piece(int i)
    {
        var s = strands[i];
        return new FabricPiece(firstRoll + s.Roll, Item(Either(keys[s.Roll]))?.Lot ?? "", s.From, s.To, s.Pickets, Length(s.Pickets), Turn(i, s));
    }

    private PieceTurn Turn(int i, Strand s)
    {
        if (!matched.Turned[i]) return matched.OtherEnd[s.Roll] ? PieceTurn.OtherEndFirst : PieceTurn.None;
        return s.Pickets.Low % 2 == 0 ? PieceTurn.TopForBottom : PieceTurn.EndForEnd;
    }

    private FabricSplice Splice(int i, int left) => new(left, Station(strands[i].Pull, strands[i].LowAt, strands[i].HighAt), matched.Splices[i]!.Value, strands[i].Certain && strands[i - 1].Certain);

    /// <summary>Pickets from the start of a pull shared out over its length; nothing at an end of the range where the piece is not there.</summary>
    private NanometreRange Station(int hung, int low, int high)
    {
        var pull = PullAt(hung);
        long? one = low < 0 ? null : At(pull, low, pull.Pickets.Low);
        long? other = high < 0 ? null : At(pull, high, pull.Pickets.High);
        return NanometreRange.Of(one ?? other!.Value, other ?? one!.Value);
    }

    private static long At(FabricPull pull, int pickets, int of) => pull.FromNm + (long)((Int128)(pull.ToNm - pull.FromNm) * pickets / of);

    private PicketLedger Ledger(Hung hung)
    {
        var used = hung.Rolls.Sum(r => (long)r.Used);
        var woven = hung.Cost.Splices;
        return new PicketLedger(
            hung.Rolls.Sum(r => (long)r.Pickets), used - woven, hanging.Pulls.Sum(p => (long)request.Pulls[p].PartPickets), woven, hung.Cost.Scrap,
            hung.Cost.Left - hung.Cost.Scrap);
    }
}
