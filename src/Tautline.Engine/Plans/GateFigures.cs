using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Plans;

/// <summary>The figures of one gate between its two posts.</summary>
public readonly record struct GateFigures(SiteGate Gate, PlacedPost From, PlacedPost To, long Centres)
{
    /// <summary>Index of the line in the plan.</summary>
    public int Line { get; init; }

    /// <summary>Face to face as the posts stand.</summary>
    public N Opening<N>() where N : struct, INumber<N>
        => N.Given("centre to centre", Centres * 1e-9, Unit.Length) - (Radius<N>(From) + Radius<N>(To));

    public N CentreToCentre<N>(double opening) where N : struct, INumber<N>
        => N.Given("opening", opening, Unit.Length) + (Radius<N>(From) + Radius<N>(To));

    public N Leaf<N>(double opening) where N : struct, INumber<N>
        => Gate.Kind switch
        {
            GateKind.Cantilever => N.Given("opening", opening, Unit.Length) + N.Known(Key(FactKind.Tail), Tail<N>(opening).Value, Unit.Length),
            GateKind.Rolling or GateKind.Overhead => N.Given("opening", opening, Unit.Length) + N.Rule(From.Rules.RollingOver),
            _ => GateFormulas.Leaf<N>(opening, Gate.Leaves, From.Rules),
        };

    /// <summary>Of a cantilever leaf.</summary>
    public N Tail<N>(double opening) where N : struct, INumber<N> => GateFormulas.CantileverTail<N>(opening, From.Rules);

    /// <summary>Level station of the second roller post of a cantilever gate: its tail behind the first.</summary>
    public N SecondRoller<N>(double tail) where N : struct, INumber<N>
    {
        var first = N.Given("first roller post", (Gate.RunsBackToEnd ? To : From).StationNm * 1e-9, Unit.Length);
        var behind = N.Known(Key(FactKind.Tail), tail, Unit.Length);
        return Gate.RunsBackToEnd ? first + behind : first - behind;
    }

    /// <summary>Track or beam under or over the opening and the open leaf.</summary>
    public static N Track<N>(double opening, double leaf) where N : struct, INumber<N>
        => N.Given("opening", opening, Unit.Length) + N.Given("leaf", leaf, Unit.Length);

    /// <summary>Indices of the posts on both sides of the opening.</summary>
    public static (int From, int To) Posts(SiteGate gate, HungLine line)
    {
        var posts = line.Posts;
        var (low, high) = (0, posts.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (posts[middle].StationNm > gate.MiddleNm) high = middle;
            else low = middle + 1;
        }
        return (low - 1, low == posts.Count ? 0 : low);
    }

    /// <summary>Centre to centre of the two posts, level.</summary>
    public static long CentresNm(SiteGate gate, HungLine line)
    {
        var (from, to) = Posts(gate, line);
        var end = to == 0 ? line.Site.Chain.LevelNm : line.Posts[to].StationNm;
        return end - line.Posts[from].StationNm;
    }

    private FactKey Key(FactKind kind) => new(kind, Line, Gate.Index);

    private static N Radius<N>(PlacedPost post) where N : struct, INumber<N>
        => N.Listed("gate post", post.Section.OutsideDiameter.Metres, Unit.Length, post.Section.From) / N.Constant(2);
}
