namespace Tautline.Engine.Layout.Fit;

/// <summary>Writes a block's limits as rows of a chain program.</summary>
internal static class BlockRows
{
    private const double Endless = double.PositiveInfinity;

    /// <summary>Gaps, post lengths, bends and rakes, with the slack each may have. The slacks come back by what they stand for.</summary>
    public static (ChainProgram Chain, BlockSlacks Slacks) All(FitBlock block, double[] reference, double[] plumb)
    {
        var chain = new ChainProgram(reference, block.Pinned);
        var slacks = new BlockSlacks(block.Count);
        for (var i = 0; i < block.Count; i++)
        {
            AddPost(block, chain, slacks, i);
            if (i == block.Bays) break;
            AddGaps(block, chain, slacks, i, plumb[i]);
            AddRake(block, chain, i, ChainProgram.None);
            if (block.RunsThrough(i + 1)) AddBend(block, chain, i, ChainProgram.None);
        }
        return (chain, slacks);
    }

    /// <summary>Only bends and rakes, each with a slack: group 2i is the rake of bay i, group 2i + 1 the bend after it.</summary>
    public static ChainProgram Hard(FitBlock block, double[] reference)
    {
        var chain = new ChainProgram(reference, block.Pinned);
        for (var i = 0; i < block.Bays; i++)
        {
            AddRake(block, chain, i, chain.AddGroup(i));
            var bend = chain.AddGroup(i);
            if (block.RunsThrough(i + 1)) AddBend(block, chain, i, bend);
        }
        return chain;
    }

    private static void AddPost(FitBlock block, ChainProgram chain, BlockSlacks slacks, int i)
    {
        if (!double.IsFinite(block.Post(i).LongestAbove)) return;
        slacks.Excess[i] = chain.AddGroup(i);
        chain.AddRow(i, -1, 0, 0, -(block.GroundAt(i) + block.Post(i).LongestAbove), Endless, slacks.Excess[i]);
    }

    private static void AddGaps(FitBlock block, ChainProgram chain, BlockSlacks slacks, int i, double plumb)
    {
        slacks.Cut[i] = chain.AddGroup(i);
        foreach (var (share, height) in block.Upper(i))
            chain.AddRow(i, 1 - share, share, 0, height + block.Limits.LeastGap + plumb, Endless, slacks.Cut[i]);
        slacks.Fill[i] = chain.AddGroup(i);
        foreach (var (share, height) in block.Lower(i))
            chain.AddRow(i, share - 1, -share, 0, -(height + block.Limits.MostGap + plumb), Endless, slacks.Fill[i]);
    }

    private static void AddRake(FitBlock block, ChainProgram chain, int i, int slack)
        => AddBetween(chain, i, (-1, 1, 0), block.Rakes[i], block.Bay(i), slack);

    private static void AddBend(FitBlock block, ChainProgram chain, int i, int slack)
    {
        var lever = block.Lever(i + 1);
        var (before, after) = (lever / block.Bay(i), lever / block.Bay(i + 1));
        AddBetween(chain, i, (before, -before - after, after), block.Bends[i + 1], lever, slack);
    }

    private static void AddBetween(ChainProgram chain, int i, (double A, double B, double C) of, SlopeRange range, double lever, int slack)
    {
        if (slack == ChainProgram.None)
        {
            chain.AddRow(i, of.A, of.B, of.C, range.Low * lever, range.High * lever);
            return;
        }
        chain.AddRow(i, of.A, of.B, of.C, range.Low * lever, Endless, slack);
        chain.AddRow(i, -of.A, -of.B, -of.C, -range.High * lever, Endless, slack);
    }
}

/// <summary>Which slack is which: by bay for cut and fill, by post for excess length; none where a post has no stock length.</summary>
internal sealed class BlockSlacks
{
    public BlockSlacks(int posts)
    {
        (Cut, Fill, Excess) = (new int[posts - 1], new int[posts - 1], new int[posts]);
        Array.Fill(Excess, ChainProgram.None);
    }

    public int[] Cut { get; }

    public int[] Fill { get; }

    public int[] Excess { get; }
}
