using CsCheck;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Breaklines become edges; where they cannot all, it is said.</summary>
public sealed class BreaklineTests
{
    private static readonly GroundPoint[] corners = [new(0, 0, 0), new(10, 0, 0), new(10, 10, 0), new(0, 10, 0)];

    private static readonly Gen<(GroundPoint[] Points, (int From, int To)[] Pieces)> genPieces =
        GenGround.Any.SelectMany(p => Gen.Select(Gen.Int[0, p.Length - 1], Gen.Int[0, p.Length - 1]).Array[1, 12].Select(pairs => (p, pairs)));

    /// <summary>Pieces that do not cross are edges, by way of the points on them; every other edge still has an empty circle on both sides.</summary>
    [Fact]
    public void EveryPieceIsAnEdgeAndTheRestStaysDelaunay() => genPieces.Always((points, pieces) =>
    {
        points = [.. points.Select(p => p with { Height = 0 })];
        var kept = Apart(points, pieces);
        var made = Triangulation.Of(new() { Points = points, Breaklines = [.. kept.Select(k => new Breakline([points[k.From], points[k.To]]))] });
        var surface = made.Triangles!;
        var forced = made.ForcedEdges.ToArray().SelectMany(f => new[] { f, (From: f.To, To: f.From) }).ToHashSet();
        var edges = Faces.EdgesOf(surface);
        foreach (var (from, to) in kept)
            Assert.True(Leads(surface, forced, points[from], points[to]), $"no way from {points[from]} to {points[to]}");
        Assert.All(forced, f => Assert.True(edges.ContainsKey(f) || edges.ContainsKey((f.To, f.From))));
        foreach (var (edge, apex) in edges)
            if (!forced.Contains(edge) && edges.TryGetValue((edge.To, edge.From), out var far))
                Assert.True(Exactly.InCircle(surface.Points[edge.From], surface.Points[edge.To], surface.Points[apex], surface.Points[far]).Sign <= 0);
        Assert.Equal(Exactly.HullOf(points), Exactly.TwiceTheArea(surface));
    });

    /// <summary>
    /// On a plane all crossings agree, so all lines are joined, and the surface stays the plane. Lines that miss each other by a last bit once crossed
    /// without end; it took about a thousand samples to meet such.
    /// </summary>
    [Fact]
    public void CrossingLinesOnAPlaneLeaveThePlane() => genPieces.Always((points, pieces) =>
    {
        var plane = points.Select(p => p with { Height = Plane(p.East, p.North, points[0]) }).ToArray();
        var made = Triangulation.Of(new() { Points = plane, Breaklines = [.. pieces.Select(k => new Breakline([plane[k.From], plane[k.To]]))] });
        Assert.All(made.Findings, f => Assert.Equal(GroundFindingKind.BreaklinesJoined, f.Kind));
        foreach (var (a, b, c) in Faces.Of(made.Triangles!))
        {
            Assert.True((b.East - a.East) * (c.North - a.North) - (b.North - a.North) * (c.East - a.East) >= 0);
            Assert.All([a, b, c], p => Assert.Equal(Plane(p.East, p.North, points[0]), p.Height, 1e-6));
        }
        var hull = Triangulation.Of(new() { Points = plane }).Triangles!.PlanArea;
        Assert.Equal(hull, made.Triangles!.PlanArea, 1e-6 * hull);
    }, iter: 2000);

    [Fact]
    public void RidgeOverASquareTurnsTheDiagonal()
    {
        // Without the ridge all four corners lie on one circle and either diagonal would do.
        var made = Triangulation.Of(new() { Points = corners, Breaklines = [new([new(0, 0, 0), new(10, 10, 0)])] });
        var turned = Triangulation.Of(new() { Points = corners, Breaklines = [new([new(10, 0, 0), new(0, 10, 0)])] });
        Assert.Equal([((0.0, 0.0), (10.0, 10.0))], Places(made));
        Assert.Equal([((0.0, 10.0), (10.0, 0.0))], Places(turned));
    }

    [Fact]
    public void LinesThatCrossAtOneHeightAreJoinedThere()
    {
        // Both are at 3 m where they meet: 1 + 4/2 and 4 - 2/2.
        var made = Crossing(new(10, 0, 4), new(0, 10, 2));
        var finding = Assert.Single(made.Findings);
        Assert.Equal((GroundFindingKind.BreaklinesJoined, 5.0, 5.0), (finding.Kind, finding.East, finding.North));
        Assert.Equal([3, 3], finding.Figures);
        Assert.Equal(4, made.ForcedEdges.Length);
        Assert.Equal(3, made.Surface!.HeightAt(5, 5));
        Assert.Equal(2, made.Surface.HeightAt(2.5, 2.5));
    }

    [Fact]
    public void LinesThatCrossAtTwoHeightsAreReportedAndTheFirstStays()
    {
        var made = Crossing(new(10, 0, 4), new(0, 10, 4));
        var finding = Assert.Single(made.Findings);
        Assert.Equal((GroundFindingKind.BreaklinesCross, 5.0, 5.0), (finding.Kind, finding.East, finding.North));
        Assert.Equal([3, 4], finding.Figures);
        Assert.Equal([((0.0, 0.0), (10.0, 10.0))], Places(made));
        Assert.Equal(3, made.Surface!.HeightAt(5, 5));
    }

    [Fact]
    public void PointOnALineIsPassedAndReportedWhereItIsOffItsHeight()
    {
        GroundPoint[] points = [.. corners, new(4, 4, 7)];
        var made = Triangulation.Of(new() { Points = points, Breaklines = [new([new(0, 0, 0), new(10, 10, 0)])] });
        var finding = Assert.Single(made.Findings);
        Assert.Equal((GroundFindingKind.PointOnBreakline, 4.0, 4.0), (finding.Kind, finding.East, finding.North));
        Assert.Equal(7, finding.Figures[0]);
        Assert.Equal(0, finding.Figures[1], 1e-12);
        Assert.Equal([((0.0, 0.0), (4.0, 4.0)), ((4.0, 4.0), (10.0, 10.0))], Places(made));
    }

    [Fact]
    public void LineWithAnUnusablePointHasAHoleThere()
    {
        var line = new Breakline([new(0, 0, 0), new(double.NaN, 1, 0), new(10, 10, 0)]);
        var made = Triangulation.Of(new() { Points = corners, Breaklines = [line] });
        Assert.Equal(5, Assert.Single(made.Findings).Figures[0]);
        Assert.Equal(0, made.ForcedEdges.Length);
    }

    /// <summary>The first line rises from 1 to 5 m on the way from south-west to north-east.</summary>
    private static Triangulation Crossing(GroundPoint from, GroundPoint to) => Triangulation.Of(
        new() { Points = [], Breaklines = [new([new(0, 0, 1), new(10, 10, 5)]), new([from, to])] });

    private static double Plane(double east, double north, GroundPoint origin) => 0.25 * (east - origin.East) - 0.5 * (north - origin.North);

    private static ((double, double), (double, double))[] Places(Triangulation made)
    {
        var points = made.Triangles!.Points.ToArray();
        return [.. made.ForcedEdges.ToArray().Select(f => new[] { points[f.From], points[f.To] }.Select(p => (p.East, p.North)).Order().ToArray())
            .Select(p => (p[0], p[1])).Order()];
    }

    /// <summary>Those of some pieces that do not cross an earlier one.</summary>
    private static List<(int From, int To)> Apart(GroundPoint[] points, (int From, int To)[] pieces)
    {
        var kept = new List<(int From, int To)>();
        foreach (var piece in pieces)
            if (kept.All(k => !Cross(points[k.From], points[k.To], points[piece.From], points[piece.To]))) kept.Add(piece);
        return kept;
    }

    private static bool Cross(GroundPoint a, GroundPoint b, GroundPoint c, GroundPoint d) =>
        Exactly.Turn(a, b, c).Sign * Exactly.Turn(a, b, d).Sign < 0 && Exactly.Turn(c, d, a).Sign * Exactly.Turn(c, d, b).Sign < 0;

    /// <summary>Whether forced edges lead from one end of a piece to the other by corners no further from it than ten micrometres: a line is led through what is within one,
    /// and goes on from there.</summary>
    private static bool Leads(TriangleSurface surface, HashSet<(int From, int To)> forced, GroundPoint from, GroundPoint to)
    {
        var near = Enumerable.Range(0, surface.Points.Length).Where(i => IsNear(surface.Points[i], from, to)).ToArray();
        var reached = near.Where(i => surface.Points[i] == from).ToHashSet();
        while (near.FirstOrDefault(i => !reached.Contains(i) && reached.Any(r => forced.Contains((r, i))), -1) is >= 0 and var next) reached.Add(next);
        return reached.Any(i => surface.Points[i] == to);
    }

    private static bool IsNear(GroundPoint p, GroundPoint from, GroundPoint to)
    {
        var (east, north) = (to.East - from.East, to.North - from.North);
        var square = east * east + north * north;
        var part = square == 0 ? 0 : Math.Clamp((east * (p.East - from.East) + north * (p.North - from.North)) / square, 0, 1);
        var (aside, beside) = (p.East - from.East - part * east, p.North - from.North - part * north);
        return Math.Sqrt(aside * aside + beside * beside) <= 1e-5;
    }
}
