namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Part of a line between two pinned terminals (or its ends): nothing beyond them has a say in it. Posts and bays are numbered from
/// its first post.
/// </summary>
internal sealed class FitBlock
{
    private readonly FitInput input;
    private readonly BayHulls hulls;
    private readonly GroundProfile ground;

    public FitBlock(FitInput input, BayHulls hulls, GroundProfile ground, int first, int last)
    {
        (this.input, this.hulls, this.ground, First, Count) = (input, hulls, ground, first, last - first + 1);
        Pinned = [.. Enumerable.Range(first, Count).Select(i => input.Posts[i].Pinned is not null)];
        (Bends, Rakes) = (new SlopeRange[Count], new SlopeRange[Bays]);
        Array.Fill(Bends, SlopeRange.Within(Limits.GreatestBend));
        Array.Fill(Rakes, SlopeRange.Within(Limits.GreatestRake));
    }

    public int First { get; }

    /// <summary>Posts, both ends included.</summary>
    public int Count { get; }

    public int Bays => Count - 1;

    public FitLimits Limits => input.Limits;

    public FitMode Mode => input.Mode;

    public bool[] Pinned { get; }

    /// <summary>Allowed changes of slope per post; where pins leave no choice the one they force.</summary>
    public SlopeRange[] Bends { get; }

    /// <summary>Allowed slopes per bay, the same way.</summary>
    public SlopeRange[] Rakes { get; }

    /// <summary>Cuts the line at its pinned terminals.</summary>
    public static List<FitBlock> Of(FitInput input, BayHulls hulls, GroundProfile ground)
    {
        List<FitBlock> blocks = [];
        var first = 0;
        for (var i = 1; i < input.Posts.Count; i++)
            if (i == input.Posts.Count - 1 || (input.Posts[i].Terminal && input.Posts[i].Pinned is not null))
            {
                blocks.Add(new FitBlock(input, hulls, ground, first, i));
                first = i;
            }
        return blocks;
    }

    public FitPost Post(int i) => input.Posts[First + i];

    public double Bay(int i) => Post(i + 1).Station - Post(i).Station;

    /// <summary>Whether the rail runs through post i, so that the bend limit holds.</summary>
    public bool RunsThrough(int i) => i > 0 && i < Count - 1 && !Post(i).Terminal;

    /// <summary>Half the two bays at a post: what turns a change of slope into metres.</summary>
    public double Lever(int i) => 0.5 * ((i > 0 ? Bay(i - 1) : 0) + (i < Bays ? Bay(i) : 0));

    public double GroundAt(int i) => ground.At(Post(i).Station);

    public ReadOnlySpan<(double Share, double Height)> Upper(int bay) => hulls.Upper(First + bay);

    public ReadOnlySpan<(double Share, double Height)> Lower(int bay) => hulls.Lower(First + bay);

    public bool Allows(Remedies one) => (input.Allowed & one) != 0;

    /// <summary>Smallest and largest gap in a bay for stated tops.</summary>
    public (double Least, double Most) Gaps(int bay, double top, double next, double plumb) => hulls.Gaps(First + bay, top, next, plumb);
}

/// <summary>Slopes or changes of slope, rise over run, both ends included.</summary>
internal readonly record struct SlopeRange(double Low, double High)
{
    private const double Rounding = 1e-12;

    // No more than what is too little to be reported as broken: it counts as none, a solver would have nothing to move in.
    private const double Least = 1e-6;

    public static SlopeRange Within(double limit) => limit < Least ? default : new SlopeRange(-limit, limit);

    public bool Holds(double slope) => slope >= Low - Rounding && slope <= High + Rounding;
}
