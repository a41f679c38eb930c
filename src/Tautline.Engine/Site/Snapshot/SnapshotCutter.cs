using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site.Snapshot;

/// <summary>Cuts the ground near the lines of a job out of a surface, for the job to keep.</summary>
public static class SnapshotCutter
{
    /// <summary>Kept to a hundredth of a millimetre.</summary>
    private const int Digits = 5;

    /// <summary>
    /// The ground within a width of the lines. Of triangles and grids whole triangles and cells are kept, so that a profile in the corridor is that of the
    /// surface; any other surface, such as a grid of another map, is read off anew in cells of the job's own.
    /// </summary>
    /// <param name="surface">In the job's own metres.</param>
    /// <param name="cell">Size of a cell where the surface is read off anew, metres, above zero.</param>
    /// <returns>Nothing where none of the ground is near a line.</returns>
    public static GroundSnapshot? Cut(IGroundSurface surface, Job job, Length width, GroundSource source, double cell = 0.5) => surface switch
    {
        TriangleSurface triangles => Faces(triangles, new NearLines(LineWay.Of(job), width.Metres), width, source),
        GridSurface grid => Cells(grid.Frame, grid.HeightOf, LineWay.Of(job), width, source),
        _ => Sampled(surface, LineWay.Of(job), width, source, cell),
    };

    private static GroundSnapshot? Sampled(IGroundSurface surface, IEnumerable<GroundPath> paths, Length width, GroundSource source, double cell)
    {
        var ways = paths.ToList();
        var points = ways.SelectMany(w => w.Points).ToList();
        if (points.Count == 0) return null;
        var reach = width.Metres + 2 * cell;
        var (west, north) = (Math.Floor((points.Min(p => p.East) - reach) / cell) * cell, Math.Ceiling((points.Max(p => p.North) + reach) / cell) * cell);
        var columns = (int)Math.Min(int.MaxValue / 2, Math.Ceiling((points.Max(p => p.East) + reach - west) / cell) + 1);
        var rows = (int)Math.Min(int.MaxValue / 2, Math.Ceiling((north - points.Min(p => p.North) + reach) / cell) + 1);
        var frame = new GridFrame(rows, columns, west, north, cell, cell, GridHeights.AtCentres);
        return Cells(frame, Height, ways, width, source);

        double? Height(int row, int column) => frame.At(row, column) is var at ? surface.HeightAt(at.East, at.North) : null;
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

    private static GroundSnapshot? Cells(
        GridFrame frame, Func<int, int, double?> heightOf, IEnumerable<GroundPath> paths, Length width, GroundSource source)
    {
        var first = frame.At(0, 0);
        // A place between four heights needs all four: one cell's diagonal more.
        var reach = width.Metres + Math.Sqrt(frame.CellEast * frame.CellEast + frame.CellNorth * frame.CellNorth);
        var near = new NearLines(paths, reach);
        SortedDictionary<(int Row, int Column), double> cells = [];
        foreach (var (west, south, east, north) in near.Fields)
            Gather(frame, heightOf, near, Clamped((first.North - north) / frame.CellNorth, frame.Rows), Clamped((first.North - south) / frame.CellNorth + 1, frame.Rows),
                Clamped((west - first.East) / frame.CellEast, frame.Columns), Clamped((east - first.East) / frame.CellEast + 1, frame.Columns), cells);
        if (cells.Count == 0) return null;
        return new GroundSnapshot { Source = source, Width = width, Grid = Grid(frame, cells) };
    }

    private static int Clamped(double index, int count) => (int)Math.Clamp(Math.Floor(index), 0, count - 1);

    private static void Gather(
        GridFrame frame, Func<int, int, double?> heightOf, NearLines near, int top, int bottom, int left, int right,
        SortedDictionary<(int Row, int Column), double> cells)
    {
        for (var row = top; row <= bottom; row++)
            for (var column = left; column <= right; column++)
            {
                var at = frame.At(row, column);
                if (near.Holds(at.East, at.North) && heightOf(row, column) is { } height) cells[(row, column)] = Rounded(height);
            }
    }

    /// <summary>The smallest grid that holds the cells, and in it the stretches of its rows.</summary>
    private static GroundGrid Grid(GridFrame frame, SortedDictionary<(int Row, int Column), double> cells)
    {
        var (first, last) = (cells.Keys.First(), cells.Keys.Last());
        var (top, left) = (first.Row, cells.Keys.Min(c => c.Column));
        var corner = frame.At(top, left);
        List<GroundGridPart> parts = [];
        List<double> heights = [];
        var (row, column) = first;
        foreach (var (cell, height) in cells)
        {
            if (cell.Row != row || cell.Column != column + heights.Count)
            {
                parts.Add(new GroundGridPart { Row = row - top, Column = column - left, Heights = heights });
                (row, column, heights) = (cell.Row, cell.Column, []);
            }
            heights.Add(height);
        }
        parts.Add(new GroundGridPart { Row = row - top, Column = column - left, Heights = heights });
        return new GroundGrid
        {
            Rows = Math.Max(2, last.Row - top + 1),
            Columns = Math.Max(2, cells.Keys.Max(c => c.Column) - left + 1),
            West = corner.East - frame.CellEast / 2,
            North = corner.North + frame.CellNorth / 2,
            CellEast = frame.CellEast,
            CellNorth = frame.CellNorth,
            Parts = parts,
        };
    }

    private static double Rounded(double metres) => Math.Round(metres, Digits);
}
