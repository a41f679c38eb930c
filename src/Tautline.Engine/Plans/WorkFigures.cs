using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Plans;

/// <summary>The figures of one piece of work along a line.</summary>
public readonly record struct WorkFigures(SiteTask Task, int Line, int Index)
{
    /// <summary>Along the ground.</summary>
    public N Along<N>() where N : struct, INumber<N>
    {
        if (Task.GroundNm is { } along) return N.Given("length along the measured ground", along * 1e-9, Unit.Length);
        var t = N.Given("grade", Task.Leg.Grade, Unit.Ratio);
        return N.Given("level length", (Task.ToNm - Task.FromNm) * 1e-9, Unit.Length) * N.Root(N.Constant(1) + t * t);
    }

    /// <summary>Old posts as counted, or one each spacing and one more.</summary>
    public N Posts<N>(double along) where N : struct, INumber<N> => Task switch
    {
        { Kind: not WorkKind.Removal } => N.Given("no old posts", 0, Unit.Count),
        { Posts: { } counted } => N.Given("old posts as counted", counted, Unit.Count),
        _ => N.Cover(Known<N>(FactKind.WorkAlong, along, Unit.Length), N.Rule(Task.Leg.Spec.Rules.RemovalPostSpacing)) + N.Constant(1),
    };

    /// <summary>Ground cleared; a swale's opening is taken as a parabola, a culvert's as a box.</summary>
    public N Area<N>(double along) where N : struct, INumber<N>
    {
        var width = Known<N>(FactKind.WorkAlong, along, Unit.Length);
        var depth = N.Given("depth", Task.Depth.Metres, Unit.Length);
        return Task.Kind switch
        {
            WorkKind.Clearing => width * N.Given("width cleared", Task.Width.Metres, Unit.Length),
            WorkKind.Swale => N.Constant(2) / N.Constant(3) * (width * depth),
            WorkKind.Culvert => width * depth,
            _ => N.Given("no area", 0, Unit.Area),
        };
    }

    /// <summary>Comes out with the posts that are pulled.</summary>
    public N OldConcrete<N>(double posts) where N : struct, INumber<N>
        => Task is { Kind: WorkKind.Removal, Pulled: true }
            ? Known<N>(FactKind.WorkPosts, posts, Unit.Count) * N.Rule(Task.Leg.Spec.Rules.RemovalFooting)
            : N.Given("no old concrete", 0, Unit.Volume);

    private N Known<N>(FactKind kind, double value, Unit unit) where N : struct, INumber<N> => N.Known(new(kind, Line, Index), value, unit);
}
