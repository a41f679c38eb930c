namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// A <see cref="ChainProgram"/> as arrays, with what changes from phase to phase: bounds, prices and which slacks are in use.
/// After the rows come the slacks' own rows 0 &lt;= y, one a group, at index <see cref="Rows"/> + group.
/// </summary>
internal sealed class ChainArrays
{
    public ChainArrays(int posts, int[] lead, int[] group, double[] a0, double[] a1, double[] a2, double[] low, double[] high, int[] groupLead)
    {
        (Posts, Lead, Group, A0, A1, A2, GroupLead) = (posts, lead, group, a0, a1, a2, groupLead);
        (Low, High) = ([.. low, .. new double[groupLead.Length]], [.. high, .. groupLead.Select(_ => double.PositiveInfinity)]);
        Price = new double[groupLead.Length];
        Use = [.. groupLead.Select(_ => SlackUse.Waiting)];
        (First, GroupFirst) = (Starts(lead, posts), Starts(groupLead, posts));
    }

    public int Posts { get; }

    public int[] Lead { get; }

    /// <summary>The slack of a row, or <see cref="ChainProgram.None"/>.</summary>
    public int[] Group { get; }

    public double[] A0 { get; }

    public double[] A1 { get; }

    public double[] A2 { get; }

    public double[] Low { get; }

    public double[] High { get; }

    public int[] GroupLead { get; }

    /// <summary>What a metre of each slack costs in the running phase.</summary>
    public double[] Price { get; }

    public SlackUse[] Use { get; }

    /// <summary>Rows led by post i are First[i] to First[i + 1] - 1.</summary>
    public int[] First { get; }

    public int[] GroupFirst { get; }

    public int Rows => Lead.Length;

    public int Groups => GroupLead.Length;

    /// <summary>Whether a row (or a slack's own row) counts in the running phase.</summary>
    public bool Counts(int row)
    {
        if (row >= Rows) return Use[row - Rows] == SlackUse.Open;
        return Group[row] == ChainProgram.None || Use[Group[row]] != SlackUse.Waiting;
    }

    /// <summary>The slack that takes part in a row now, or none.</summary>
    public int Slack(int row)
    {
        var g = Group[row];
        return g != ChainProgram.None && Use[g] == SlackUse.Open ? g : ChainProgram.None;
    }

    /// <summary>What stands between the bounds of a row.</summary>
    public double Activity(int row, double[] x, double[] y)
    {
        if (row >= Rows) return y[row - Rows];
        var (i, g) = (Lead[row], Slack(row));
        return A0[row] * x[i] + A1[row] * x[i + 1] + A2[row] * x[i + 2] + (g >= 0 ? y[g] : 0);
    }

    private static int[] Starts(int[] leads, int posts)
    {
        var starts = new int[posts + 1];
        foreach (var post in leads) starts[post + 1]++;
        for (var i = 0; i < posts; i++) starts[i + 1] += starts[i];
        return starts;
    }
}

/// <summary>What a slack is for in the running phase.</summary>
internal enum SlackUse
{
    /// <summary>Its rows do not count yet.</summary>
    Waiting,

    /// <summary>It is an unknown.</summary>
    Open,

    /// <summary>It stays what an earlier phase found: its rows have taken it into their bounds.</summary>
    Shut,
}
