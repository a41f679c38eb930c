namespace Tautline.Engine.Site.Ground;

/// <summary>Takes the profile of a grid along one straight piece of a path after the other.</summary>
internal sealed class GridCrossings(GridSurface grid)
{
    /// <summary>Shorter pieces than this, in metres, are left out; the profile closes over them.</summary>
    private const double Shortest = 1e-9;

    private readonly List<double> cuts = [];

    public void Along(PathPiece piece, ProfileBuilder profile)
    {
        var way = new Way(grid.Frame, piece);
        cuts.Clear();
        cuts.AddRange([0, 1]);
        CutAt(way.Column, way.Columns, grid.Frame.Columns);
        CutAt(way.Row, way.Rows, grid.Frame.Rows);
        cuts.Sort();
        var length = piece.To.Station - piece.From.Station;
        var from = cuts[0];
        foreach (var to in cuts)
        {
            if ((to - from) * length < Shortest && to < 1) continue;
            var middle = (from + to) / 2;
            if (to > from && grid.PatchAt(way.ColumnAt(middle), way.RowAt(middle)) is { } patch) Within(patch, way, piece, from, to, profile);
            from = to;
        }
    }

    /// <summary>Cuts the piece at every line of heights in one direction.</summary>
    private void CutAt(double start, double span, int lines)
    {
        if (span == 0) return;
        var (low, high) = (Math.Max(0, Math.Min(start, start + span)), Math.Min(lines - 1, Math.Max(start, start + span)));
        for (var line = Math.Ceiling(low); line <= high; line++)
            if ((line - start) / span is > 0 and < 1 and var part) cuts.Add(part);
    }

    private static void Within(GridPatch patch, Way way, PathPiece piece, double from, double to, ProfileBuilder profile)
    {
        var (rise, later) = (way.Rise(patch, from), way.Rise(patch, to));
        if (PlanTest.Opposite(rise, later))
        {
            var turning = from + (to - from) * (rise / (rise - later));
            Divide(patch, way, piece, from, turning, profile);
            from = turning;
        }
        Divide(patch, way, piece, from, to, profile);
    }

    /// <summary>Along a straight way the ground is a parabola a + bt + ct^2; its chord over a length s of t is at most |c| s^2/4 off.</summary>
    private static void Divide(GridPatch patch, Way way, PathPiece piece, double from, double to, ProfileBuilder profile)
    {
        var off = Math.Abs(patch.Twist * way.Columns * way.Rows) * (to - from) * (to - from) / 4;
        var parts = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(off / GridSurface.ProfileTolerance)));
        var last = from;
        for (var i = 1; i <= parts; i++)
        {
            var next = i == parts ? to : from + (to - from) * i / parts;
            if (piece.StationAt(next) > piece.StationAt(last))
                profile.Add(new(piece.StationAt(last), piece.StationAt(next), way.Height(patch, last), way.Height(patch, next)));
            last = next;
        }
    }

    /// <summary>A piece counted in columns and rows.</summary>
    private readonly struct Way(GridFrame frame, PathPiece piece)
    {
        public double Column { get; } = frame.Column(piece.From.East);

        public double Row { get; } = frame.Row(piece.From.North);

        public double Columns { get; } = frame.Column(piece.To.East) - frame.Column(piece.From.East);

        public double Rows { get; } = frame.Row(piece.To.North) - frame.Row(piece.From.North);

        public double ColumnAt(double part) => Column + part * Columns;

        public double RowAt(double part) => Row + part * Rows;

        public double Height(GridPatch patch, double part) => patch.At(ColumnAt(part), RowAt(part));

        public double Rise(GridPatch patch, double part) => patch.Rise(ColumnAt(part), RowAt(part), Columns, Rows);
    }
}
