namespace Tautline.Engine.Site.Ground;

/// <summary>A place on a piece of a path: part of the piece, 0 at its beginning and 1 at its end, and the height there.</summary>
internal readonly record struct PieceCut(double Part, double Height);

/// <summary>One straight piece of a path and how the edges of a surface cross it.</summary>
internal readonly struct PathPiece(PathPoint from, PathPoint to)
{
    /// <summary>Nearer to an end than this, in metres, is at the end.</summary>
    private const double AtEnd = 1e-9;

    private readonly double east = to.East - from.East;
    private readonly double north = to.North - from.North;

    public PathPoint From => from;

    public PathPoint To => to;

    /// <summary>Positive left of the line through the piece, zero exactly on it.</summary>
    public double Side(in GroundPoint p) => PlanTest.CloseTurn(from.East, from.North, to.East, to.North, p.East, p.North);

    public double StationAt(double part)
    {
        if (part == 1) return to.Station;
        return from.Station + part * (to.Station - from.Station);
    }

    /// <summary>A point of the surface that lies on the line.</summary>
    public PieceCut At(in GroundPoint p)
    {
        var square = east * east + north * north;
        var part = (east * (p.East - from.East) + north * (p.North - from.North)) / square;
        var length = Math.Sqrt(square);
        if (Math.Abs(part) * length < AtEnd) part = 0;
        if (Math.Abs(part - 1) * length < AtEnd) part = 1;
        return new(part, p.Height);
    }

    /// <summary>Where the line crosses an edge whose ends lie strictly on either side; bit for bit the same from both of its triangles.</summary>
    public PieceCut Across(in GroundPoint u, in GroundPoint v, double sideOfU, double sideOfV)
    {
        var inOrder = u.East < v.East || u.East == v.East && u.North < v.North;
        return inOrder
            ? At(GroundPoint.Between(u, v, sideOfU / (sideOfU - sideOfV)))
            : At(GroundPoint.Between(v, u, sideOfV / (sideOfV - sideOfU)));
    }

    /// <summary>The straight ground between two cuts, as far as the piece goes.</summary>
    public GroundSpan Span(PieceCut a, PieceCut b)
    {
        var whole = new GroundSpan(a.Part, b.Part, a.Height, b.Height).Within(0, 1);
        return whole with { From = StationAt(whole.From), To = StationAt(whole.To) };
    }
}
