namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Ground made of flat triangles, as given or as <see cref="Triangulation"/> made them. Nothing is triangulated anew. Where faces overlap in plan,
/// which is reported, either gives the height. The rim has ground.
/// </summary>
public sealed class TriangleSurface : IGroundSurface
{
    private const int FewEnough = 24;

    private readonly GroundPoint[] points;
    private readonly int[] corners;
    private readonly int[] twins;
    private readonly int[] rim;
    private readonly BucketIndex faceIndex;
    private readonly BucketIndex rimIndex;

    internal TriangleSurface(GroundPoint[] points, int[] corners, int[] twins, IReadOnlyList<GroundFinding> findings)
    {
        (this.points, this.corners, this.twins, Findings) = (points, corners, twins, findings);
        var box = Extent();
        rim = [.. Enumerable.Range(0, twins.Length).Where(e => twins[e] < 0)];
        faceIndex = new(box, FaceCount, f => PlanBox.Of(From(3 * f), From(3 * f + 1), From(3 * f + 2)));
        rimIndex = new(box, rim.Length, i => PlanBox.Of(From(rim[i]), To(rim[i])));
    }

    /// <summary>The corners of the faces.</summary>
    public ReadOnlySpan<GroundPoint> Points => points;

    /// <summary>Three numbers of points for each face, turning left in plan.</summary>
    public ReadOnlySpan<int> Corners => corners;

    public int FaceCount => corners.Length / 3;

    /// <summary>What was wrong with the points and faces given.</summary>
    public IReadOnlyList<GroundFinding> Findings { get; }

    /// <summary>Area in plan, in square metres.</summary>
    public double PlanArea => Enumerable.Range(0, FaceCount).Sum(f => PlanTest.Turn(From(3 * f), From(3 * f + 1), From(3 * f + 2)) / 2);

    /// <summary>Area on the slope, in square metres.</summary>
    public double SlopeArea => Enumerable.Range(0, FaceCount).Sum(f => SlopeAreaOf(From(3 * f), From(3 * f + 1), From(3 * f + 2)));

    /// <summary>A surface of given points and faces; what cannot be used is left out and reported.</summary>
    /// <param name="points">In metres.</param>
    /// <param name="faces">Three numbers of points for each face, from zero, turning either way.</param>
    public static TriangleSurface Of(IReadOnlyList<GroundPoint> points, IReadOnlyList<int> faces)
    {
        var findings = new GroundFindings();
        var settled = new GroundPoint[points.Count];
        for (var i = 0; i < settled.Length; i++) settled[i] = points[i].Settled;
        var (corners, numbers) = GivenFaces.Usable(settled, faces, findings);
        var twins = GivenFaces.Neighbours(settled, corners, numbers, findings);
        return new(settled, corners, twins, findings.Found);
    }

    /// <inheritdoc/>
    public double? HeightAt(double east, double north)
    {
        var face = FaceAt(GroundPoint.Settle(east), GroundPoint.Settle(north));
        return face < 0 ? null : Height(3 * face, new(GroundPoint.Settle(east), GroundPoint.Settle(north), 0));
    }

    /// <summary>
    /// A vertex exactly wherever the path crosses an edge or passes a corner; straight between them is the surface itself.
    /// </summary>
    public GroundProfile Along(GroundPath path)
    {
        var profile = new ProfileBuilder(path.Range);
        var crossings = new TriangleCrossings(this);
        for (var i = 1; i < path.Points.Count; i++)
            foreach (var span in crossings.Along(new(path.Points[i - 1], path.Points[i])))
                profile.Add(span);
        return profile.Build();
    }

    internal ref readonly GroundPoint From(int edge) => ref points[corners[edge]];

    internal ref readonly GroundPoint To(int edge) => ref points[corners[HalfEdges.Next(edge)]];

    /// <summary>The face across an edge; -1 at the rim.</summary>
    internal int Neighbour(int edge) => twins[edge] < 0 ? -1 : twins[edge] / 3;

    /// <summary>The edges of the rim that a piece may touch; some may come more than once.</summary>
    internal void RimAlong(PathPiece piece, List<int> edges)
    {
        rimIndex.Along(piece.From, piece.To, edges);
        for (var i = 0; i < edges.Count; i++) edges[i] = rim[edges[i]];
    }

    /// <summary>A face that holds a place, its rim included; -1 where there is none.</summary>
    internal int FaceAt(double east, double north)
    {
        var near = faceIndex.At(east, north);
        var p = new GroundPoint(east, north, 0);
        // Where the points crowd, a bucket is full and a walk is quicker; it may end at the rim of a void, then the bucket is searched after all.
        var walked = near.Length > FewEnough ? Walk(p, near[0]) : -1;
        if (walked >= 0) return walked;
        foreach (var face in near)
            if (WayOut(p, face, -1) < 0) return face;
        return -1;
    }

    private int Walk(in GroundPoint p, int face)
    {
        var cameBy = -1;
        for (var steps = 2 * Math.Sqrt(FaceCount) + 16; steps > 0 && face >= 0; steps--)
        {
            var leave = WayOut(p, face, cameBy);
            if (leave < 0) return face;
            cameBy = twins[leave];
            face = Neighbour(leave);
        }
        return -1;
    }

    /// <summary>An edge that has the place on its outer side; -1 where the face holds it.</summary>
    private int WayOut(in GroundPoint p, int face, int cameBy)
    {
        for (var edge = 3 * face; edge < 3 * face + 3; edge++)
            if (edge != cameBy && PlanTest.Turn(From(edge), To(edge), p) < 0) return edge;
        return -1;
    }

    private double Height(int edge, in GroundPoint p)
    {
        ref readonly var a = ref From(edge);
        ref readonly var b = ref From(edge + 1);
        ref readonly var c = ref From(edge + 2);
        var (ofA, ofB, ofC) = (PlanTest.Turn(b, c, p), PlanTest.Turn(c, a, p), PlanTest.Turn(a, b, p));
        return a.Height + (ofB * (b.Height - a.Height) + ofC * (c.Height - a.Height)) / (ofA + ofB + ofC);
    }

    private PlanBox Extent()
    {
        // Points that no face uses would make the buckets too large.
        var (w, s, e, n) = (GroundPoint.FurthestOut, GroundPoint.FurthestOut, -GroundPoint.FurthestOut, -GroundPoint.FurthestOut);
        for (var i = 0; i < corners.Length; i++)
            (w, s, e, n) = (Math.Min(w, From(i).East), Math.Min(s, From(i).North), Math.Max(e, From(i).East), Math.Max(n, From(i).North));
        return new(w, s, e, n);
    }

    private static double SlopeAreaOf(in GroundPoint a, in GroundPoint b, in GroundPoint c)
    {
        var plan = PlanTest.Turn(a, b, c);
        var (e1, n1, h1) = (b.East - a.East, b.North - a.North, b.Height - a.Height);
        var (e2, n2, h2) = (c.East - a.East, c.North - a.North, c.Height - a.Height);
        var (x, y) = (n1 * h2 - h1 * n2, h1 * e2 - e1 * h2);
        return Math.Sqrt(plan * plan + x * x + y * y) / 2;
    }
}
