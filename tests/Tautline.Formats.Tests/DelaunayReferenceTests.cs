using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate;
using Tautline.Engine.Site.Ground;

namespace Tautline.Formats.Tests;

/// <summary>The engine's triangles against those of NetTopologySuite: for points in general position there is one Delaunay triangulation.</summary>
public sealed class DelaunayReferenceTests
{
    private static readonly GeometryFactory factory = new();

    /// <summary>Their work starts from a triangle of finite size, so at the hull they may miss a sliver; nothing else may differ.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void EdgesAreTheSameButForSliversAtTheHull(int seed)
    {
        var points = Scattered(seed, 2000);
        var ours = EdgesOf(Triangulation.Of(new() { Points = points }).Triangles!);
        var builder = new DelaunayTriangulationBuilder();
        builder.SetSites(factory.CreateMultiPointFromCoords([.. points.Select(p => new Coordinate(p.East, p.North))]));
        var theirs = builder.GetEdges(factory).Geometries.Select(e => Edge(e.Coordinates[0], e.Coordinates[1])).ToHashSet();
        Assert.Empty(theirs.Except(ours));
        Assert.InRange(ours.Except(theirs).Count(), 0, 5);
    }

    [Fact]
    public void TrianglesCoverTheConvexHull()
    {
        var points = Scattered(4, 3000);
        var hull = factory.CreateMultiPointFromCoords([.. points.Select(p => new Coordinate(p.East, p.North))]).ConvexHull();
        Assert.Equal(hull.Area, Triangulation.Of(new() { Points = points }).Triangles!.PlanArea, 1e-9 * hull.Area);
    }

    private static GroundPoint[] Scattered(int seed, int count)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => new GroundPoint(random.NextDouble() * 1000, random.NextDouble() * 700, 0))];
    }

    private static HashSet<((double, double), (double, double))> EdgesOf(TriangleSurface surface)
    {
        var edges = new HashSet<((double, double), (double, double))>();
        for (var i = 0; i < surface.Corners.Length; i++)
        {
            var (from, to) = (surface.Points[surface.Corners[i]], surface.Points[surface.Corners[i % 3 == 2 ? i - 2 : i + 1]]);
            edges.Add(Edge(new Coordinate(from.East, from.North), new Coordinate(to.East, to.North)));
        }
        return edges;
    }

    private static ((double, double), (double, double)) Edge(Coordinate a, Coordinate b) =>
        a.CompareTo(b) < 0 ? ((a.X, a.Y), (b.X, b.Y)) : ((b.X, b.Y), (a.X, a.Y));
}
