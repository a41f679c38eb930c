namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Equal stock put together for the search, and shared out again in the order it was listed.</summary>
internal sealed class StockPool
{
    private readonly IReadOnlyList<HangStock> listed;
    private readonly List<List<int>> members;

    public StockPool(IReadOnlyList<HangStock> listed)
    {
        this.listed = listed;
        members = [.. Enumerable.Range(0, listed.Count).GroupBy(i => listed[i] with { Limit = 0 }).Select(g => g.ToList())];
        Stock = [.. members.Select(m => listed[m[0]] with { Limit = (int)Math.Min(int.MaxValue, m.Sum(i => (long)listed[i].Limit)) })];
        Unlimited = [.. Stock.Select(s => s.Bought && s.Limit > 0 ? s with { Limit = int.MaxValue } : s)];
    }

    public IReadOnlyList<HangStock> Stock { get; }

    /// <summary>The same with as many of each bought roll as are wanted.</summary>
    public IReadOnlyList<HangStock> Unlimited { get; }

    /// <summary>The plan in stock as listed; nothing where it takes more than there is.</summary>
    public Hanging? Share(Hanging plan)
    {
        var left = listed.Select(s => s.Limit).ToArray();
        var at = new int[members.Count];
        var rolls = new PlannedRoll[plan.Rolls.Count];
        for (var i = 0; i < rolls.Length; i++)
        {
            var of = plan.Rolls[i].Stock;
            while (at[of] < members[of].Count && left[members[of][at[of]]] == 0) at[of]++;
            if (at[of] == members[of].Count) return null;
            var stock = members[of][at[of]];
            if (left[stock] < int.MaxValue) left[stock]--;
            rolls[i] = plan.Rolls[i] with { Stock = stock };
        }
        return plan with { Rolls = rolls };
    }
}
