namespace Tautline.Engine.Takeoff;

/// <summary>So many pieces of a length that is needed.</summary>
/// <param name="Nm">Above zero.</param>
/// <param name="Count">Above zero.</param>
public readonly record struct LengthNeed(long Nm, int Count);

/// <summary>
/// Chooses the few lengths a thing is bought in. Every piece is cut from the shortest chosen length that it fits, so classes are
/// neighbours in order of length, each as long as its longest piece rounded up to a step. A dynamic program over the different
/// lengths finds the least total that is cut off, exactly. What a class from one length to another costs fulfils the quadrangle
/// inequality, so the best place to begin the last class never moves back as pieces are added, and halving finds a layer of the
/// program in n log n.
/// </summary>
public sealed class LengthClasses
{
    private readonly long[] steps;
    private readonly long[] counts; // of pieces up to and with each length, nothing first
    private readonly long[] sums; // of their lengths, in steps

    private LengthClasses(IReadOnlyList<LengthNeed> needs, long stepNm)
    {
        var distinct = needs.GroupBy(n => Steps(n, stepNm)).Select(g => (Steps: g.Key, Count: g.Sum(n => (long)n.Count))).OrderBy(g => g.Steps).ToArray();
        steps = [.. distinct.Select(d => d.Steps)];
        (counts, sums) = (new long[steps.Length + 1], new long[steps.Length + 1]);
        for (var i = 0; i < steps.Length; i++)
            (counts[i + 1], sums[i + 1]) = (counts[i] + distinct[i].Count, sums[i] + distinct[i].Count * distinct[i].Steps);
    }

    /// <summary>The chosen lengths in nanometres, ascending, whole steps each. Of equally good choices the one whose second longest is the shortest, and so on.</summary>
    /// <param name="needs">In any order, equal lengths allowed.</param>
    /// <param name="stepNm">Lengths are bought in whole steps of it.</param>
    /// <param name="most">Most different lengths; there are fewer only where fewer are needed.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, count, step or number of classes is not above zero.</exception>
    public static IReadOnlyList<long> Choose(IReadOnlyList<LengthNeed> needs, long stepNm, int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stepNm, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var classes = new LengthClasses(needs, stepNm);
        return [.. (classes.steps.Length <= most ? classes.steps : classes.Best(most)).Select(s => s * stepNm)];
    }

    private static long Steps(LengthNeed need, long stepNm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(need.Nm, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(need.Count, 1);
        return (need.Nm - 1) / stepNm + 1;
    }

    /// <summary>Steps cut off where the lengths from one index on and before another are one class.</summary>
    private long Cost(int from, int to) => steps[to - 1] * (counts[to] - counts[from]) - (sums[to] - sums[from]);

    private long[] Best(int most)
    {
        var least = new long[steps.Length + 1]; // of the first lengths, in as many classes as layers are done
        for (var to = 1; to < least.Length; to++) least[to] = Cost(0, to);
        var begins = new int[most][];
        for (var layer = 1; layer < most; layer++)
        {
            var (next, begin) = (new long[least.Length], begins[layer] = new int[least.Length]);
            Fill(least, next, begin, (layer + 1, steps.Length), (layer, steps.Length - 1));
            least = next;
        }
        return Chosen(begins);
    }

    /// <summary>For each end of the last class where it best begins, the first of equally good places; the middle end parts the others.</summary>
    private void Fill(long[] least, long[] next, int[] begin, (int From, int To) ends, (int From, int To) begins)
    {
        if (ends.From > ends.To) return;
        var middle = (ends.From + ends.To) / 2;
        next[middle] = long.MaxValue;
        for (var at = begins.From; at <= Math.Min(middle - 1, begins.To); at++)
            if (least[at] + Cost(at, middle) is var total && total < next[middle]) (next[middle], begin[middle]) = (total, at);
        Fill(least, next, begin, (ends.From, middle - 1), (begins.From, begin[middle]));
        Fill(least, next, begin, (middle + 1, ends.To), (begin[middle], begins.To));
    }

    private long[] Chosen(int[][] begins)
    {
        var chosen = new long[begins.Length];
        var end = steps.Length;
        for (var layer = begins.Length - 1; layer >= 0; layer--)
        {
            chosen[layer] = steps[end - 1];
            if (layer > 0) end = begins[layer][end];
        }
        return chosen;
    }
}
