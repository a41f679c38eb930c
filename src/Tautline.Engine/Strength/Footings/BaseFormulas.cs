using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Footings;

/// <summary>Weight and overturning of footings, and a plate on anchors.</summary>
public static class BaseFormulas
{
    /// <summary>Round footing: pi D^2 / 4 times depth.</summary>
    public static N Round<N>(N diameter, N depth) where N : struct, INumber<N> => N.Constant(Math.PI) / N.Constant(4) * (diameter * diameter) * depth;

    /// <summary>
    /// Pressure at the toe of a footing B by L under a weight at eccentricity e, outside its middle third: 2 W / (3 L (B / 2 - e)); inside it
    /// W / (B L)(1 + 6 e / B).
    /// </summary>
    public static N Toe<N>(N weight, N eccentricity, N along, N across) where N : struct, INumber<N>
        => eccentricity.Value > along.Value / 6
            ? N.Constant(2) * weight / (N.Constant(3) * across * (along / N.Constant(2) - eccentricity))
            : weight / (along * across) * (N.Constant(1) + N.Constant(6) * eccentricity / along);

    /// <summary>
    /// Pull on the anchors of one side of a plate: M / s, s between the two rows of anchors. The part that presses lies beyond the far row, so
    /// the real arm is longer: the plain method is on the safe side. No help from the post's own weight.
    /// </summary>
    public static N RowPull<N>(N moment, N rows) where N : struct, INumber<N> => moment / rows;
}
