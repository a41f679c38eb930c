using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site.Snapshot;

/// <summary>Cuts the ground near the lines of a job out of a surface, for the job to keep.</summary>
public static class SnapshotCutter
{
    /// <summary>Kept to a hundredth of a millimetre.</summary>
    private const int Digits = 5;

    /// <summary>The ground within a width of the lines; whole triangles and whole cells, so that a profile in the corridor is that of the surface.</summary>
    /// <param name="surface">Triangles or a grid, in the job's own metres.</param>
    /// <returns>Nothing where none of the ground is near a line.</returns>
    /// <exception cref="ArgumentException">The surface is of another kind.</exception>
    public static GroundSnapshot? Cut(IGroundSurface surface, Job job, Length width, GroundSource source)
    {
        var near = new NearLines(LineWay.Of(job), width.Metres);
        return surface switch
        {
            TriangleSurface triangles => Faces(triangles, near, width, source),
            GridSurface grid => Cells(grid, LineWay.Of(job), width, source),
            _ => throw new ArgumentException("A surface is of triangles or a grid.", nameof(surface)),
        };
    }

    private static GroundSnapshot? Faces(TriangleSurface surface, NearLines near, Length width, GroundSource source)
    {
        List<double> points = [];
        List<int> faces = [];
        Dictionary<int, int> kept = [];
        for (var f = 0; f < surface.FaceCount; f++)
        {
            var corners = surface.Corners.Slice(3 * f, 3);
            if (!near.Touches(surface.Points[corners[0]], surface.Points[corners[1]], surface.Points[corners[2]])) continue;
            foreach (var corner in corners) faces.Add(Keep(surface.Points[corner], corner, kept, points));
        }
        return faces.Count == 0 ? null : new GroundSnapshot { Source = source, Width = width, Points = points, Faces = faces };
    }

    private static int Keep(in GroundPoint point, int number, Dictionary<int, int> kept, List<double> points)
    {
        if (kept.TryGetValue(number, out var at)) return at;
        points.AddRange([Rounded(point.East), Rounded(point.North), Rounded(point.Height)]);
        return kept[number] = kept.Count;
    }

    private static GroundSnapshot? Cells(GridSurface surface, IEnumerable<GroundPath> paths, Length width, GroundSource source)
    {
        var frame = surface.Frame;
        var first = frame.At(0, 0);
        // A place between four heights needs all four: one cell's diagonal more.
        var reach = width.Metres + Math.Sqrt(frame.CellEast * frame.CellEast + frame.CellNorth * frame.CellNorth);
        var near = new NearLines(paths, reach);
        SortedSet<(int Row, int Column)> cells = [];
        foreach (var (west, south, east, north) in near.Fields)
            Gather(surface, near, Clamped((first.North - north) / frame.CellNorth, frame.Rows), Clamped((first.North - south) / frame.CellNorth + 1, frame.Rows),
                Clamped((west - first.East) / frame.CellEast, frame.Columns), Clamped((east - first.East) / frame.CellEast + 1, frame.Columns), cells);
        if (cells.Count == 0) return null;
        return new GroundSnapshot { Source = source, Width = width, Grid = Grid(surface, cells) };
    }

    private static int Clamped(double index, int count) => (int)Math.Clamp(Math.Floor(index), 0, count - 1);

    private static void Gather(GridSurface surface, NearLines near, int top, int bottom, int left, int right, SortedSet<(int Row, int Column)> cells)
    {
        for (var row = top; row <= bottom; row++)
            for (var column = left; column <= right; column++)
            {
                var at = surface.Frame.At(row, column);
                if (near.Holds(at.East, at.North) && surface.HeightOf(row, column) is not null) cells.Add((row, column));
            }
    }

    /// <summary>The smallest grid that holds the cells, and in it the stretches of its rows.</summary>
    private static GroundGrid Grid(GridSurface surface, SortedSet<(int Row, int Column)> cells)
    {
        var frame = surface.Frame;
        var (top, left) = (cells.Min.Row, cells.Min(c => c.Column));
        var corner = frame.At(top, left);
        List<GroundGridPart> parts = [];
        List<double> heights = [];
        var (row, column) = cells.Min;
        foreach (var cell in cells)
        {
            if (cell.Row != row || cell.Column != column + heights.Count)
            {
                parts.Add(new GroundGridPart { Row = row - top, Column = column - left, Heights = heights });
                (row, column, heights) = (cell.Row, cell.Column, []);
            }
            heights.Add(Rounded(surface.HeightOf(cell.Row, cell.Column)!.Value));
        }
        parts.Add(new GroundGridPart { Row = row - top, Column = column - left, Heights = heights });
        return new GroundGrid
        {
            Rows = Math.Max(2, cells.Max.Row - top + 1),
            Columns = Math.Max(2, cells.Max(c => c.Column) - left + 1),
            West = corner.East - frame.CellEast / 2,
            North = corner.North + frame.CellNorth / 2,
            CellEast = frame.CellEast,
            CellNorth = frame.CellNorth,
            Parts = parts,
        };
    }

    private static double Rounded(double metres) => Math.Round(metres, Digits);
}
