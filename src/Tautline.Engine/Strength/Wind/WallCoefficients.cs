using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

/// <summary>
/// Force coefficients of solid freestanding walls and signs, ASCE 7-16 Fig. 29.3-1 (7-10: 29.4-1): on the gross area. s height of the wall, h its
/// top over the ground, B its length, Lr the return at its end.
/// </summary>
public static class WallCoefficients
{
    private static readonly double[] heights = [0.16, 0.2, 0.3, 0.5, 0.7, 0.9, 1];

    private static readonly double[] lengths = [0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 20, 30, 45];

    private static readonly double[][] whole =
    [
        [1.95, 1.90, 1.85, 1.85, 1.80, 1.80, 1.85, 1.85, 1.85, 1.90, 1.90, 1.95],
        [1.95, 1.90, 1.85, 1.80, 1.80, 1.80, 1.80, 1.80, 1.85, 1.90, 1.90, 1.95],
        [1.95, 1.90, 1.85, 1.80, 1.80, 1.80, 1.80, 1.80, 1.80, 1.85, 1.85, 1.85],
        [1.95, 1.85, 1.80, 1.75, 1.75, 1.70, 1.70, 1.70, 1.70, 1.70, 1.70, 1.75],
        [1.90, 1.85, 1.75, 1.70, 1.65, 1.60, 1.60, 1.55, 1.55, 1.55, 1.55, 1.55],
        [1.85, 1.75, 1.70, 1.60, 1.55, 1.50, 1.45, 1.45, 1.40, 1.40, 1.40, 1.40],
        [1.80, 1.70, 1.65, 1.55, 1.45, 1.40, 1.35, 1.35, 1.30, 1.30, 1.30, 1.30],
    ];

    private static readonly double[] zoneLengths = [2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 45];

    // By distance from the windward end in heights of the wall: 0-1, 1-2, 2-3, 3-4, 4-5, 5-10, over 10. Where the figure joins zones the value stands in each.
    private static readonly double[][] zones =
    [
        [2.25, 2.60, 2.90, 3.10, 3.30, 3.40, 3.55, 3.65, 3.75, 4.00, 4.30],
        [1.50, 1.70, 1.90, 2.00, 2.15, 2.25, 2.30, 2.35, 2.45, 2.60, 2.55],
        [1.50, 1.15, 1.30, 1.45, 1.55, 1.65, 1.70, 1.75, 1.85, 2.00, 1.95],
        [1.50, 1.15, 1.10, 1.05, 1.05, 1.05, 1.05, 1.00, 0.95, 1.50, 1.85],
        [1.50, 1.15, 1.10, 1.05, 1.05, 1.05, 1.05, 1.00, 0.95, 1.35, 1.85],
        [1.50, 1.15, 1.10, 1.05, 1.05, 1.05, 1.05, 1.00, 0.95, 0.90, 1.10],
        [1.50, 1.15, 1.10, 1.05, 1.05, 1.05, 1.05, 1.00, 0.95, 0.55, 0.55],
    ];

    private static readonly double[] zoneEnds = [1, 2, 3, 4, 5, 10];

    /// <summary>Cases A and B: over the whole wall.</summary>
    public static N Whole<N>(N lengthOverHeight, N heightOverTop) where N : struct, INumber<N>
    {
        var (low, high) = Between.Around(heightOverTop.Value, heights);
        N Row(int i) => Between.Table(lengthOverHeight, lengths, whole[i], 1, Unit.Ratio, "B/s", "Cf", StrengthSources.SolidWalls);
        if (low == high) return Row(low);
        return Between.Line(heightOverTop, Height(low), Height(high), Row(low), Row(high));

        static N Height(int i) => N.Listed("s/h", heights[i], Unit.Ratio, StrengthSources.SolidWalls);
    }

    /// <summary>
    /// Case C, for B/s of 2 and more: local, by the distance from the windward end. A wall high over its height, s/h over 0.8, is lowered by 1.8 - s/h; a
    /// return corner lowers the first zone.
    /// </summary>
    /// <param name="zone">0 for the first s from the end, 1 for the next, to 6 for all over 10 s.</param>
    public static N Local<N>(N lengthOverHeight, N heightOverTop, int zone, N returnOverHeight) where N : struct, INumber<N>
    {
        var cf = Between.Table(lengthOverHeight, zoneLengths, zones[zone], 1, Unit.Ratio, "B/s", "Cf", StrengthSources.SolidWalls);
        if (zone == 0 && returnOverHeight.Value > 0 && lengthOverHeight.Value >= 5) cf *= Return(returnOverHeight);
        return heightOverTop.Value > 0.8 ? cf * (N.Constant(1.8) - heightOverTop) : cf;
    }

    /// <summary>What a return corner leaves of the first zone: 0.90, 0.75, 0.60 at Lr/s of 0.3, 1, 2; straight from 1 at 0.</summary>
    public static N Return<N>(N returnOverHeight) where N : struct, INumber<N>
        => Between.Table(returnOverHeight, [0, 0.3, 1, 2], [1, 0.90, 0.75, 0.60], 1, Unit.Ratio, "Lr/s", "return corner", StrengthSources.SolidWalls);

    /// <summary>The zone of a distance from an end, in heights of the wall; at a border the one nearer to the end.</summary>
    public static int Zone(double distanceOverHeight)
    {
        for (var i = 0; i < zoneEnds.Length; i++)
            if (distanceOverHeight <= zoneEnds[i]) return i;
        return zoneEnds.Length;
    }

    /// <summary>Openings under 30 %: 1 - (1 - e)^1.5.</summary>
    public static N Openings<N>(N solidity) where N : struct, INumber<N>
    {
        var open = N.Constant(1) - solidity;
        return N.Constant(1) - open * N.Root(open);
    }

    /// <summary>Where the resultant acts over the wall's foot, in heights of the wall: in its middle and, where it stands on the ground, 0.05 over it.</summary>
    public static N Arm<N>(N heightOverTop) where N : struct, INumber<N>
        => N.Listed("height of the resultant", heightOverTop.Value >= 1 - 1e-9 ? 0.55 : 0.5, Unit.Ratio, StrengthSources.SolidWalls);
}
