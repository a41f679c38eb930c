namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// A program over a chain of unknowns x (one a post) and slacks y >= 0 (each of one post or bay):
/// low &lt;= a0*x(i) + a1*x(i+1) + a2*x(i+2) + y(group) &lt;= high for every row led by post i. Rows and groups are kept in
/// order of their leading post, so that everything about post i lies together. Lengths in metres.
/// </summary>
internal sealed class ChainProgram
{
    public const int None = -1;

    private readonly double[] reference;
    private readonly bool[] pinned;
    private readonly List<int> lead = [];
    private readonly List<int> group = [];
    private readonly List<double> a0 = [];
    private readonly List<double> a1 = [];
    private readonly List<double> a2 = [];
    private readonly List<double> low = [];
    private readonly List<double> high = [];
    private readonly List<int> groupLead = [];

    /// <param name="reference">Heights from which x counts, so that its numbers stay small; a pinned post's is its pin.</param>
    public ChainProgram(double[] reference, bool[] pinned) => (this.reference, this.pinned) = (reference, pinned);

    public int Posts => reference.Length;

    public int AddGroup(int post)
    {
        groupLead.Add(post);
        return groupLead.Count - 1;
    }

    /// <summary>Adds a row on heights (not yet counted from the reference). Pinned posts go into the bounds.</summary>
    public void AddRow(int post, double c0, double c1, double c2, double least, double most, int slack = None)
    {
        var shift = c0 * Height(post) + c1 * Height(post + 1) + c2 * Height(post + 2);
        (c0, c1, c2) = (Free(post, c0), Free(post + 1, c1), Free(post + 2, c2));
        if (slack == None && c0 == 0 && c1 == 0 && c2 == 0) return;
        lead.Add(post);
        group.Add(slack);
        a0.Add(c0);
        a1.Add(c1);
        a2.Add(c2);
        low.Add(least - shift);
        high.Add(most - shift);
    }

    public ChainArrays ToArrays() => new(
        Posts, [.. lead], [.. group], [.. a0], [.. a1], [.. a2], [.. low], [.. high], [.. groupLead]);

    private double Height(int post) => post < reference.Length ? reference[post] : 0;

    private double Free(int post, double coefficient) => post < pinned.Length && !pinned[post] ? coefficient : 0;
}
