namespace Tautline.Engine.Site.Ground;

/// <summary>A closed outline in plan. What it encloses an odd number of times is inside; its edges are on it.</summary>
internal sealed class PlanRing
{
    private readonly GroundPoint[] corners;
    private readonly PlanBox box;

    /// <param name="corners">At least three; the last is joined to the first.</param>
    public PlanRing(IReadOnlyList<PlanPoint> corners)
    {
        this.corners = [.. corners.Select(c => new GroundPoint(c.East, c.North, 0).Settled)];
        box = PlanBox.Of(this.corners);
    }

    /// <summary>1 inside, 0 on an edge, -1 outside.</summary>
    public int Holds(double east, double north)
    {
        if (east < box.West || east > box.East || north < box.South || north > box.North) return -1;
        var p = new GroundPoint(east, north, 0);
        var inside = false;
        for (int i = 0, last = corners.Length - 1; i < corners.Length; last = i++)
        {
            var (a, b) = (corners[last], corners[i]);
            if (IsOn(a, b, p)) return 0;
            if (a.North > north != b.North > north && PlanTest.Turn(a, b, p) > 0 == b.North > a.North) inside = !inside;
        }
        return inside ? 1 : -1;
    }

    /// <summary>Notes where a piece meets the outline, and which parts of it run along an edge.</summary>
    public void Meet(PathPiece piece, List<double> parts, List<(double From, double To)> along)
    {
        var reach = PlanBox.Of(new GroundPoint(piece.From.East, piece.From.North, 0), new(piece.To.East, piece.To.North, 0));
        if (reach.East < box.West || reach.West > box.East || reach.North < box.South || reach.South > box.North) return;
        for (int i = 0, last = corners.Length - 1; i < corners.Length; last = i++) Meet(piece, corners[last], corners[i], parts, along);
    }

    private static void Meet(PathPiece piece, in GroundPoint a, in GroundPoint b, List<double> parts, List<(double From, double To)> along)
    {
        var (ofA, ofB) = (piece.Side(a), piece.Side(b));
        if (PlanTest.Opposite(ofA, ofB)) parts.Add(piece.Across(a, b, ofA, ofB).Part);
        if (ofA == 0) parts.Add(piece.At(a).Part);
        if (ofA != 0 || ofB != 0) return;
        var (first, second) = (piece.At(a).Part, piece.At(b).Part);
        along.Add((Math.Min(first, second), Math.Max(first, second)));
    }

    private static bool IsOn(in GroundPoint a, in GroundPoint b, in GroundPoint p)
    {
        var edge = PlanBox.Of(a, b);
        return p.East >= edge.West && p.East <= edge.East && p.North >= edge.South && p.North <= edge.North && PlanTest.Turn(a, b, p) == 0;
    }
}
