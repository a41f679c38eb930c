using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>
/// A square of 4 m, cut from south-west to north-east: south-west 1 m, south-east 3 m, north-east 9 m, north-west 5 m. Worked by hand: the face to the
/// south-east is 1 + e/2 + 3n/2, the other 1 + e + n.
/// </summary>
public sealed class HandProfileTests
{
    private static readonly GroundPoint[] corners = [new(0, 0, 1), new(4, 0, 3), new(4, 4, 9), new(0, 4, 5)];

    private static readonly TriangleSurface ground = TriangleSurface.Of(corners, [0, 1, 2, 0, 2, 3]);

    [Theory]
    [InlineData(3, 1, 4.0)]
    [InlineData(1, 3, 5.0)]
    [InlineData(2, 2, 5.0)]
    [InlineData(4, 4, 9.0)]
    [InlineData(4, 0, 3.0)]
    [InlineData(2, 0, 2.0)]
    [InlineData(4.000001, 2, null)]
    public void HeightsAreThoseOfTheFaces(double east, double north, double? height) => Assert.Equal(height, ground.HeightAt(east, north));

    [Fact]
    public void PathAcrossHasAVertexOnTheDiagonal() => Is([(0, 3), (2, 5), (4, 6)], [], GroundPath.Through(new(0, 2), new(4, 2)));

    [Fact]
    public void PathFromOutsideHasGapsBeforeAndAfter() =>
        Is([(2, 3), (4, 5), (6, 6)], [(0, 2), (6, 9)], GroundPath.Through(new(-2, 2), new(7, 2)));

    [Fact]
    public void PathAlongTheDiagonalHasNoVertexButItsEnds() => Is([(0, 1), (Math.Sqrt(32), 9)], [], GroundPath.Through(new(0, 0), new(4, 4)));

    [Fact]
    public void PathAlongAnEdgeOfTheRimHasGround() =>
        Is([(1, 1), (5, 3)], [(0, 1), (5, 6)], GroundPath.Through(new(-1, 0), new(5, 0)));

    [Fact]
    public void PathThroughTwoCornersFromOutsideIsCutAtThem() =>
        Is([(Math.Sqrt(2), 3), (3 * Math.Sqrt(2), 5), (5 * Math.Sqrt(2), 5)], [(0, Math.Sqrt(2)), (5 * Math.Sqrt(2), 6 * Math.Sqrt(2))],
            GroundPath.Through(new(5, -1), new(-1, 5)));

    [Fact]
    public void PathThatOnlyTouchesACornerHasNoGround() => Is([], [(0, Math.Sqrt(8))], GroundPath.Through(new(-1, 1), new(1, -1)));

    [Fact]
    public void PathPastTheSquareHasNoGround() => Is([], [(0, 4)], GroundPath.Through(new(0, 5), new(4, 5)));

    [Fact]
    public void PathWithinAFaceHasItsEndsAndItsCorner() =>
        Is([(0, 3), (1, 3.5), (2, 5)], [], GroundPath.Through(new(2.5, 0.5), new(3.5, 0.5), new(3.5, 1.5)));

    [Fact]
    public void StationsBeginWhereThePathSays() =>
        Assert.Equal(new StationRange(100, 104), new GroundPath(new(0, 2), 100).LineTo(new(4, 2)).Range);

    [Fact]
    public void ArcCarriesItsOwnStationsAndStaysWithinATenthOfAMillimetre()
    {
        // A quarter of a circle of 10 m, to the left from due east: it is 15.70796 m long and ends at (10, 10).
        var curve = new PlacedCurve(Curve.FromRadiusAndDelta(new Length(10), 90).Value!, default, Direction.DueEast, CurveSide.Left, default);
        var path = new GroundPath(new(0, 0)).CurveTo(curve);
        Assert.Equal(15.707963267948966, path.Range.To, 1e-9);
        Assert.Equal(10, path.Points[^1].East, 1e-9);
        Assert.Equal(10, path.Points[^1].North, 1e-9);
        foreach (var (a, b) in path.Points.Zip(path.Points.Skip(1)))
        {
            var (east, north) = ((a.East + b.East) / 2, (a.North + b.North) / 2 - 10);
            Assert.InRange(Math.Sqrt(east * east + north * north), 10 - 0.0001, 10);
        }
    }

    [Fact]
    public void FaceThatTurnsRightIsTurnedRound() =>
        Assert.Equal(4.0, TriangleSurface.Of(corners, [2, 1, 0, 3, 2, 0]).HeightAt(3, 1));

    [Fact]
    public void FacesThatCannotBeUsedAreReportedByTheirNumbers()
    {
        var bad = TriangleSurface.Of([.. corners, new(2, 0, 0)], [0, 4, 1, 0, 1, 2, 0, 1, 9, 0, 1, 3]);
        Assert.Equal(
            [(GroundFindingKind.FaceWithoutArea, 0.0), (GroundFindingKind.FaceWithoutPoint, 2.0), (GroundFindingKind.FacesOverlap, 3.0)],
            bad.Findings.Select(f => (f.Kind, f.Figures[0])));
        Assert.Equal(2, bad.FaceCount);
    }

    [Fact]
    public void FacesThatMeetWithoutSharingCornersMakeOneStretchWithAStep()
    {
        var wall = TriangleSurface.Of([.. corners, new(4, 0, 5), new(8, 0, 5), new(4, 4, 11)], [0, 1, 2, 0, 2, 3, 4, 5, 6]);
        var profile = wall.Along(GroundPath.Through(new(0, 2), new(8, 2)));
        // The second face is 5 + 3n/2 and ends at e + n = 8.
        Assert.Equal([new(0, 3), new(2, 5), new(4, 6), new(4, 8), new(6, 8)], Assert.Single(profile.Stretches).Points);
        Assert.Equal([new StationRange(6, 8)], profile.Gaps);
        Assert.Equal(8, profile.HeightAt(4));
        Assert.Equal(5.5, profile.HeightAt(3));
        Assert.Null(profile.HeightAt(7));
    }

    private static void Is((double, double)[] points, (double, double)[] gaps, GroundPath path)
    {
        var profile = ground.Along(path);
        var found = profile.Stretches.SelectMany(s => s.Points).ToArray();
        Assert.Equal(points.Length, found.Length);
        foreach (var ((station, height), p) in points.Zip(found))
        {
            Assert.Equal(station, p.Station, 1e-12);
            Assert.Equal(height, p.Height, 1e-12);
        }
        Assert.Equal(gaps.Length, profile.Gaps.Count);
        foreach (var ((from, to), gap) in gaps.Zip(profile.Gaps))
        {
            Assert.Equal(from, gap.From, 1e-12);
            Assert.Equal(to, gap.To, 1e-12);
        }
    }
}
