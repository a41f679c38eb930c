using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

/// <summary>How much of the wind's way is closed: solid area over gross area.</summary>
public static class Solidity
{
    /// <summary>
    /// Woven fabric: e = 1 - (1 - d / p)^2, d the wire's outside diameter and p the distance of parallel wires from centre to centre. The angle
    /// of the diamond does not matter. A metric sheet in print counts both families without their crossings, 2 d / p: a little more.
    /// </summary>
    /// <param name="opening">Clear between parallel wires.</param>
    public static N Mesh<N>(N wire, N opening) where N : struct, INumber<N> => OfCentres(wire, wire + opening);

    /// <summary>The same from the distance of the wires' centres; wires as thick as that leave nothing open.</summary>
    public static N OfCentres<N>(N wire, N centres) where N : struct, INumber<N>
    {
        var open = N.Larger(N.Constant(0), N.Constant(1) - wire / centres);
        return N.Constant(1) - open * open;
    }

    /// <summary>Two layers one behind the other, each open where it is open.</summary>
    public static N Layers<N>(N a, N b) where N : struct, INumber<N> => N.Constant(1) - (N.Constant(1) - a) * (N.Constant(1) - b);

    /// <summary>
    /// Design thickness of ice, ASCE 7 chapter 10: t I fz Kzt^0.35 with fz = (z / 33 ft)^0.10.
    /// </summary>
    /// <param name="nominal">Of the ice map.</param>
    public static N IceThickness<N>(N nominal, N importance, N z, N kzt) where N : struct, INumber<N>
        => nominal * importance * N.Power(z / N.Listed("height the ice map is for", 33 * 0.3048, Unit.Length, StrengthSources.Ice), N.Constant(0.10))
           * N.Power(kzt, N.Constant(0.35));

    /// <summary>Cross-section of the ice around a wire or pipe: pi t (d + t).</summary>
    public static N IceArea<N>(N thickness, N diameter) where N : struct, INumber<N> => N.Constant(Math.PI) * thickness * (diameter + thickness);
}
