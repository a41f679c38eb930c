using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

/// <summary>Terrain of EN 1991-1-4 Table 4.1: 0 sea, I open, II low vegetation, III suburb and forest, IV town.</summary>
public enum Terrain { Sea, Open, Low, Suburb, Town }

/// <summary>Wind by EN 1991-1-4. Pressures are characteristic, of 50 years unless c_prob says otherwise. National annexes are not read: the user enters vb0 and the factors.</summary>
public static class EurocodeWind
{
    private static readonly double[] roughness = [0.003, 0.01, 0.05, 0.3, 1.0];

    private static readonly double[] leastHeights = [1, 1, 2, 5, 10];

    private static Provenance From => StrengthSources.Eurocode;

    /// <summary>c_prob = ((1 - K ln(-ln(1 - p))) / (1 - K ln(-ln 0.98)))^n with p = 1 / years, K 0.2, n 0.5.</summary>
    public static N Probability<N>(N years) where N : struct, INumber<N>
    {
        var k = N.Listed("K", 0.2, Unit.Ratio, From);
        N Term(N stays) => N.Constant(1) - k * N.Log(N.Constant(0) - N.Log(stays));
        return N.Root(Term(N.Constant(1) - N.Constant(1) / years) / Term(N.Constant(0.98)));
    }

    /// <summary>cr = 0.19 (z0 / 0.05)^0.07 ln(z / z0), z at least that of the terrain.</summary>
    public static N Roughness<N>(Terrain terrain, N z) where N : struct, INumber<N>
    {
        var kr = N.Listed("kr", 0.19, Unit.Ratio, From)
                 * N.Power(Z0<N>(terrain) / N.Listed("z0 of terrain II", 0.05, Unit.Length, From), N.Constant(0.07));
        return kr * Profile(terrain, z);
    }

    /// <summary>qp = (1 + 7 Iv) rho vm^2 / 2, with vm = cr co vb and Iv = 1 / (co ln(z / z0)).</summary>
    public static N Peak<N>(Terrain terrain, N z, N speed, N orography, N density) where N : struct, INumber<N>
    {
        var mean = Roughness(terrain, z) * orography * speed;
        var gusts = N.Constant(1) + N.Constant(7) / (orography * Profile(terrain, z));
        return gusts * N.Constant(0.5) * density * (mean * mean);
    }

    /// <summary>
    /// cp,net of a free-standing wall: by zone from the end (A to 0.3 h, B to 2 h, C to 4 h, D), length over height and whether the end has a return
    /// corner of at least the height. A wall with e = 0.8 has 1.2 everywhere, straight between; less closed ones are lattices.
    /// </summary>
    public static N Wall<N>(int zone, N lengthOverHeight, bool returns, N solidity) where N : struct, INumber<N>
    {
        ReadOnlySpan<double> at3 = [2.3, 1.4, 1.2, 1.2];
        ReadOnlySpan<double> at5 = [2.9, 1.8, 1.4, 1.2];
        ReadOnlySpan<double> at10 = [3.4, 2.1, 1.7, 1.2];
        ReadOnlySpan<double> cornered = [2.1, 1.8, 1.4, 1.2];
        var atFive = lengthOverHeight.Value == 5 && !returns;
        var from = atFive ? StrengthSources.EurocodeWallsSeen : StrengthSources.EurocodeWalls;
        var closed = returns
            ? N.Listed("cp", cornered[zone], Unit.Ratio, from)
            : Between.Table(lengthOverHeight, [3, 5, 10], [at3[zone], at5[zone], at10[zone]], 1, Unit.Ratio, "l/h", "cp", from);
        if (solidity.Value >= 1) return closed;
        return Between.Line(solidity, N.Constant(0.8), N.Constant(1), N.Listed("cp at e = 0.8", 1.2, Unit.Ratio, StrengthSources.EurocodeWalls), closed);
    }

    /// <summary>0 for A to 3 for D.</summary>
    /// <param name="distanceOverHeight">From the end, in heights of the wall.</param>
    public static int Zone(double distanceOverHeight) => distanceOverHeight <= 0.3 ? 0 : distanceOverHeight <= 2 ? 1 : distanceOverHeight <= 4 ? 2 : 3;

    /// <summary>On the solid area of a plane lattice: the largest of the figure, 2.0, since a single value needs charts this program does not hold.</summary>
    public static N Lattice<N>() where N : struct, INumber<N> => N.Listed("cf", 2.0, Unit.Ratio, StrengthSources.EurocodeLattice);

    private static N Z0<N>(Terrain terrain) where N : struct, INumber<N> => N.Listed("z0", roughness[(int)terrain], Unit.Length, From);

    private static N Profile<N>(Terrain terrain, N z) where N : struct, INumber<N>
        => N.Log(N.Larger(z, N.Listed("least height of the terrain", leastHeights[(int)terrain], Unit.Length, From)) / Z0<N>(terrain));
}
