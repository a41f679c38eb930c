namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// Pieces into rolls without a splice, the order being free: a heuristic. First roll by roll the longest piece left and those that best fill
/// the rest (J. N. D. Gupta and J. C. Ho's minimum bin slack, from memory). Then, from the lower bound up, a search in depth for that many
/// rolls: the longest piece left is completed in every way that wastes no more than may still be wasted, the fullest first, until the tries
/// are used up. Compare the outcome with <see cref="PackBound"/>.
/// </summary>
public sealed class PoolPacker
{
    private const int MostTries = 400_000;
    private const int MostForAll = 2_000_000;
    private const int MostWays = 12;

    private readonly IReadOnlyList<int> sizes;
    private readonly int capacity;
    private readonly List<List<int>> rolls = [];
    private int tries;
    private int enough;
    private bool passedOver;

    private PoolPacker(IReadOnlyList<int> sizes, int capacity) => (this.sizes, this.capacity) = (sizes, capacity);

    /// <returns>Indices of the pieces by roll.</returns>
    /// <param name="sizes">None longer than a roll.</param>
    public static IReadOnlyList<IReadOnlyList<int>> Pack(IReadOnlyList<int> sizes, int capacity)
    {
        foreach (var size in sizes)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(size, 1, nameof(sizes));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(size, capacity, nameof(sizes));
        }
        if (sizes.Count == 0) return [];
        var greedy = new PoolPacker(sizes, capacity).Greedy();
        var packer = new PoolPacker(sizes, capacity);
        for (var count = PackBound.Best(sizes, capacity); count < greedy.Count && packer.tries <= MostTries; count++)
            if (packer.Into(count)) return packer.rolls;
        return greedy;
    }

    private List<int> Longest() => [.. Enumerable.Range(0, sizes.Count).OrderByDescending(i => sizes[i])];

    private List<List<int>> Greedy()
    {
        for (var left = Longest(); left.Count > 0; left = Without(left, rolls[^1]))
            rolls.Add([left[0], .. Completions(left, capacity)[0].Pieces]);
        return rolls;
    }

    private bool Into(int count)
    {
        var waste = (long)count * capacity - sizes.Sum(s => (long)s);
        passedOver = true;
        for (var astray = 0; passedOver && tries <= MostTries; astray = 2 * astray + 1)
        {
            passedOver = false;
            if (Complete(Longest(), waste, astray)) return true;
        }
        return false;
    }

    /// <param name="left">Longest first.</param>
    /// <param name="waste">What may still be wasted.</param>
    /// <param name="astray">How often, in ranks all together, another than the fullest way may be taken.</param>
    private bool Complete(List<int> left, long waste, int astray)
    {
        if (left.Count == 0) return true;
        tries++;
        var ways = Completions(left, waste);
        passedOver |= ways.Count > astray + 1L;
        for (var rank = 0; rank < Math.Min(ways.Count, astray + 1L) && tries <= MostTries; rank++)
        {
            var (slack, pieces) = ways[rank];
            rolls.Add([left[0], .. pieces]);
            if (Complete(Without(left, rolls[^1]), waste - slack, astray - rank)) return true;
            rolls.RemoveAt(rolls.Count - 1);
        }
        return false;
    }

    /// <summary>Ways to fill the roll that holds the longest piece, the fullest first.</summary>
    private List<(int Slack, List<int> Pieces)> Completions(List<int> left, long waste)
    {
        List<(int Slack, List<int> Pieces)> ways = [];
        enough = tries + MostForAll / sizes.Count;
        Take(left, 1, capacity - sizes[left[0]], (int)Math.Min(waste, capacity), [], ways);
        return ways;
    }

    private void Take(List<int> left, int at, int open, int waste, List<int> taken, List<(int Slack, List<int> Pieces)> ways)
    {
        if (open <= waste) Note(open, taken, ways);
        for (var i = at; i < left.Count; i++)
        {
            if (sizes[left[i]] > open || (i > at && sizes[left[i]] == sizes[left[i - 1]])) continue;
            if (tries >= enough || (ways.Count == MostWays && ways[^1].Slack == 0)) return;
            tries++;
            taken.Add(left[i]);
            Take(left, i + 1, open - sizes[left[i]], waste, taken, ways);
            taken.RemoveAt(taken.Count - 1);
        }
    }

    private static void Note(int slack, List<int> taken, List<(int Slack, List<int> Pieces)> ways)
    {
        if (ways.Count == MostWays && ways[^1].Slack <= slack) return;
        var at = ways.FindIndex(w => w.Slack > slack);
        ways.Insert(at < 0 ? ways.Count : at, (slack, [.. taken]));
        if (ways.Count > MostWays) ways.RemoveAt(MostWays);
    }

    private static List<int> Without(List<int> left, List<int> gone) => left.FindAll(i => !gone.Contains(i));
}
