namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Triangles as arrays of half-edges: half-edge e of triangle e/3 runs from one corner to the next, turning left; its twin runs back in the
/// neighbour. A ghost corner stands outside of everything, so that every edge of the hull has a triangle on both sides.
/// </summary>
internal sealed class HalfEdges
{
    public const int Ghost = -1;

    private int[] origin;
    private int[] twin;
    private bool[] forced;
    private int[] leaving;
    private GroundPoint[] points;

    /// <param name="points">Corners; the array is used as it is and grows when points are added.</param>
    public HalfEdges(GroundPoint[] points)
    {
        this.points = points;
        PointCount = points.Length;
        var edges = Math.Max(12, 6 * points.Length);
        (origin, twin, forced, leaving) = (new int[edges], new int[edges], new bool[edges], new int[points.Length]);
        Array.Fill(leaving, -1);
    }

    public int PointCount { get; private set; }

    public int TriangleCount { get; private set; }

    /// <summary>Places of points, by number; shorter-lived than the next added point.</summary>
    public GroundPoint[] Points => points;

    public static int Next(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;

    public static int Previous(int edge) => edge % 3 == 0 ? edge + 2 : edge - 1;

    public int From(int edge) => origin[edge];

    public int To(int edge) => origin[Next(edge)];

    /// <summary>The corner across from an edge in its own triangle.</summary>
    public int Apex(int edge) => origin[Previous(edge)];

    public int Twin(int edge) => twin[edge];

    /// <summary>Whether the edge belongs to a breakline and must stay.</summary>
    public bool IsForced(int edge) => forced[edge];

    public bool IsGhost(int triangle) => origin[3 * triangle] < 0 || origin[3 * triangle + 1] < 0 || origin[3 * triangle + 2] < 0;

    /// <summary>Any half-edge that leaves a point; -1 where the point is in no triangle.</summary>
    public int Leaving(int point) => leaving[point];

    /// <summary>The next half-edge that leaves the same point, to the left.</summary>
    public int Around(int edge) => twin[Previous(edge)];

    public void Force(int edge, bool stays) => forced[edge] = forced[twin[edge]] = stays;

    /// <summary>The half-edge from one point to another; -1 where there is none.</summary>
    public int Find(int from, int to)
    {
        var first = leaving[from];
        var edge = first;
        do
        {
            if (To(edge) == to) return edge;
            edge = Around(edge);
        }
        while (edge != first);
        return -1;
    }

    public int AddPoint(in GroundPoint point)
    {
        if (PointCount == points.Length)
        {
            Array.Resize(ref points, points.Length * 2);
            Array.Resize(ref leaving, points.Length);
        }
        (points[PointCount], leaving[PointCount]) = (point, -1);
        return PointCount++;
    }

    /// <summary>The first triangle and its three ghost neighbours; the corners turn left.</summary>
    public void Begin(int a, int b, int c)
    {
        var real = Add(a, b, c);
        var (first, second, third) = (Add(b, a, Ghost), Add(c, b, Ghost), Add(a, c, Ghost));
        Link(real, first);
        Link(real + 1, second);
        Link(real + 2, third);
        Link(first + 1, third + 2);
        Link(second + 1, first + 2);
        Link(third + 1, second + 2);
    }

    /// <summary>Puts a point into a triangle, which becomes three; in each of them the outer edge is the first.</summary>
    /// <returns>The three outer edges.</returns>
    public (int First, int Second, int Third) Split(int triangle, int point)
    {
        var e = 3 * triangle;
        var (a, b, c) = (origin[e], origin[e + 1], origin[e + 2]);
        var (overSecond, overThird, secondForced, thirdForced) = (twin[e + 1], twin[e + 2], forced[e + 1], forced[e + 2]);
        Set(e, a, b, point);
        var (second, third) = (Add(b, c, point), Add(c, a, point));
        Link(second, overSecond);
        Link(third, overThird);
        (forced[second], forced[third], forced[e + 1], forced[e + 2]) = (secondForced, thirdForced, false, false);
        Link(e + 1, second + 2);
        Link(second + 1, third + 2);
        Link(third + 1, e + 2);
        return (e, second, third);
    }

    /// <summary>
    /// Replaces an edge by the other diagonal of its two triangles. Afterwards the edge's number and its twin's previous name the two outer edges
    /// that lay on the far side; both keep the near corner as their apex.
    /// </summary>
    public void Flip(int edge)
    {
        var back = twin[edge];
        var (next, backNext) = (Next(edge), Next(back));
        var (a, b, p, d) = (origin[edge], origin[back], Apex(edge), Apex(back));
        var (overNext, overBackNext, nextForced, backForced) = (twin[next], twin[backNext], forced[next], forced[backNext]);
        (origin[next], origin[backNext]) = (d, p);
        Link(edge, overBackNext);
        Link(back, overNext);
        Link(next, backNext);
        (forced[edge], forced[back], forced[next], forced[backNext]) = (backForced, nextForced, false, false);
        Leave(a, edge);
        Leave(b, back);
        Leave(p, backNext);
        Leave(d, next);
    }

    /// <summary>Overwrites a triangle; its edges are yet to be joined.</summary>
    /// <returns>Its first half-edge.</returns>
    public int Replace(int triangle, int a, int b, int c)
    {
        Set(3 * triangle, a, b, c);
        return 3 * triangle;
    }

    /// <summary>Makes two half-edges the two sides of one edge.</summary>
    public void Join(int edge, int other, bool stays)
    {
        Link(edge, other);
        Force(edge, stays);
    }

    private int Add(int a, int b, int c)
    {
        var edge = 3 * TriangleCount++;
        if (edge + 3 > origin.Length) Grow();
        Set(edge, a, b, c);
        return edge;
    }

    private void Set(int edge, int a, int b, int c)
    {
        (origin[edge], origin[edge + 1], origin[edge + 2]) = (a, b, c);
        Leave(a, edge);
        Leave(b, edge + 1);
        Leave(c, edge + 2);
    }

    private void Leave(int point, int edge)
    {
        if (point >= 0) leaving[point] = edge;
    }

    private void Link(int edge, int other) => (twin[edge], twin[other]) = (other, edge);

    private void Grow()
    {
        Array.Resize(ref origin, origin.Length * 2);
        Array.Resize(ref twin, origin.Length);
        Array.Resize(ref forced, origin.Length);
    }
}
