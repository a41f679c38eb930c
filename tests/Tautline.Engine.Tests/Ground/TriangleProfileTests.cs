using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>
/// What holds for every profile of triangles. On the lattice most paths run through corners and along edges. Slopes are up to about 10, and a cut within
/// a nanometre of a piece's end counts as the end, so heights agree to some nanometres.
/// </summary>
public sealed class TriangleProfileTests
{
    private static readonly Gen<GroundPath> genLatticePath = Gen.Select(Gen.Int[-2, 10], Gen.Int[-2, 10])
        .Array[2, 5].Select(p => GroundPath.Through([.. p.Select(q => new PlanPoint(q.Item1, q.Item2))])).Where(HasLength);

    // Whole micrometres: a path that runs 1e-17 m outside of the hull has no ground, but no double between its ends lies beside the hull.
    private static readonly Gen<GroundPath> genPath = Gen.Select(Gen.Double[-1, 9], Gen.Double[-1, 9])
        .Array[2, 5].Select(p => GroundPath.Through([.. p.Select(q => new PlanPoint(Math.Round(q.Item1, 6), Math.Round(q.Item2, 6)))])).Where(HasLength);

    private static readonly Gen<GroundPath> genAnyPath = Gen.OneOf(genLatticePath, genPath);

    [Fact]
    public void VerticesAndTheMiddlesBetweenThemLieOnTheSurface() => Gen.Select(GenGround.Lattice, genAnyPath).Always((points, path) =>
    {
        var ground = GenGround.Made(points).Triangles!;
        ProfileCheck.LiesOn(ground, path, ground.Along(path), 2e-8);
    });

    [Fact]
    public void VerticesLieOnASurfaceWithHoles() => Gen.Select(GenGround.Lattice, genAnyPath, Gen.Int[2, 4]).Always((points, path, everyNth) =>
    {
        var whole = GenGround.Made(points).Triangles!;
        var corners = whole.Corners.ToArray().Where((_, i) => i / 3 % everyNth != 0).ToArray();
        var ground = TriangleSurface.Of(whole.Points.ToArray(), corners);
        ProfileCheck.LiesOn(ground, path, ground.Along(path), 2e-8);
    });

    [Fact]
    public void ReversedPathHasTheMirroredProfile() => Gen.Select(GenGround.Lattice, genAnyPath).Always((points, path) =>
    {
        var ground = GenGround.Made(points).Triangles!;
        var (there, back) = (ground.Along(path), ground.Along(path.Reversed()));
        var length = path.Range.To;
        var mirrored = back.Stretches.Reverse().Select(s => s.Points.Reverse().Select(p => (length - p.Station, p.Height)).ToArray()).ToArray();
        Assert.Equal(there.Stretches.Count, mirrored.Length);
        foreach (var (a, b) in there.Stretches.Zip(mirrored))
        {
            Assert.Equal(a.Points.Count, b.Length);
            foreach (var (p, (station, height)) in a.Points.Zip(b))
            {
                Assert.Equal(station, p.Station, 1e-7);
                Assert.Equal(height, p.Height, 1e-7);
            }
        }
    });

    /// <summary>Along h = 2 + 0.3 e - 0.1 n from (10, 10) to (40, 50) heights run from 4 to 9 over 50 m: the area under them is 325.</summary>
    [Fact]
    public void ProfileOfAPlaneHasTheAreaUnderTheLine()
    {
        var random = new Random(11);
        var points = Enumerable.Range(0, 300).Select(_ => (random.NextDouble() * 60, random.NextDouble() * 60))
            .Concat([(0, 0), (60, 0), (60, 60), (0, 60)]).Select(p => new GroundPoint(p.Item1, p.Item2, 2 + 0.3 * p.Item1 - 0.1 * p.Item2)).ToArray();
        var stretch = Assert.Single(GenGround.Made(points).Triangles!.Along(GroundPath.Through(new(10, 10), new(40, 50))).Stretches);
        Assert.True(stretch.Points.Count > 10);
        Assert.Equal(325, AreaUnder(stretch), 1e-9);
    }

    [Fact]
    public void HeightsOfAPlaneAreThePlane() => Gen.Select(GenGround.Scattered, Gen.Double[0, 1000], Gen.Double[0, 1000]).Always((points, east, north) =>
    {
        (east, north) = (Math.Round(east, 3), Math.Round(north, 3));
        var plane = points.Select(p => p with { Height = 100 + p.East / 8 - p.North / 4 }).ToArray();
        var height = GenGround.Made(plane).Surface!.HeightAt(east, north);
        if (height is { } found) Assert.Equal(100 + east / 8 - north / 4, found, 1e-9);
        var inHull = Exactly.HullOf(points) == Exactly.HullOf([.. points, new(east, north, 0)]);
        Assert.Equal(inHull, height is not null);
    });

    internal static double AreaUnder(ProfileStretch stretch) =>
        stretch.Points.Zip(stretch.Points.Skip(1), (a, b) => (b.Station - a.Station) * (a.Height + b.Height) / 2).Sum();

    private static bool HasLength(GroundPath path) => path.Range.To > 0;
}
