namespace Tautline.Engine.Site.Ground;

/// <summary>A line along which the ground breaks: a wall's foot, a kerb, a ridge. Its pieces become edges of the triangles.</summary>
/// <param name="Points">In order, with heights; a closed line ends where it began.</param>
public sealed record Breakline(IReadOnlyList<GroundPoint> Points);

/// <summary>What a triangulated surface is made of.</summary>
public sealed record TriangulationInput
{
    public required IReadOnlyList<GroundPoint> Points { get; init; }

    /// <summary>Earlier lines win where two cross at different heights.</summary>
    public IReadOnlyList<Breakline> Breaklines { get; init; } = [];

    /// <summary>There is no ground outside of it; shape in plan only. None: the hull of the points.</summary>
    public IReadOnlyList<PlanPoint>? Boundary { get; init; }

    /// <summary>There is no ground inside of any of them; shapes in plan only.</summary>
    public IReadOnlyList<IReadOnlyList<PlanPoint>> Voids { get; init; } = [];

    /// <summary>
    /// From the rim inwards, triangles whose outer edge is longer than this, in metres, and no breakline are taken away. None: all stay.
    /// </summary>
    public double? LongestEdge { get; init; }
}

/// <summary>
/// The constrained Delaunay triangulation of points and breaklines. The time is in proportion to n log n, the memory to n. All tests are exact on
/// the coordinates as given, so there is no snapping; but where two breaklines cross a rounded point is added, and a breakline that passes a point within
/// a micrometre is led through it. The result depends on the places of the points and the order of the breaklines, not on the order of the points.
/// </summary>
public sealed class Triangulation
{
    private readonly (int From, int To)[] forced;

    private Triangulation(TriangleSurface? triangles, IGroundSurface? surface, (int From, int To)[] forced, IReadOnlyList<GroundFinding> findings)
        => (Triangles, Surface, this.forced, Findings) = (triangles, surface, forced, findings);

    /// <summary>All triangles, before boundary and voids; none where there are fewer than three usable points not in one line.</summary>
    public TriangleSurface? Triangles { get; }

    /// <summary>The surface within its boundary and outside its voids.</summary>
    public IGroundSurface? Surface { get; }

    /// <summary>The edges that breaklines became, as pairs of corners of <see cref="Triangles"/>.</summary>
    public ReadOnlySpan<(int From, int To)> ForcedEdges => forced;

    /// <summary>What was wrong with the data, in the order it was met.</summary>
    public IReadOnlyList<GroundFinding> Findings { get; }

    /// <summary>Triangulates; bad data is reported, never thrown.</summary>
    public static Triangulation Of(TriangulationInput input)
    {
        var findings = new GroundFindings();
        var order = new PointOrder(AllPoints(input), findings);
        var mesh = new HalfEdges(order.Points);
        var insertion = new PointInsertion(mesh);
        if (!insertion.InsertAll())
        {
            findings.Add(GroundFindingKind.TooFewPoints, order.Points.FirstOrDefault(), order.Points.Length);
            return new(null, null, [], findings.Found);
        }
        ForceBreaklines(input, order, new BreaklineInsertion(mesh, insertion, findings));
        var rim = new Rim(mesh);
        if (input.LongestEdge is { } longest) rim.Peel(longest);
        var (surface, forced) = rim.Faces();
        return new(surface, Trimmed(surface, input, findings), forced, findings.Found);
    }

    private static GroundPoint[] AllPoints(TriangulationInput input)
    {
        var all = new GroundPoint[input.Points.Count + input.Breaklines.Sum(b => b.Points.Count)];
        var count = 0;
        foreach (var p in input.Points) all[count++] = p;
        foreach (var line in input.Breaklines)
            foreach (var p in line.Points)
                all[count++] = p;
        return all;
    }

    private static void ForceBreaklines(TriangulationInput input, PointOrder order, BreaklineInsertion insertion)
    {
        var number = input.Points.Count;
        foreach (var line in input.Breaklines)
        {
            var last = -1;
            for (var i = 0; i < line.Points.Count; i++)
            {
                var vertex = order.VertexOf[number++];
                // A line with an unusable point has a hole there; it is not closed over it.
                if (i > 0 && vertex >= 0 && last >= 0) insertion.Insert(last, vertex);
                last = vertex;
            }
        }
    }

    private static IGroundSurface Trimmed(TriangleSurface surface, TriangulationInput input, GroundFindings findings)
    {
        if (input.Boundary is null && input.Voids.Count == 0) return surface;
        var trimmed = TrimmedSurface.Of(surface, input.Boundary, input.Voids);
        foreach (var finding in trimmed.Findings) findings.Add(finding.Kind, new(finding.East, finding.North, 0), [.. finding.Figures]);
        return trimmed;
    }
}
