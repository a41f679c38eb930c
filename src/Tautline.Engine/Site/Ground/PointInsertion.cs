namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Puts points into a Delaunay triangulation one by one: walk to the triangle, split it, flip edges until every circle is empty again (Lawson).
/// Forced edges are never flipped. Every test is exact, so the hull is the true one and no triangle is empty or turned over.
/// </summary>
internal sealed class PointInsertion(HalfEdges mesh)
{
    private readonly Stack<int> doubtful = new();
    private int last;
    private uint step;

    /// <summary>Builds the triangulation of all the mesh's points; false where they are all in one line.</summary>
    public bool InsertAll()
    {
        var order = PointOrder.Rounds(mesh.PointCount);
        if (!Begin(order)) return false;
        for (var i = 3; i < order.Length; i++) Insert(order[i]);
        return true;
    }

    /// <summary>Puts a point in, or finds the one that is already there.</summary>
    /// <param name="point">A point of the mesh that is in no triangle yet.</param>
    /// <param name="near">A half-edge to start from; none: where the last point went.</param>
    /// <returns>The point at that place.</returns>
    public int Insert(int point, int near = -1)
    {
        var (triangle, on) = Locate(mesh.Points[point], near < 0 ? last : near / 3);
        if (on >= 0 && SamePlace(mesh.From(on), point)) return mesh.From(on);
        if (on >= 0 && SamePlace(mesh.To(on), point)) return mesh.To(on);
        if (on >= 0) SplitEdge(on, point);
        else SplitTriangle(triangle, point);
        last = mesh.Leaving(point) / 3;
        return point;
    }

    /// <summary>Whether flipping an edge makes the circles emptier, or the hull fuller.</summary>
    public bool WantsFlip(int edge)
    {
        if (mesh.IsForced(edge)) return false;
        var (a, b, p, d) = (mesh.From(edge), mesh.To(edge), mesh.Apex(edge), mesh.Apex(mesh.Twin(edge)));
        if (p < 0 || d < 0) return false;
        var points = mesh.Points;
        if (a < 0) return PlanTest.Turn(points[b], points[p], points[d]) > 0;
        if (b < 0) return PlanTest.Turn(points[a], points[d], points[p]) > 0;
        return PlanTest.InCircle(points[a], points[b], points[p], points[d]) > 0;
    }

    /// <summary>The first three points of an order that are not in one line become the first triangle and are moved to its front.</summary>
    private bool Begin(int[] order)
    {
        if (order.Length < 3) return false;
        for (var i = 2; i < order.Length; i++)
        {
            var turn = PlanTest.Turn(mesh.Points[order[0]], mesh.Points[order[1]], mesh.Points[order[i]]);
            if (turn == 0) continue;
            (order[2], order[i]) = (order[i], order[2]);
            if (turn > 0) mesh.Begin(order[0], order[1], order[2]);
            else mesh.Begin(order[1], order[0], order[2]);
            return true;
        }
        return false;
    }

    /// <summary>The triangle that holds a place, a ghost outside the hull, and the edge it lies on if it does.</summary>
    private (int Triangle, int OnEdge) Locate(in GroundPoint p, int triangle)
    {
        triangle = Real(triangle);
        var cameBy = -1;
        while (!mesh.IsGhost(triangle))
        {
            var (leave, on) = Way(p, triangle, cameBy);
            if (leave < 0) return (triangle, on);
            cameBy = mesh.Twin(leave);
            triangle = cameBy / 3;
        }
        return (triangle, -1);
    }

    /// <summary>The edge to leave a triangle by, or the edge the place lies on.</summary>
    private (int Leave, int On) Way(in GroundPoint p, int triangle, int cameBy)
    {
        var on = -1;
        // Starting with another edge each time keeps a walk among forced edges from going round in a circle.
        var edge = 3 * triangle + (int)(step++ % 3);
        for (var i = 0; i < 3; i++, edge = HalfEdges.Next(edge))
        {
            if (edge == cameBy) continue;
            var turn = PlanTest.Turn(mesh.Points[mesh.From(edge)], mesh.Points[mesh.To(edge)], p);
            if (turn < 0) return (edge, -1);
            if (turn == 0) on = edge;
        }
        return (-1, on);
    }

    private int Real(int triangle)
    {
        for (var edge = 3 * triangle; edge < 3 * triangle + 3; edge++)
            if (mesh.From(edge) >= 0 && mesh.To(edge) >= 0 && mesh.Apex(edge) < 0) return mesh.Twin(edge) / 3;
        return triangle;
    }

    private bool SamePlace(int vertex, int point)
    {
        var (p, q) = (mesh.Points[vertex], mesh.Points[point]);
        return p.East == q.East && p.North == q.North;
    }

    private void SplitTriangle(int triangle, int point)
    {
        var (first, second, third) = mesh.Split(triangle, point);
        doubtful.Push(first);
        doubtful.Push(second);
        doubtful.Push(third);
        Settle();
    }

    /// <summary>Splits one of the two triangles into three, one of them without area, and flips that one away.</summary>
    private void SplitEdge(int edge, int point)
    {
        var (stays, a, b) = (mesh.IsForced(edge), mesh.From(edge), mesh.To(edge));
        mesh.Force(edge, false);
        mesh.Split(edge / 3, point);
        mesh.Flip(mesh.Find(a, b));
        if (stays) ForceBoth(point, a, b);
        PushAround(point);
        Settle();
    }

    private void ForceBoth(int point, int a, int b)
    {
        mesh.Force(mesh.Find(point, a), true);
        mesh.Force(mesh.Find(point, b), true);
    }

    private void PushAround(int point)
    {
        var first = mesh.Leaving(point);
        var edge = first;
        do
        {
            doubtful.Push(HalfEdges.Next(edge));
            edge = mesh.Around(edge);
        }
        while (edge != first);
    }

    /// <summary>Flips until no edge across from the new point wants to be flipped.</summary>
    private void Settle()
    {
        while (doubtful.TryPop(out var edge))
        {
            if (!WantsFlip(edge)) continue;
            var back = mesh.Twin(edge);
            mesh.Flip(edge);
            doubtful.Push(edge);
            doubtful.Push(HalfEdges.Previous(back));
        }
    }
}
