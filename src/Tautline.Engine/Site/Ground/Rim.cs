namespace Tautline.Engine.Site.Ground;

/// <summary>Takes a finished triangulation's real triangles out of the mesh, after long thin ones at its rim were peeled off.</summary>
internal sealed class Rim
{
    private readonly HalfEdges mesh;
    private readonly bool[] outside;

    public Rim(HalfEdges mesh)
    {
        this.mesh = mesh;
        outside = new bool[mesh.TriangleCount];
        for (var t = 0; t < outside.Length; t++) outside[t] = mesh.IsGhost(t);
    }

    /// <summary>Takes away what has an outer edge longer than so many metres, unless that is a breakline, and again what this lays open.</summary>
    public void Peel(double longest)
    {
        var open = new Stack<int>();
        for (var e = 0; e < 3 * outside.Length; e++)
            if (!outside[e / 3] && outside[mesh.Twin(e) / 3]) open.Push(e);
        while (open.TryPop(out var edge))
        {
            if (outside[edge / 3] || mesh.IsForced(edge) || !IsLonger(edge, longest)) continue;
            outside[edge / 3] = true;
            for (var next = HalfEdges.Next(edge); next != edge; next = HalfEdges.Next(next)) open.Push(mesh.Twin(next));
        }
    }

    /// <summary>The triangles that are left, and the forced edges among them.</summary>
    public (TriangleSurface Surface, (int From, int To)[] Forced) Faces()
    {
        var number = new int[outside.Length];
        var count = 0;
        for (var t = 0; t < number.Length; t++) number[t] = outside[t] ? -1 : count++;
        var (corners, twins) = (new int[3 * count], new int[3 * count]);
        var forced = new List<(int From, int To)>();
        for (var e = 0; e < 3 * number.Length; e++)
        {
            if (number[e / 3] < 0) continue;
            var (slot, twin) = (3 * number[e / 3] + e % 3, mesh.Twin(e));
            corners[slot] = mesh.From(e);
            twins[slot] = number[twin / 3] < 0 ? -1 : 3 * number[twin / 3] + twin % 3;
            if (mesh.IsForced(e) && (twins[slot] < 0 || e < twin)) forced.Add((mesh.From(e), mesh.To(e)));
        }
        return (new TriangleSurface(Corners(), corners, twins, []), [.. forced]);
    }

    private GroundPoint[] Corners() => mesh.PointCount == mesh.Points.Length ? mesh.Points : mesh.Points[..mesh.PointCount];

    private bool IsLonger(int edge, double longest)
    {
        var (p, q) = (mesh.Points[mesh.From(edge)], mesh.Points[mesh.To(edge)]);
        var (east, north) = (q.East - p.East, q.North - p.North);
        return Math.Sqrt(east * east + north * north) > longest;
    }
}
