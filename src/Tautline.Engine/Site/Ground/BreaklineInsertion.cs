namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Makes breaklines edges of a Delaunay triangulation: the triangles a piece crosses are laid anew on either side of it, then edges are flipped until
/// every circle is empty but for what lies behind a forced edge.
/// </summary>
internal sealed class BreaklineInsertion(HalfEdges mesh, PointInsertion insertion, GroundFindings findings)
{
    /// <summary>Two lines that differ by no more than this where they cross are at one height, in metres.</summary>
    public const double SameHeight = 0.001;

    /// <summary>A point nearer to a piece than this is on it, in metres; without it lines that nearly coincide would cross over and over.</summary>
    private const double OnLine = 1e-6;

    /// <summary>A piece that came of this many others, each moved by rounding where it was cut, is left out where it is to be cut again.</summary>
    private const int MostCuts = 8;

    private readonly Stack<(int From, int To, int Cuts)> open = new();
    private readonly Corridor corridor = new(mesh);
    private readonly List<int> crossed = [];
    private readonly List<int> made = [];
    private readonly Stack<(int From, int To)> doubtful = new();

    /// <summary>Forces the straight piece between two points of the triangulation.</summary>
    public void Insert(int from, int to)
    {
        open.Push((from, to, 0));
        while (open.TryPop(out var piece))
            if (piece.From != piece.To) Advance(piece.From, piece.To, piece.Cuts);
    }

    /// <summary>Forces the part of a piece up to the first point on it, and leaves the rest open.</summary>
    private void Advance(int from, int to, int cuts)
    {
        crossed.Clear();
        var (edge, reached) = FirstStep(from, to);
        while (reached < 0)
        {
            if (Passes(from, to, mesh.From(edge), cuts) || Passes(from, to, mesh.To(edge), cuts)) return;
            if (mesh.IsForced(edge))
            {
                Cross(from, to, edge, cuts);
                return;
            }
            crossed.Add(edge);
            (edge, reached) = NextStep(from, to, edge);
        }
        if (reached != to) CheckHeight(from, to, reached);
        Clear(from, reached);
        open.Push((reached, to, cuts));
    }

    /// <summary>Leads a piece through a point that it all but touches.</summary>
    private bool Passes(int from, int to, int point, int cuts)
    {
        var (p, q, w) = (mesh.Points[from], mesh.Points[to], mesh.Points[point]);
        var length = Distance(p, q);
        if (point == to || Math.Abs(Side(p, q, point)) > OnLine * length) return false;
        // Both parts are shorter than the whole, so this ends.
        var part = PartAlong(p, q, w) * length;
        if (part < 3 * OnLine || part > length - 3 * OnLine) return false;
        CheckHeight(from, to, point);
        open.Push((point, to, cuts));
        open.Push((from, point, cuts));
        return true;
    }

    /// <summary>The edge across the way out of a point, seen from it, or the point that its triangles already reach.</summary>
    private (int Edge, int Reached) FirstStep(int from, int to)
    {
        var (p, q) = (mesh.Points[from], mesh.Points[to]);
        var edge = mesh.Leaving(from);
        while (true)
        {
            var (right, left) = (mesh.To(edge), mesh.Apex(edge));
            var side = Side(p, q, right);
            if (side == 0 && IsAhead(p, q, right)) return (-1, right);
            if (side < 0 && Side(p, q, left) > 0) return (HalfEdges.Next(edge), -1);
            edge = mesh.Around(edge);
        }
    }

    /// <summary>Across an edge into the next triangle: the edge to leave it by, or its far corner if that is on the way.</summary>
    private (int Edge, int Reached) NextStep(int from, int to, int edge)
    {
        var back = mesh.Twin(edge);
        var far = mesh.Apex(back);
        var side = Side(mesh.Points[from], mesh.Points[to], far);
        if (side == 0) return (-1, far);
        return (side > 0 ? HalfEdges.Next(back) : HalfEdges.Previous(back), -1);
    }

    /// <summary>Positive left; the ghost is on no side.</summary>
    private double Side(in GroundPoint p, in GroundPoint q, int point) => point < 0 ? double.NaN : PlanTest.Turn(p, q, mesh.Points[point]);

    private bool IsAhead(in GroundPoint p, in GroundPoint q, int point)
    {
        var w = mesh.Points[point];
        return (q.East - p.East) * (w.East - p.East) + (q.North - p.North) * (w.North - p.North) > 0;
    }

    private void CheckHeight(int from, int to, int reached)
    {
        var (p, q, w) = (mesh.Points[from], mesh.Points[to], mesh.Points[reached]);
        var height = GroundPoint.Between(p, q, PartAlong(p, q, w)).Height;
        if (Math.Abs(height - w.Height) > SameHeight) findings.Add(GroundFindingKind.PointOnBreakline, w, w.Height, height);
    }

    /// <summary>A piece meets an earlier one: joined where their heights agree, left out where not.</summary>
    private void Cross(int from, int to, int edge, int cuts)
    {
        var (u, v) = (mesh.From(edge), mesh.To(edge));
        var (p, q) = (mesh.Points[from], mesh.Points[to]);
        var (right, left) = (Side(p, q, u), Side(p, q, v));
        var at = GroundPoint.Between(mesh.Points[u], mesh.Points[v], right / (right - left)).Settled;
        var height = GroundPoint.Between(p, q, PartAlong(p, q, at)).Height;
        var agree = cuts < MostCuts && Math.Abs(height - at.Height) <= SameHeight;
        findings.Add(agree ? GroundFindingKind.BreaklinesJoined : GroundFindingKind.BreaklinesCross, at, at.Height, height);
        if (agree) Join(from, to, edge, at, cuts);
    }

    /// <summary>
    /// Both pieces from now on pass through one point. Rounding may put it beside the earlier one, so that one is taken up and laid again.
    /// </summary>
    private void Join(int from, int to, int edge, in GroundPoint at, int cuts)
    {
        var (u, v) = (mesh.From(edge), mesh.To(edge));
        mesh.Force(edge, false);
        var middle = Near(from, at) ? from : Near(to, at) ? to : insertion.Insert(mesh.AddPoint(at), edge);
        // The rest of the piece has not been looked at yet: it may meet any number of others.
        open.Push((middle, to, middle == from ? cuts + 1 : cuts));
        open.Push((from, middle, cuts + 1));
        open.Push((middle, v, cuts + 1));
        open.Push((u, middle, cuts + 1));
    }

    private bool Near(int point, in GroundPoint at) => Distance(mesh.Points[point], at) < 2 * OnLine;

    private static double Distance(in GroundPoint p, in GroundPoint q)
    {
        var (east, north) = (q.East - p.East, q.North - p.North);
        return Math.Sqrt(east * east + north * north);
    }

    private static double PartAlong(in GroundPoint p, in GroundPoint q, in GroundPoint at)
    {
        var (east, north) = (q.East - p.East, q.North - p.North);
        return (east * (at.East - p.East) + north * (at.North - p.North)) / (east * east + north * north);
    }

    /// <summary>Makes a piece that meets no point and no forced edge an edge, and forces it.</summary>
    private void Clear(int from, int to)
    {
        mesh.Force(crossed.Count == 0 ? mesh.Find(from, to) : corridor.Lay(crossed, made), true);
        if (crossed.Count == 0) return;
        foreach (var triangle in made)
            for (var edge = 3 * triangle; edge < 3 * triangle + 3; edge++) doubtful.Push((mesh.From(edge), mesh.To(edge)));
        Settle();
    }

    private void Settle()
    {
        while (doubtful.TryPop(out var pair))
        {
            var edge = mesh.Find(pair.From, pair.To);
            if (edge < 0 || !insertion.WantsFlip(edge)) continue;
            var (u, v, near, far) = (mesh.From(edge), mesh.To(edge), mesh.Apex(edge), mesh.Apex(mesh.Twin(edge)));
            mesh.Flip(edge);
            doubtful.Push((u, far));
            doubtful.Push((far, v));
            doubtful.Push((v, near));
            doubtful.Push((near, u));
        }
    }
}
