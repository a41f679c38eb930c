using Tautline.Engine.Layout;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>What the top of the fabric hangs on.</summary>
public enum SeatOn { Rail, Wire }

/// <summary>A length known within a range; both ends equal once a roll is calibrated.</summary>
public readonly record struct LengthRange(Length Low, Length High)
{
    public static LengthRange operator +(LengthRange a, Length b) => new(a.Low + b, a.High + b);

    /// <summary>b less the range, so its ends change places.</summary>
    public static LengthRange operator -(Length b, LengthRange a) => new(b - a.High, b - a.Low);

    public static LengthRange operator -(LengthRange a, Length b) => new(a.Low - b, a.High - b);
}

/// <summary>
/// Where the fabric sits at its top, all measured plumb. The middle of the top diamond lies on the middle of the top rail, half a diamond under
/// the knuckles (common practice, no source); a twisted top adds its tail. Which side of the posts it hangs on is the job's.
/// </summary>
/// <param name="TopOver">Top of the fabric over the centre of the rail, or over the wire.</param>
/// <param name="Tail">Of it, the twist's.</param>
/// <param name="FabricTop">Over the ground.</param>
/// <param name="Carrier">Centre of the rail, or the wire, over the ground.</param>
/// <param name="CapOffset">Centre of the rail over the top of the line post; below zero where the post would stand through it.</param>
/// <param name="Gap">Bottom of the fabric over the ground; below zero where it would reach into it.</param>
public sealed record Seat(
    SeatOn On, LengthRange TopOver, Length Tail, LengthRange FabricTop, LengthRange Carrier, LengthRange CapOffset, LengthRange Gap)
{
    /// <summary>How far under the top of the fabric the rule set allows a top wire; null for a rail, or where it states nothing.</summary>
    public Length? WireAtMost { get; init; }

    /// <summary>The fabric from its bottom to its top, plumb.</summary>
    public Length Plumb => FabricTop.Low - Gap.Low;

    public bool WireHighEnough => WireAtMost is not { } most || TopOver.High <= most;
}

/// <summary>The seat, from the fabric's top as planned or from the posts as they stand.</summary>
public static class Seating
{
    /// <summary>Half a diamond and the tail, as they stand plumb on a grade: (c + tail) * root(1 + t^2).</summary>
    public static N TopOver<N>(ResolvedSpec spec, N advance, double grade) where N : struct, INumber<N>
    {
        var t = N.Given("grade", grade, Unit.Ratio);
        return (MeshFormulas.HalfDiamondAt(spec, advance) + Tail<N>(spec)) * N.Root(N.Constant(1) + t * t);
    }

    /// <summary>What a twisted top stands over its diamond; nothing for a knuckled one.</summary>
    public static N Tail<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => spec.Selvage.StartsWith('T') ? N.Rule(spec.Rules["seat.twistTail"]) : N.Given("knuckled top", 0, Unit.Length);

    /// <summary>From the top of the fabric over the ground: where rail and line post have to be for it.</summary>
    /// <param name="lineTop">Top of the line post over the ground.</param>
    public static Seat FromFabric(ResolvedSpec spec, Slope grade, Length fabricTop, Length lineTop)
    {
        var top = new LengthRange(fabricTop, fabricTop);
        var carrier = fabricTop - Over(spec, grade);
        return Of(spec, grade, top, carrier, carrier - lineTop);
    }

    /// <summary>From the line post as it stands and the cap on it: where the fabric comes to hang.</summary>
    /// <param name="lineTop">Top of the line post over the ground.</param>
    /// <param name="capOffset">Centre of the rail over the top of the post.</param>
    public static Seat FromPost(ResolvedSpec spec, Slope grade, Length lineTop, Length capOffset)
    {
        var carrier = lineTop + capOffset;
        return Of(spec, grade, Over(spec, grade) + carrier, new(carrier, carrier), new(capOffset, capOffset));
    }

    private static Seat Of(ResolvedSpec spec, Slope grade, LengthRange top, LengthRange carrier, LengthRange capOffset)
    {
        var (over, plumb) = (Over(spec, grade), new Length(PostFormulas.Plumb<Plain>(spec.Height.Metres, grade.Ratio).Value));
        var on = spec.TopRail ? SeatOn.Rail : SeatOn.Wire;
        return new Seat(on, over, new Length(Tail<Plain>(spec).Value), top, carrier, capOffset, top - plumb)
        {
            WireAtMost = on == SeatOn.Wire ? spec.Rules.Find("wire.topBelow")?.Length : null,
        };
    }

    private static LengthRange Over(ResolvedSpec spec, Slope grade)
    {
        var (low, high) = (MeshFormulas.AdvanceLow<Plain>(spec), MeshFormulas.AdvanceHigh<Plain>(spec));
        return new(new Length(TopOver(spec, high, grade.Ratio).Value), new Length(TopOver(spec, low, grade.Ratio).Value));
    }
}
