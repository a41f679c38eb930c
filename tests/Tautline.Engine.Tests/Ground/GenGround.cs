using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Random ground. On a small lattice most points share lines and circles with others; off it none do.</summary>
internal static class GenGround
{
    /// <summary>Whole metres from 0 to 8: full of duplicates, collinear and cocircular points.</summary>
    public static readonly Gen<GroundPoint[]> Lattice =
        Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8]).Select((e, n) => new GroundPoint(e, n, HeightAt(e, n))).Array[8, 60].Where(HasArea);

    /// <summary>
    /// The same lattice in tenths of a metre far from the origin, as grid coordinates of a country are: lines and circles are missed by the last bit.
    /// </summary>
    public static readonly Gen<GroundPoint[]> FarTenths = Lattice.Select(points =>
        points.Select(p => new GroundPoint(552_300.3 + p.East / 10, 4_380_200.7 + p.North / 10, p.Height)).ToArray());

    public static readonly Gen<GroundPoint[]> Scattered =
        Gen.Select(Gen.Double[0, 1000], Gen.Double[0, 1000]).Select((e, n) => new GroundPoint(Math.Round(e, 3), Math.Round(n, 3), HeightAt(e, n))).Array[3, 80].Where(HasArea);

    public static readonly Gen<GroundPoint[]> Any = Gen.OneOf(Lattice, FarTenths, Scattered);

    public static Triangulation Made(GroundPoint[] points) => Triangulation.Of(new() { Points = points });

    /// <summary>A height that follows from the place, so that duplicates agree, but no plane.</summary>
    private static double HeightAt(double east, double north) => (3 * (int)east + 5 * (int)north) % 7;

    private static bool HasArea(GroundPoint[] points) => points.Any(p => points.Any(q => !Exactly.Turn(points[0], p, q).IsZero));
}
