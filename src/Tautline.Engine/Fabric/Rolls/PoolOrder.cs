namespace Tautline.Engine.Fabric.Rolls;

/// <summary>
/// Orders to try where pulls may be hung in any. A plan falls into groups that share no roll; with r rolls in g groups it has r - g splices
/// and more pieces than that only by chance, so many groups are wanted, each hung as a chain with one roll open. Full rolls of long pulls
/// stay whole, what is left of each pull is packed without splices, and where that takes a roll too many, groups with the most room
/// are joined.
/// </summary>
internal static class PoolOrder
{
    /// <summary>Up to so many pulls all orders are tried.</summary>
    public const int All = 4;

    private const int MostToMove = 12;
    private const int MostMoves = 200;

    /// <param name="needs">Pickets of each pull.</param>
    /// <param name="from">Station each pull begins at.</param>
    public static IEnumerable<int[]> Of(IReadOnlyList<int> needs, IReadOnlyList<HangStock> stock, IReadOnlyList<long> from)
    {
        int[] listed = [.. Enumerable.Range(0, needs.Count)];
        if (needs.Count <= All) return Permutations(listed, 0);
        var roll = Roll(stock);
        var yard = InYard(needs, stock);
        return yard.Count == 0 ? [listed, Packed(needs, roll, from, [])] : [listed, Packed(needs, roll, from, []), Packed(needs, roll, from, yard)];
    }

    /// <summary>Moves one pull at a time to another place in the order as long as that is better, for a few pulls and a number of tries.</summary>
    /// <param name="cost">What an order comes to; nothing where the stock does not suffice.</param>
    public static int[] Improved(int[] order, Func<int[], HangCost?> cost)
    {
        var (best, tries) = (cost(order), 0);
        if (order.Length <= All || order.Length > MostToMove || best is null) return order;
        for (var better = true; better && tries < MostMoves;)
        {
            better = false;
            foreach (var next in Moves(order))
            {
                if (++tries > MostMoves) break;
                if (cost(next) is not { } moved || !(moved < best.Value)) continue;
                (order, best, better) = (next, moved, true);
                break;
            }
        }
        return order;
    }

    private static IEnumerable<int[]> Moves(int[] order)
    {
        for (var from = 0; from < order.Length; from++)
            for (var to = 0; to < order.Length; to++)
                if (to != from && to != from - 1) yield return Moved(order, from, to);
    }

    private static int[] Moved(int[] order, int from, int to)
    {
        var list = order.ToList();
        list.RemoveAt(from);
        list.Insert(to, order[from]);
        return [.. list];
    }

    /// <summary>Pickets of the roll that residues are packed into: the longest that is bought, else the longest there is.</summary>
    public static int Roll(IReadOnlyList<HangStock> stock) => stock.Where(s => s.Limit > 0).OrderByDescending(s => s.Bought).ThenByDescending(s => s.Pickets).First().Pickets;

    /// <summary>What a pull takes besides full rolls: at least one picket, at most a roll.</summary>
    public static int Residue(int need, int roll) => (need - 1) % roll + 1;

    private static IEnumerable<int[]> Permutations(int[] order, int at)
    {
        if (at >= order.Length - 1)
        {
            yield return [.. order];
            yield break;
        }
        for (var i = at; i < order.Length; i++)
        {
            (order[at], order[i]) = (order[i], order[at]);
            foreach (var rest in Permutations(order, at + 1)) yield return rest;
            (order[at], order[i]) = (order[i], order[at]);
        }
    }

    /// <summary>For each remnant, the shortest first, the longest pulls that it still holds.</summary>
    private static List<List<int>> InYard(IReadOnlyList<int> needs, IReadOnlyList<HangStock> stock)
    {
        List<List<int>> groups = [];
        var left = Enumerable.Range(0, needs.Count).OrderByDescending(i => needs[i]).ToList();
        foreach (var remnant in stock.Where(s => !s.Bought && s.Limit > 0).OrderBy(s => s.Pickets))
        {
            List<int> group = [];
            var open = remnant.Pickets;
            foreach (var i in left.Where(i => needs[i] <= open).ToList())
                if (needs[i] <= open) (open, _) = (open - needs[i], Move(i, left, group));
            if (group.Count > 0) groups.Add(group);
        }
        return groups;
    }

    private static bool Move(int i, List<int> from, List<int> to)
    {
        to.Add(i);
        return from.Remove(i);
    }

    private static int[] Packed(IReadOnlyList<int> needs, int roll, IReadOnlyList<long> from, List<List<int>> placed)
    {
        var rest = Enumerable.Range(0, needs.Count).Except(placed.SelectMany(p => p)).ToList();
        List<int> residues = [.. rest.Select(i => Residue(needs[i], roll))];
        var bins = PoolPacker.Pack(residues, roll).Select(b => b.ToList());
        var groups = Join([.. bins], residues, roll).Select(g => g.ConvertAll(i => rest[i])).Concat(placed);
        var along = groups.Select(g => g.OrderBy(i => from[i]).ThenBy(i => i).ToList()).OrderBy(g => from[g[0]]).ThenBy(g => g[0]);
        return [.. along.SelectMany(g => g)];
    }

    /// <summary>Joins rolls with the most room until no more are opened than the sum asks for.</summary>
    private static List<List<int>> Join(List<List<int>> bins, List<int> residues, int roll)
    {
        var save = bins.Count - PackBound.ByLength(residues, roll);
        var byRoom = bins.OrderByDescending(b => roll - b.Sum(i => residues[i])).ToList();
        List<List<int>> groups = [];
        List<int> open = [];
        long room = 0;
        foreach (var bin in byRoom)
        {
            if (save > 0) (open, room) = ([.. open, .. bin], room + roll - bin.Sum(i => residues[i]));
            else groups.Add(bin);
            if (room < roll) continue;
            groups.Add(open);
            (open, room, save) = ([], 0, save - 1);
        }
        if (open.Count > 0) groups.Add(open);
        return groups;
    }
}
