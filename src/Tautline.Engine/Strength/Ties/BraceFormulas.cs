using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Ties;

/// <summary>Pull of fabric and wire on terminals, what braces make of it, and what cold adds.</summary>
public static class BraceFormulas
{
    /// <summary>Two pulls of one size that meet at a turn leave 2 T sin(D / 2) to the inside.</summary>
    /// <param name="halfSine">Sine of half the turn.</param>
    public static N Inward<N>(N pull, N halfSine) where N : struct, INumber<N> => N.Constant(2) * pull * halfSine;

    /// <summary>
    /// A joint of two members that carries a load straight down, one on each side of it, by the slopes they rise at (tangents): pulls in the first and in the
    /// second. A member that rises from the joint pulls the load up.
    /// </summary>
    public static (N First, N Second) Joint<N>(N load, N firstSlope, N secondSlope) where N : struct, INumber<N>
    {
        // Level parts are equal: load = level (a + b).
        var level = load / (firstSlope + secondSlope);
        return (level * N.Root(N.Constant(1) + firstSlope * firstSlope), level * N.Root(N.Constant(1) + secondSlope * secondSlope));
    }

    /// <summary>A level brace rail at height y and a truss rod down from its far end: the rail takes the moment of the pulls over y.</summary>
    public static N Rail<N>(N moment, N height) where N : struct, INumber<N> => moment / height;

    /// <summary>The rod takes the rail's push along its own slope: C root(1 + (y / l)^2), l the bay.</summary>
    public static N Rod<N>(N rail, N height, N bay) where N : struct, INumber<N>
    {
        var slope = height / bay;
        return rail * N.Root(N.Constant(1) + slope * slope);
    }

    /// <summary>Its upright part, which lifts one post and loads the other: C y / l.</summary>
    public static N Lift<N>(N rail, N height, N bay) where N : struct, INumber<N> => rail * height / bay;

    /// <summary>Stress of a bar held at both ends that cools: E (alpha dT - give / L).</summary>
    public static N ColdStress<N>(N modulus, N expansion, N drop, N give, N length) where N : struct, INumber<N>
        => modulus * (expansion * drop - give / length);

    /// <summary>Change of length: alpha L dT.</summary>
    public static N Shortening<N>(N expansion, N length, N drop) where N : struct, INumber<N> => expansion * length * drop;
}
