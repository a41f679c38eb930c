using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>A post before its figures: what stands where, on which grade, carrying which spec.</summary>
public sealed record PlacedPost(
    int Index, long StationNm, PostKind Kind, ResolvedSpec Spec, Section Section, double Grade, GatePostRow? GateRow, Rules Rules,
    Support Support)
{
    /// <summary>Clear height under the beam of an overhead gate that this post carries.</summary>
    public Length? Beam { get; init; }

    /// <summary>Heights where the ground was measured.</summary>
    public PostRise? Rise { get; init; }

    /// <summary>On a wall's face: how far down it the job asks the lowest bracket; nothing leaves it to the rules.</summary>
    public Length? DownFace { get; init; }

    /// <summary>Concrete the rule set asks under the foot of a post that stands in concrete; nothing for any other.</summary>
    public Limit? ConcreteBelow => Support == Support.Concrete ? Rules.HoleConcreteBelow : null;

    /// <summary>True where the new fabric is woven into fabric that hangs on this post.</summary>
    public bool Woven { get; init; }

    /// <summary>True where fabric ends here without bar and bands.</summary>
    public bool WithoutBar => Woven || Section.Form == SectionForm.Integral;
}

/// <summary>Holes by ASTM F567-07, 5.1; heights and lengths by the rule set.</summary>
public static class PostFormulas
{
    private const double Pi = Math.PI;

    /// <summary>What the rule set asks of a hole at least, by what its post does; mostly nothing.</summary>
    public static (Limit? Diameter, Limit? Depth) LeastHole(PostKind kind, Rules rules)
        => kind == PostKind.Line ? (rules.HoleLineDiameterMin, rules.HoleLineDepthMin) : (rules.HoleTerminalDiameterMin, rules.HoleTerminalDepthMin);

    /// <summary>4 times the post to 4 in, 3 times above, at least what a gate's table or the rule set asks, up to the next auger.</summary>
    public static N HoleDiameter<N>(Section post, GatePostRow? gate, Rules rules, Limit? least = null) where N : struct, INumber<N>
    {
        var od = N.Listed("post", post.OutsideDiameter.Metres, Unit.Length, post.From);
        var large = Decide.Billionths(post.OutsideDiameter.Metres) > Decide.Billionths(rules.HoleLargePost.Value);
        var asked = N.Rule(large ? rules.HoleTimesLargePost : rules.HoleTimesPost) * od;
        if (gate is { HoleDiameter.Metres: > 0 })
            asked = N.Larger(asked, N.Listed("gate post hole", gate.HoleDiameter.Metres, Unit.Length, gate.From));
        if (least is not null) asked = N.Larger(asked, N.Rule(least));
        return N.NextSize(asked, rules.Augers);
    }

    /// <summary>
    /// 24 in, and 3 in for each foot of fence over 4 ft; parts of a foot in proportion; deeper by the concrete under the post's foot
    /// where that is asked for; at least what a gate's table or the rule set asks.
    /// </summary>
    public static N HoleDepth<N>(ResolvedSpec spec, GatePostRow? gate, Rules rules, Limit? least = null) where N : struct, INumber<N>
    {
        var height = N.Given("fence height", spec.Height.Metres, Unit.Length);
        var from = N.Rule(rules.HoleDepthFrom);
        var depth = N.Rule(rules.HoleDepth) + N.Rule(rules.HoleDepthPerHeight) * (N.Larger(height, from) - from);
        if (rules.HoleConcreteBelow is { } below) depth += N.Rule(below);
        if (least is not null) depth = N.Larger(depth, N.Rule(least));
        return gate is { HoleDepth.Metres: > 0 }
            ? N.Larger(depth, N.Listed("gate post hole", gate.HoleDepth.Metres, Unit.Length, gate.From))
            : depth;
    }

    /// <summary>What the post goes into: an augered hole, a core of the post and a bit more, or nothing.</summary>
    public static N HoleDiameter<N>(PlacedPost post) where N : struct, INumber<N> => post.Support switch
    {
        Support.Concrete => HoleDiameter<N>(post.Section, post.GateRow, post.Rules, LeastHole(post.Kind, post.Rules).Diameter),
        Support.Cored => N.Listed("post", post.Section.OutsideDiameter.Metres, Unit.Length, post.Section.From) + N.Rule(post.Rules.CoreWider),
        _ => N.Given("no hole", 0, Unit.Length),
    };

    /// <summary>How deep the post stands: by the hole rule, driven, cored, down a wall's face to its lowest bracket, or on its plate.</summary>
    public static N HoleDepth<N>(PlacedPost post) where N : struct, INumber<N> => post.Support switch
    {
        Support.Concrete => HoleDepth<N>(post.Spec, post.GateRow, post.Rules, LeastHole(post.Kind, post.Rules).Depth),
        Support.Driven => N.Rule(post.Rules.DrivenDepth),
        Support.Cored => N.Rule(post.Rules.CoreDepth),
        Support.Bracketed when post.DownFace is { } down => N.Given("down the wall's face", down.Metres, Unit.Length),
        Support.Bracketed => N.Rule(post.Rules.BracketDepth),
        _ => N.Given("no hole", 0, Unit.Length),
    };

    /// <summary>Height of fabric standing plumb on a grade: W * root(1 + t^2).</summary>
    public static N Plumb<N>(double height, double grade) where N : struct, INumber<N>
    {
        var t = N.Given("grade", grade, Unit.Ratio);
        return N.Given("fabric height", height, Unit.Length) * N.Root(N.Constant(1) + t * t);
    }

    /// <summary>Top of what the post carries over the ground it stands in.</summary>
    private static N Over<N>(PostRise rise) where N : struct, INumber<N>
    {
        var top = N.Given("top of the fabric over the datum", rise.Fabric, Unit.Length);
        if (rise.Leaf is { } leaf) top = N.Larger(top, N.Given("top of the gate's leaf over the datum", leaf, Unit.Length));
        return top - N.Given("ground at the post over the datum", rise.Ground, Unit.Length);
    }

    /// <summary>Top of the post over the ground.</summary>
    public static N AboveGround<N>(PlacedPost post) where N : struct, INumber<N>
    {
        var fabric = post.Rise is { } rise ? Over<N>(rise) : Plumb<N>(post.Spec.Height.Metres, post.Grade);
        if (post.Kind == PostKind.Line) return fabric - N.Rule(post.Rules.PostLineBelow);
        var top = fabric + N.Rule(post.Rules.PostTerminalAbove);
        if (post.Spec.Barb is { Lean: "up" }) top += N.Rule(post.Rules.BarbHeight); // leaning arms carry their own height
        return post.Beam is { } beam ? N.Larger(top, N.Given("clear height under the beam", beam.Metres, Unit.Length)) : top;
    }

    /// <summary>Down to the ground of the hole, or to the concrete under the post's foot.</summary>
    public static N CutLength<N>(N aboveGround, N holeDepth, Limit? concreteBelow) where N : struct, INumber<N>
        => aboveGround + (concreteBelow is { } below ? holeDepth - N.Rule(below) : holeDepth);

    /// <summary>The next step posts are ordered in.</summary>
    public static N OrderLength<N>(N cutLength, Rules rules) where N : struct, INumber<N>
        => N.Cover(cutLength, N.Rule(rules.PostOrderStep)) * N.Rule(rules.PostOrderStep);

    /// <summary>Hole minus post: the least it takes. Over-break of the ground comes on top.</summary>
    public static N Concrete<N>(Section post, N diameter, N depth, Limit? concreteBelow) where N : struct, INumber<N>
    {
        if (post.Form != SectionForm.Pipe) return N.Constant(Pi) / N.Constant(4) * (diameter * diameter) * depth; // a shape displaces little
        var od = N.Listed("post", post.OutsideDiameter.Metres, Unit.Length, post.From);
        return concreteBelow is { } below
            ? N.Constant(Pi) / N.Constant(4) * (diameter * diameter * depth - od * od * (depth - N.Rule(below)))
            : N.Constant(Pi) / N.Constant(4) * (diameter * diameter - od * od) * depth;
    }

    /// <summary>Ground that comes out of the hole.</summary>
    public static N Spoil<N>(N diameter, N depth) where N : struct, INumber<N> => N.Constant(Pi) / N.Constant(4) * (diameter * diameter) * depth;

    /// <summary>Brackets that hold one post to a wall's face.</summary>
    public static N Brackets<N>(Rules rules) where N : struct, INumber<N> => N.Rule(rules.BracketPerPost);

    /// <summary>Anchors of the brackets of one post.</summary>
    public static N Anchors<N>(N brackets, Rules rules) where N : struct, INumber<N> => brackets * N.Rule(rules.BracketAnchors);

    /// <summary>Whole bags for one hole.</summary>
    public static N Bags<N>(N concrete, Rules rules) where N : struct, INumber<N>
        => N.Cover(concrete * (N.Constant(1) + N.Rule(rules.OverBreak)), N.Rule(rules.BagYield));

    public static N Mass<N>(Section section, N length) where N : struct, INumber<N>
        => N.Listed("pipe weight", section.Weight.KilogramsPerMetre, Unit.LinearMass, section.From) * length;
}
