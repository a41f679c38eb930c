using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Gates;

/// <summary>What a leaf hands to its posts. W weight, x from the hinges to its centre, c between the hinges.</summary>
public static class LeafFormulas
{
    /// <summary>Pull on the upper hinge and push on the lower one: W x / c.</summary>
    public static N Couple<N>(N weight, N centre, N hinges) where N : struct, INumber<N> => weight * centre / hinges;

    /// <summary>On the hinge that carries the weight too: root(H^2 + W^2).</summary>
    public static N Carrying<N>(N couple, N weight) where N : struct, INumber<N> => N.Root(couple * couple + weight * weight);

    /// <summary>
    /// Rollers of a cantilever leaf, closed: on the front one W x / a down, x from the rear rollers to the leaf's centre and a between the two; what that is more
    /// than W pulls the rear one up.
    /// </summary>
    public static (N Front, N Rear) Rollers<N>(N weight, N centre, N apart) where N : struct, INumber<N>
    {
        var front = weight * centre / apart;
        return (front, front - weight);
    }

    /// <summary>Two moments square to each other on a round post: root(a^2 + b^2).</summary>
    public static N Square<N>(N a, N b) where N : struct, INumber<N> => N.Root(a * a + b * b);
}
