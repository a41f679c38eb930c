using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Posts;

/// <summary>A post as a cantilever out of the ground, and the few other beams a fence has. L length, EI stiffness.</summary>
public static class BeamFormulas
{
    /// <summary>Load P at height a: P a^2 (3 L - a) / (6 E I) at the tip.</summary>
    public static N PointTip<N>(N load, N at, N length, N stiffness) where N : struct, INumber<N>
        => load * (at * at) * (N.Constant(3) * length - at) / (N.Constant(6) * stiffness);

    /// <summary>Slope of the tip under it: P a^2 / (2 E I).</summary>
    public static N PointSlope<N>(N load, N at, N stiffness) where N : struct, INumber<N> => load * (at * at) / (N.Constant(2) * stiffness);

    /// <summary>Uniform load w from the foot to height a: w a^4 / (8 E I) + w a^3 (L - a) / (6 E I) at the tip.</summary>
    public static N LowerTip<N>(N load, N to, N length, N stiffness) where N : struct, INumber<N>
    {
        var cube = to * to * to;
        return load * (cube * to) / (N.Constant(8) * stiffness) + load * cube * (length - to) / (N.Constant(6) * stiffness);
    }

    /// <summary>Slope of the tip under it: w a^3 / (6 E I).</summary>
    public static N LowerSlope<N>(N load, N to, N stiffness) where N : struct, INumber<N> => load * (to * to * to) / (N.Constant(6) * stiffness);

    /// <summary>Uniform load between two heights: what it is to the upper less what it is to the lower.</summary>
    public static N StripTip<N>(N load, N from, N to, N length, N stiffness) where N : struct, INumber<N>
        => LowerTip(load, to, length, stiffness) - LowerTip(load, from, length, stiffness);

    /// <summary>Moment at the foot of a uniform load between two heights: w (b - a)(a + b) / 2.</summary>
    public static N StripMoment<N>(N load, N from, N to) where N : struct, INumber<N> => load * (to - from) * ((from + to) / N.Constant(2));

    /// <summary>Reactions of a beam with an overhang under a uniform load: at the support beside the overhang w (l + o)^2 / (2 l), and what is left at the other.</summary>
    public static (N Beside, N Far) Overhang<N>(N load, N span, N overhang) where N : struct, INumber<N>
    {
        var whole = span + overhang;
        var beside = load * (whole * whole) / (N.Constant(2) * span);
        return (beside, load * whole - beside);
    }
}
