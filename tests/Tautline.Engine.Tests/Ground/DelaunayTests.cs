using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>What makes triangles a Delaunay triangulation, checked in whole numbers.</summary>
public sealed class DelaunayTests
{
    [Fact]
    public void NoPointLiesInsideTheCircleOfAnyTriangle() => GenGround.Any.Always(points =>
    {
        var made = GenGround.Made(points).Triangles!;
        foreach (var (a, b, c) in Faces.Of(made))
        {
            Assert.True(Exactly.Turn(a, b, c).Sign > 0);
            Assert.All(points, p => Assert.True(Exactly.InCircle(a, b, c, p).Sign <= 0));
        }
    }, iter: 60);

    [Fact]
    public void TrianglesCoverTheHullOnce() => GenGround.Any.Always(points =>
    {
        var made = GenGround.Made(points).Triangles!;
        Assert.Equal(Exactly.HullOf(points), Exactly.TwiceTheArea(made));
        Assert.Equal(2 * made.Points.Length - 2 - Faces.RimOf(made).Count, made.FaceCount);
    });

    [Fact]
    public void EveryPlaceIsACornerWithItsHeight() => GenGround.Any.Always(points =>
    {
        var made = GenGround.Made(points);
        var used = made.Triangles!.Corners.ToArray().Distinct().Count();
        Assert.Equal(points.Select(p => (p.East, p.North)).Distinct().Count(), used);
        Assert.All(points, p => Assert.Equal(p.Height, made.Surface!.HeightAt(p.East, p.North)!.Value, 1e-9));
    });

    [Fact]
    public void OrderOfThePointsDoesNotMatter() => GenGround.Any.Always(points =>
    {
        var (made, again) = (GenGround.Made(points).Triangles!, GenGround.Made([.. points.Reverse()]).Triangles!);
        Assert.Equal(made.Corners, again.Corners);
        Assert.Equal(made.Points, again.Points);
    });

    [Fact]
    public void TwelvePointsOfOneCircleMakeTenTriangles()
    {
        // 3-4-5 triangles give twelve points that lie exactly on one circle.
        (int, int)[] places = [(5, 0), (4, 3), (3, 4), (0, 5), (-3, 4), (-4, 3), (-5, 0), (-4, -3), (-3, -4), (0, -5), (3, -4), (4, -3)];
        var made = GenGround.Made([.. places.Select(p => new GroundPoint(p.Item1, p.Item2, 0))]).Triangles!;
        Assert.Equal(10, made.FaceCount);
        // Shoelace by hand, three equal quarters more: 15/2 + 7/2 + 15/2 = 18.5 for each quarter of the twelve-corner.
        Assert.Equal(74, made.PlanArea);
    }

    [Fact]
    public void PointsInOneLineMakeNoSurfaceAndAreReported()
    {
        var made = GenGround.Made([new(0, 0, 1), new(1, 1, 2), new(3, 3, 1), new(2, 2, 9)]);
        Assert.Null(made.Surface);
        Assert.Equal((GroundFindingKind.TooFewPoints, 4.0), (made.Findings.Single().Kind, made.Findings.Single().Figures[0]));
        Assert.Equal(GroundFindingKind.TooFewPoints, GenGround.Made([]).Findings.Single().Kind);
    }

    [Fact]
    public void PointThatDiffersInHeightIsReportedAndTheFirstStays()
    {
        var made = GenGround.Made([new(0, 0, 1), new(4, 0, 1), new(4, 0, 1), new(0, 4, 1), new(4, 0, 2.5)]);
        var finding = Assert.Single(made.Findings);
        Assert.Equal((GroundFindingKind.TwoHeights, 4.0, 0.0), (finding.Kind, finding.East, finding.North));
        Assert.Equal([1, 2.5, 1, 4], finding.Figures);
        Assert.Equal(1, made.Surface!.HeightAt(4, 0));
    }

    [Fact]
    public void PointThatIsNoPlaceIsReportedAndLeftOut()
    {
        var made = GenGround.Made([new(0, 0, 1), new(double.NaN, 0, 1), new(4, 0, 1), new(0, 4, 1), new(1, 1, -3.4e38), new(2e9, 0, 0)]);
        Assert.Equal([1.0, 4.0, 5.0], made.Findings.Select(f => f.Figures[0]));
        Assert.All(made.Findings, f => Assert.Equal(GroundFindingKind.UnusablePoint, f.Kind));
        Assert.Equal(1, made.Triangles!.FaceCount);
    }

    [Fact]
    public void LongEdgesArePeeledFromTheRimOnly()
    {
        // Two squares of 2 m, ten metres apart: between them every triangle has an outer edge of ten metres or one that peeling lays open.
        GroundPoint[] points = [new(0, 0, 0), new(2, 0, 0), new(2, 2, 0), new(0, 2, 0), new(12, 0, 0), new(14, 0, 0), new(14, 2, 0), new(12, 2, 0)];
        Assert.Equal(28, GenGround.Made(points).Triangles!.PlanArea);
        var made = Triangulation.Of(new() { Points = points, LongestEdge = 5 });
        Assert.Equal(8, made.Triangles!.PlanArea);
        Assert.Null(made.Surface!.HeightAt(7, 1));
        Assert.Equal(0, made.Surface.HeightAt(13, 1));
    }

    [Fact]
    public void BreaklineAtTheRimIsNotPeeled()
    {
        GroundPoint[] points = [new(0, 0, 0), new(10, 0, 0), new(5, 1, 0)];
        var made = Triangulation.Of(new() { Points = points, Breaklines = [new(points[..2])], LongestEdge = 6 });
        Assert.Equal(1, made.Triangles!.FaceCount);
        Assert.Equal(0, Triangulation.Of(new() { Points = points, LongestEdge = 6 }).Triangles!.FaceCount);
    }
}
