namespace Tautline.Engine.Fabric.Rolls;

/// <summary>Least number of equal rolls that pieces can be cut from whole, by two bounds.</summary>
public static class PackBound
{
    /// <summary>Sum of the pieces over the roll, rounded up.</summary>
    public static int ByLength(IReadOnlyList<int> sizes, int capacity) => (int)((sizes.Sum(s => (long)s) + capacity - 1) / capacity);

    /// <summary>
    /// Martello and Toth's L2 (Knapsack Problems, 1990, ch. 8, from memory): for each threshold up to half a roll, pieces too long to lie
    /// beside one of it, pieces over half a roll, and what does not go into the gaps of the latter; the most over all thresholds.
    /// </summary>
    public static int Best(IReadOnlyList<int> sizes, int capacity)
    {
        var sorted = sizes.OrderDescending().ToArray();
        var best = ByLength(sizes, capacity);
        foreach (var threshold in sorted.Where(s => 2 * s <= capacity).Append(0).Distinct())
            best = Math.Max(best, At(sorted, capacity, threshold));
        return best;
    }

    private static int At(int[] sizes, int capacity, int threshold)
    {
        var (alone, half) = (0, 0);
        long gaps = 0, small = 0;
        foreach (var size in sizes)
        {
            if (size > capacity - threshold) alone++;
            else if (2 * size > capacity) (half, gaps) = (half + 1, gaps + capacity - size);
            else if (size >= threshold) small += size;
        }
        return alone + half + (int)Math.Max(0, (small - gaps + capacity - 1) / capacity);
    }
}
