using System.Runtime.CompilerServices;

namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The rows of a <see cref="ChainArrays"/> that count in a phase, close together: activity(r) = a0*x(i) + a1*x(i+1) + a2*x(i+2) + y(slack).
/// Rows that read a slack alone come last. Rows without a slack read one past the end, which is always zero.
/// </summary>
internal sealed class ChainRows
{
    public ChainRows(ChainArrays chain)
    {
        (Posts, Groups) = (chain.Posts, chain.Groups);
        Source = Counting(chain);
        (Lead, Slack) = (new int[Count], new int[Count]);
        (A0, A1, A2) = (new double[Count], new double[Count], new double[Count]);
        (Own, GroupLead, GroupFirst) = (new int[Groups], chain.GroupLead, chain.GroupFirst);
        Array.Fill(Own, ChainProgram.None);
        for (var r = 0; r < Count; r++) Take(chain, r);
        First = new int[Posts + 1];
        for (var r = 0; r < Count && Source[r] < chain.Rows; r++) First[Lead[r] + 1]++;
        for (var i = 0; i < Posts; i++) First[i + 1] += First[i];
    }

    public int Posts { get; }

    public int Groups { get; }

    public int Count => Source.Length;

    /// <summary>Index of each row in the program; the program's rows come before its slacks.</summary>
    public int[] Source { get; }

    public int[] Lead { get; }

    /// <summary>The slack a row reads; <see cref="Groups"/> where none.</summary>
    public int[] Slack { get; }

    public double[] A0 { get; }

    public double[] A1 { get; }

    public double[] A2 { get; }

    /// <summary>The row that reads a slack alone, or none where the slack is not an unknown now.</summary>
    public int[] Own { get; }

    public int[] GroupLead { get; }

    public int[] GroupFirst { get; }

    /// <summary>Rows led by post i (but for those that read a slack alone) are First[i] to First[i + 1] - 1.</summary>
    public int[] First { get; }

    /// <summary>Every row's activity; x has two more places than posts, y one more than slacks.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Read(double[] x, double[] y, double[] into)
    {
        for (var r = 0; r < Count; r++)
        {
            var i = Lead[r];
            into[r] = A0[r] * x[i] + A1[r] * x[i + 1] + A2[r] * x[i + 2] + y[Slack[r]];
        }
    }

    /// <summary>Adds sign times every row's amount to the unknowns it reads.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Spread(double[] amount, double sign, double[] x, double[] y)
    {
        for (var r = 0; r < Count; r++)
        {
            var (i, q) = (Lead[r], sign * amount[r]);
            x[i] += A0[r] * q;
            x[i + 1] += A1[r] * q;
            x[i + 2] += A2[r] * q;
            y[Slack[r]] += q;
        }
        y[Groups] = 0;
    }

    private static int[] Counting(ChainArrays chain)
    {
        var (source, count) = (new int[chain.Rows + chain.Groups], 0);
        for (var r = 0; r < source.Length; r++)
            if (chain.Counts(r)) source[count++] = r;
        return source[..count];
    }

    private void Take(ChainArrays chain, int r)
    {
        var from = Source[r];
        if (from >= chain.Rows)
        {
            (Lead[r], Slack[r], Own[from - chain.Rows]) = (chain.GroupLead[from - chain.Rows], from - chain.Rows, r);
            return;
        }
        var slack = chain.Slack(from);
        (Lead[r], Slack[r], A0[r], A1[r], A2[r]) = (chain.Lead[from], slack < 0 ? Groups : slack, chain.A0[from], chain.A1[from], chain.A2[from]);
    }
}
