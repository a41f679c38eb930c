using Tautline.Engine.Catalog;
using Tautline.Engine.Layout;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Plans;

/// <summary>The figures of one post. Each formula stands once; figures found before come in by value and are named by their key.</summary>
public readonly record struct PostFigures(PlacedPost Post, int Line)
{
    public N HoleDiameter<N>() where N : struct, INumber<N> => PostFormulas.HoleDiameter<N>(Post);

    public N HoleDepth<N>() where N : struct, INumber<N> => PostFormulas.HoleDepth<N>(Post);

    public N GroundHeight<N>() where N : struct, INumber<N> => N.Given("ground at the post over the datum", Post.Rise!.Value.Ground, Unit.Length);

    /// <summary>Top of the pipe over the job's datum.</summary>
    public N TopHeight<N>(double ground, double above) where N : struct, INumber<N>
        => Length<N>(FactKind.GroundHeight, ground) + Length<N>(FactKind.AboveGround, above);

    public N AboveGround<N>() where N : struct, INumber<N> => PostFormulas.AboveGround<N>(Post);

    public N CutLength<N>(double aboveGround, double depth) where N : struct, INumber<N>
        => PostFormulas.CutLength(Length<N>(FactKind.AboveGround, aboveGround), Length<N>(FactKind.HoleDepth, depth), Post.ConcreteBelow);

    /// <param name="chosen">The few lengths it is bought in; nothing where it takes the next step.</param>
    public N OrderLength<N>(double cut, Ladder? chosen) where N : struct, INumber<N>
    {
        var next = PostFormulas.OrderLength(Length<N>(FactKind.CutLength, cut), Post.Rules);
        return chosen is null ? next : N.NextSize(next, chosen);
    }

    public N CutOff<N>(double order, double cut) where N : struct, INumber<N>
        => Length<N>(FactKind.OrderLength, order) - Length<N>(FactKind.CutLength, cut);

    public N Concrete<N>(double diameter, double depth) where N : struct, INumber<N>
        => Post.Support is not (Support.Concrete or Support.Cored)
            ? N.Given("no hole", 0, Unit.Volume)
            : PostFormulas.Concrete(Post.Section, Length<N>(FactKind.HoleDiameter, diameter), Length<N>(FactKind.HoleDepth, depth), Post.ConcreteBelow);

    public N Spoil<N>(double diameter, double depth) where N : struct, INumber<N>
        => Post.Support is not (Support.Concrete or Support.Cored)
            ? N.Given("no hole", 0, Unit.Volume)
            : PostFormulas.Spoil(Length<N>(FactKind.HoleDiameter, diameter), Length<N>(FactKind.HoleDepth, depth));

    public N Bags<N>(double concrete) where N : struct, INumber<N>
        => Post.Support != Support.Concrete ? N.Given("no concrete", 0, Unit.Count) : PostFormulas.Bags(N.Known(Key(FactKind.Concrete), concrete, Unit.Volume), Post.Rules);

    public N Mass<N>(double cut) where N : struct, INumber<N>
        => Post.Support == Support.Standing ? N.Given("stands already", 0, Unit.Mass) : PostFormulas.Mass(Post.Section, Length<N>(FactKind.CutLength, cut));

    public N Brackets<N>() where N : struct, INumber<N> => PostFormulas.Brackets<N>(Post.Rules);

    public N Anchors<N>(double brackets) where N : struct, INumber<N>
        => PostFormulas.Anchors(N.Known(Key(FactKind.Brackets), brackets, Unit.Count), Post.Rules);

    /// <summary>Ties of a line post: as the bands of a level end are counted, by the ties' own limit.</summary>
    public N Ties<N>() where N : struct, INumber<N>
        => Fabric.Fastening.Count(
            Post.Spec, Fabric.Fastening.Bar(PostFormulas.Plumb<N>(Post.Spec.Width.Metres, 0), Post.Rules), Post.Rules.TiePostMax);

    private N Length<N>(FactKind kind, double value) where N : struct, INumber<N> => N.Known(Key(kind), value, Unit.Length);

    private FactKey Key(FactKind kind) => new(kind, Line, Post.Index);
}
