namespace Tautline.Engine.Site.Ground;

/// <summary>
/// The triangles that a straight piece crosses on its way from one corner to another, laid anew so that the piece is an edge. Every corner on
/// either side sees the piece along an edge that crosses it, and an area that is seen from one of its edges can be cut into triangles by going round
/// it once and cutting off every corner that turns left (Toussaint and Avis 1982). So this ends, whatever the points; circles are not looked at.
/// </summary>
internal sealed class Corridor(HalfEdges mesh)
{
    private readonly List<Wall> right = [];
    private readonly List<Wall> left = [];
    private readonly Queue<int> free = new();
    private readonly List<(int Corner, int Edge)> chain = [];
    private readonly Dictionary<int, int> laid = [];

    /// <summary>Lays the triangles anew.</summary>
    /// <param name="crossed">The edges across the piece in order, each seen from the side the piece comes from.</param>
    /// <param name="made">Gets the numbers of the new triangles.</param>
    /// <returns>The half-edge along the piece.</returns>
    public int Lay(List<int> crossed, List<int> made)
    {
        Survey(crossed);
        made.Clear();
        made.AddRange(free);
        var back = Fill(right);
        left.Reverse();
        var ahead = Fill(left);
        mesh.Join(ahead, back, false);
        foreach (var wall in right) Close(wall);
        foreach (var wall in left) Close(wall);
        return ahead;
    }

    /// <summary>Notes the walls on either side and the triangles between, before any of them is overwritten.</summary>
    private void Survey(List<int> crossed)
    {
        right.Clear();
        left.Clear();
        laid.Clear();
        right.Add(At(HalfEdges.Previous(crossed[0])));
        left.Add(At(HalfEdges.Next(crossed[0])));
        free.Enqueue(crossed[0] / 3);
        for (var i = 0; i < crossed.Count; i++)
        {
            var back = mesh.Twin(crossed[i]);
            var (toFar, fromFar) = (HalfEdges.Next(back), HalfEdges.Previous(back));
            var ahead = i + 1 < crossed.Count ? crossed[i + 1] : -1;
            if (ahead != toFar) right.Add(At(toFar));
            if (ahead != fromFar) left.Add(At(fromFar));
            free.Enqueue(back / 3);
        }
    }

    private Wall At(int edge) => new(edge, mesh.From(edge), mesh.To(edge), mesh.Twin(edge), mesh.IsForced(edge));

    /// <summary>Cuts the area between walls and the piece into triangles.</summary>
    /// <returns>The half-edge that closes it along the piece.</returns>
    private int Fill(List<Wall> walls)
    {
        chain.Clear();
        chain.Add((walls[0].From, 0));
        // Each entry has the edge that leads to it: a wall as its complement, else the outer side of a triangle already laid.
        foreach (var wall in walls)
        {
            chain.Add((wall.To, ~wall.Edge));
            while (chain.Count > 2 && TurnsLeft()) CutCorner();
        }
        return chain[1].Edge;
    }

    private bool TurnsLeft()
    {
        var points = mesh.Points;
        return PlanTest.Turn(points[chain[^3].Corner], points[chain[^2].Corner], points[chain[^1].Corner]) > 0;
    }

    private void CutCorner()
    {
        var (a, b, c) = (chain[^3].Corner, chain[^2], chain[^1]);
        var edge = mesh.Replace(free.Dequeue(), a, b.Corner, c.Corner);
        Attach(edge, b.Edge);
        Attach(edge + 1, c.Edge);
        chain.RemoveRange(chain.Count - 2, 2);
        chain.Add((c.Corner, edge + 2));
    }

    private void Attach(int edge, int other)
    {
        if (other < 0) laid[~other] = edge;
        else mesh.Join(edge, other, false);
    }

    /// <summary>Joins a wall to what lies beyond it: a triangle outside, or another wall where both sides of an edge are in the corridor.</summary>
    private void Close(Wall wall) => mesh.Join(laid[wall.Edge], laid.GetValueOrDefault(wall.Beyond, wall.Beyond), wall.Forced);

    /// <summary>An edge of the corridor's rim as it was, the corridor on its left.</summary>
    private readonly record struct Wall(int Edge, int From, int To, int Beyond, bool Forced);
}
