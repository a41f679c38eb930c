namespace Tautline.Engine.Fabric.Rolls;

/// <summary>How many of each limited stock are used, told by one number; 0 for none of any.</summary>
internal sealed class UsedTable
{
    private readonly List<int[]> counts = [];
    private readonly Dictionary<int[], int> ids = new(new SameCounts());

    public UsedTable(int stocks) => Id(new int[stocks]);

    public int Of(int id, int stock) => counts[id][stock];

    public int With(int id, int stock, int more)
    {
        var next = (int[])counts[id].Clone();
        next[stock] += more;
        return Id(next);
    }

    /// <summary>No more of any used than there.</summary>
    public bool IsWithin(int id, int other)
    {
        var (a, b) = (counts[id], counts[other]);
        for (var i = 0; i < a.Length; i++)
            if (a[i] > b[i]) return false;
        return true;
    }

    private int Id(int[] used)
    {
        if (ids.TryGetValue(used, out var id)) return id;
        counts.Add(used);
        return ids[used] = counts.Count - 1;
    }

    private sealed class SameCounts : IEqualityComparer<int[]>
    {
        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(int[] obj)
        {
            var hash = 17;
            foreach (var n in obj) hash = unchecked(hash * 31 + n);
            return hash;
        }
    }
}
