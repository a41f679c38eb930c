using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site.Snapshot;

/// <summary>Tells what lies within a distance of some paths. The paths are cut short and laid in square fields, so that a look goes to few pieces.</summary>
internal sealed class NearLines
{
    private readonly record struct Piece(double FromEast, double FromNorth, double ToEast, double ToNorth);

    private readonly Dictionary<(long Column, long Row), List<Piece>> fields = [];
    private readonly double width;
    private readonly double side;

    /// <param name="width">Metres, above zero.</param>
    public NearLines(IEnumerable<GroundPath> paths, double width)
    {
        (this.width, side) = (width, Math.Max(10, 2 * width));
        foreach (var path in paths)
            for (var i = 1; i < path.Points.Count; i++) Lay(path.Points[i - 1], path.Points[i]);
    }

    /// <summary>Corners of boxes that together hold everything near, each no larger than a few fields.</summary>
    public IEnumerable<(double West, double South, double East, double North)> Fields
        => fields.Keys.Select(k => (k.Column * side, k.Row * side, (k.Column + 1) * side, (k.Row + 1) * side));

    public bool Holds(double east, double north)
    {
        if (!fields.TryGetValue((Index(east), Index(north)), out var pieces)) return false;
        foreach (var piece in pieces)
            if (Distance(piece, east, north) <= width) return true;
        return false;
    }

    /// <summary>Whether a triangle comes near.</summary>
    public bool Touches(in GroundPoint a, in GroundPoint b, in GroundPoint c)
    {
        var (west, east) = (Index(Math.Min(a.East, Math.Min(b.East, c.East))), Index(Math.Max(a.East, Math.Max(b.East, c.East))));
        var (south, north) = (Index(Math.Min(a.North, Math.Min(b.North, c.North))), Index(Math.Max(a.North, Math.Max(b.North, c.North))));
        if ((double)(east - west + 1) * (north - south + 1) > fields.Count)
        {
            foreach (var pieces in fields.Values)
                if (Touches(pieces, a, b, c)) return true;
            return false;
        }
        for (var column = west; column <= east; column++)
            for (var row = south; row <= north; row++)
                if (fields.TryGetValue((column, row), out var pieces) && Touches(pieces, a, b, c)) return true;
        return false;
    }

    private bool Touches(List<Piece> pieces, in GroundPoint a, in GroundPoint b, in GroundPoint c)
    {
        foreach (var piece in pieces)
            if (Inside(piece.FromEast, piece.FromNorth, a, b, c) || Nears(piece, a, b) || Nears(piece, b, c) || Nears(piece, c, a)) return true;
        return false;
    }

    /// <summary>Two straight pieces are nearest at an end of one of them, or cross.</summary>
    private bool Nears(Piece piece, in GroundPoint a, in GroundPoint b)
    {
        var edge = new Piece(a.East, a.North, b.East, b.North);
        return Distance(piece, a.East, a.North) <= width || Distance(piece, b.East, b.North) <= width
            || Distance(edge, piece.FromEast, piece.FromNorth) <= width || Distance(edge, piece.ToEast, piece.ToNorth) <= width || Cross(piece, edge);
    }

    private static bool Cross(Piece p, Piece q)
        => Side(p, q.FromEast, q.FromNorth) * Side(p, q.ToEast, q.ToNorth) < 0 && Side(q, p.FromEast, p.FromNorth) * Side(q, p.ToEast, p.ToNorth) < 0;

    private static bool Inside(double east, double north, in GroundPoint a, in GroundPoint b, in GroundPoint c)
    {
        var (s, t, u) = (
            Side(new(a.East, a.North, b.East, b.North), east, north), Side(new(b.East, b.North, c.East, c.North), east, north),
            Side(new(c.East, c.North, a.East, a.North), east, north));
        return (s >= 0 && t >= 0 && u >= 0) || (s <= 0 && t <= 0 && u <= 0);
    }

    private static double Side(Piece p, double east, double north)
        => (p.ToEast - p.FromEast) * (north - p.FromNorth) - (p.ToNorth - p.FromNorth) * (east - p.FromEast);

    private static double Distance(Piece piece, double east, double north)
    {
        var (dx, dy) = (piece.ToEast - piece.FromEast, piece.ToNorth - piece.FromNorth);
        var square = dx * dx + dy * dy;
        var part = square == 0 ? 0 : Math.Clamp(((east - piece.FromEast) * dx + (north - piece.FromNorth) * dy) / square, 0, 1);
        var (x, y) = (east - piece.FromEast - part * dx, north - piece.FromNorth - part * dy);
        return Math.Sqrt(x * x + y * y);
    }

    private void Lay(PathPoint from, PathPoint to)
    {
        var (dx, dy) = (to.East - from.East, to.North - from.North);
        var parts = (int)Math.Clamp(Math.Ceiling(Math.Sqrt(dx * dx + dy * dy) / side), 1, 10_000_000);
        for (var i = 0; i < parts; i++)
            Lay(new Piece(
                from.East + dx * i / parts, from.North + dy * i / parts, from.East + dx * (i + 1) / parts, from.North + dy * (i + 1) / parts));
    }

    private void Lay(Piece piece)
    {
        var (west, east) = (Index(Math.Min(piece.FromEast, piece.ToEast) - width), Index(Math.Max(piece.FromEast, piece.ToEast) + width));
        var (south, north) = (Index(Math.Min(piece.FromNorth, piece.ToNorth) - width), Index(Math.Max(piece.FromNorth, piece.ToNorth) + width));
        for (var column = west; column <= east; column++)
            for (var row = south; row <= north; row++)
            {
                if (!fields.TryGetValue((column, row), out var pieces)) fields[(column, row)] = pieces = [];
                pieces.Add(piece);
            }
    }

    private long Index(double metres) => (long)Math.Floor(metres / side);
}
