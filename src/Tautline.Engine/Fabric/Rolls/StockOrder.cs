namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// Which stock is worth trying in a pull, and how much of it: no more of a length than can be exchanged for fewer rolls of another that hold
/// no less and cost no more.
/// </summary>
internal sealed class StockOrder
{
    private const int Unlimited = int.MaxValue;
    private const int LongestExchange = 64;
    private const int MostSubsets = 128;

    private readonly IReadOnlyList<HangStock> stock;

    public StockOrder(HangCase work)
    {
        stock = work.Stock;
        var most = work.Needs.Sum(n => (long)n);
        Free = Enumerable.Range(0, stock.Count).Select(k => NeverRunsOut(k, work)).ToArray();
        var useful = Enumerable.Range(0, stock.Count).Where(k => stock[k].Limit > 0 && !IsOutdone(k)).ToList();
        Ascending = [.. useful.OrderBy(k => stock[k].Pickets)];
        LastOfClass = Enumerable.Range(0, stock.Count).Select(k => Ascending.LastOrDefault(o => stock[o].Class == stock[k].Class, -1) == k).ToArray();
        MostInPull = Enumerable.Range(0, stock.Count).Select(MostOf).ToArray();
        InYard = stock.Where(s => !s.Bought && !s.Missing).Sum(s => (long)s.Pickets * Math.Min(s.Limit, most));
        Cheapest = stock.Where(s => s.Bought).Select(s => (double)s.LengthNm / s.Pickets).DefaultIfEmpty(0).Min();
        Depth = DepthFor(Ascending.Count(k => !LastOfClass[k]));
    }

    /// <summary>Stock worth trying, shortest first.</summary>
    public int[] Ascending { get; }

    /// <summary>Whether nothing longer of its splice class follows: it fills a pull or is of no use in it.</summary>
    public bool[] LastOfClass { get; }

    /// <summary>Whether it can never run out in this job, so need not be counted.</summary>
    public bool[] Free { get; }

    public int[] MostInPull { get; }

    /// <summary>Pickets that need not be bought.</summary>
    public long InYard { get; }

    /// <summary>Nanometres to buy for a picket at the least.</summary>
    public double Cheapest { get; }

    /// <summary>How many different stocks are tried before the one that fills a pull.</summary>
    public int Depth { get; }

    private bool NeverRunsOut(int k, HangCase work)
        => stock[k].Limit == Unlimited || stock[k].Limit >= work.Needs.Sum(n => (long)n / stock[k].Pickets + 1);

    /// <summary>Another roll of the class, bought without limit, holds no less and costs no more.</summary>
    private bool IsOutdone(int k)
    {
        for (var b = 0; b < stock.Count; b++)
            if (b != k && Free[b] && stock[k].Bought && stock[b].Bought && stock[b].Class == stock[k].Class && Outdoes(b, k)) return true;
        return false;
    }

    private bool Outdoes(int b, int k)
    {
        var (one, other) = (stock[b], stock[k]);
        if (one.Pickets < other.Pickets || one.LengthNm > other.LengthNm) return false;
        return one.LengthNm < other.LengthNm || (one.Pickets == other.Pickets && (!Free[k] || b < k));
    }

    private int MostOf(int k)
    {
        if (!stock[k].Bought) return stock[k].Limit;
        var most = stock[k].Limit;
        foreach (var other in Enumerable.Range(0, stock.Count).Where(b => b != k && Free[b] && stock[b].Bought && stock[b].Class == stock[k].Class))
            for (var t = 2; t <= Math.Min(LongestExchange, most); t++)
                if (Exchanges(k, t, other)) most = t - 1;
        return most;
    }

    /// <summary>t rolls may be given for fewer of another length that hold no less and cost no more.</summary>
    private bool Exchanges(int k, int t, int other)
    {
        var u = t * stock[k].LengthNm / stock[other].LengthNm;
        return u > 0 && u < t && u * stock[other].Pickets >= (long)t * stock[k].Pickets;
    }

    private static int DepthFor(int count)
    {
        long subsets = 1, of = 1;
        for (var d = 1; d <= count; d++)
        {
            of = of * (count - d + 1) / d;
            if ((subsets += of) > MostSubsets) return Math.Max(1, d - 1);
        }
        return count + 1;
    }
}
