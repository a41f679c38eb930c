using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>
/// The shape of a diamond: advance a (half its width) and half its height c. The wire's leg along one side is root(a^2 + c^2) long and
/// stays so however the fabric is stretched; parallel legs are 2ac / root(a^2 + c^2) apart, centre to centre.
/// </summary>
/// <param name="Advance">Above zero.</param>
/// <param name="HalfDiamond">Above zero.</param>
public sealed record MeshShape(Length Advance, Length HalfDiamond)
{
    /// <summary>Square of one leg of the wire, square metres.</summary>
    private double LegSquared => Advance.Metres * Advance.Metres + HalfDiamond.Metres * HalfDiamond.Metres;

    public Length Leg => new(Math.Sqrt(LegSquared));

    /// <summary>Between the centre lines of parallel wires; the clear opening is a wire less.</summary>
    public Length Wires => new(2 * Advance.Metres * HalfDiamond.Metres / Leg.Metres);

    /// <summary>The steepest rail whose bias can be cut picket by picket: beyond it the cut runs flatter than the wire itself.</summary>
    public Slope SteepestBias => new(Advance / HalfDiamond);

    /// <summary>By 1/a^2 + 1/c^2 = 4/s^2, s the distance of the wires; null where the advance is under half of s, which no mesh is.</summary>
    public static MeshShape? FromAdvance(Length wires, Length advance) => Other(wires, advance) is { } c ? new(advance, c) : null;

    /// <inheritdoc cref="FromAdvance"/>
    public static MeshShape? FromHalfDiamond(Length wires, Length half) => Other(wires, half) is { } a ? new(a, half) : null;

    /// <summary>
    /// The mesh as it was woven, found from its leg, which stretching does not change: a^2 and c^2 sum to leg^2 and multiply to
    /// leg^2 s^2 / 4. Of the two answers the taller diamond is taken, as chain link is delivered; a leg under s gives the square mesh.
    /// </summary>
    public static MeshShape Woven(Length wires, Length leg)
    {
        var (sum, s) = (leg.Metres * leg.Metres, wires.Metres);
        var root = Math.Sqrt(Math.Max(0, sum * (sum - s * s)));
        return new(new Length(Math.Sqrt((sum - root) / 2)), new Length(Math.Sqrt((sum + root) / 2)));
    }

    /// <summary>The same wire pulled to another advance; null where the leg is not so long.</summary>
    public MeshShape? AtAdvance(Length advance) => Rest(advance) is { } c ? new(advance, c) : null;

    /// <summary>The same wire at another height of the diamonds; null where the leg is not so long.</summary>
    public MeshShape? AtHalfDiamond(Length half) => Rest(half) is { } a ? new(a, half) : null;

    /// <summary>Whole and part diamonds along a plumb length, selvages not counted.</summary>
    public double Count(Length over) => over / (2 * HalfDiamond);

    private static Length? Other(Length wires, Length known)
    {
        var (s, k) = (wires.Metres, known.Metres);
        return 2 * k > s ? new Length(s * k / Math.Sqrt(4 * k * k - s * s)) : null;
    }

    private Length? Rest(Length known)
        => LegSquared - known.Metres * known.Metres is > 0 and var rest ? new Length(Math.Sqrt(rest)) : null;
}
