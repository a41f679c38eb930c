using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Site;

/// <summary>Makes a surface of the snapshot that a job keeps.</summary>
internal static class SurfaceReader
{
    private const int MostCells = 50_000_000;

    /// <summary>Nothing where the job keeps none, or where what it keeps was told to be unusable.</summary>
    public static IGroundSurface? Read(GroundSnapshot? snapshot, ProblemList problems)
    {
        if (snapshot is null) return null;
        if (!(snapshot.Width.Metres is > 0 and <= 10_000)) problems.Add(ProblemCode.SnapshotWidth, new("ground.width"), snapshot.Width);
        return snapshot.Grid is { } grid ? Grid(grid, problems) : Triangles(snapshot, problems);
    }

    private static TriangleSurface? Triangles(GroundSnapshot snapshot, ProblemList problems)
    {
        var count = snapshot.Points.Count / 3;
        if (snapshot.Points.Count % 3 != 0 || count < 3) return Unusable("ground.points", $"{snapshot.Points.Count} numbers; three for each of at least three points", problems);
        if (snapshot.Faces.Count % 3 != 0 || snapshot.Faces.Count == 0) return Unusable("ground.faces", $"{snapshot.Faces.Count} numbers; three for each face", problems);
        var wrong = snapshot.Faces.Where(f => f < 0 || f >= count).ToList();
        if (wrong.Count > 0) return Unusable("ground.faces", $"a point {wrong[0]}; they count from 0 to {count - 1}", problems);
        var points = new GroundPoint[count];
        for (var i = 0; i < count; i++) points[i] = new(snapshot.Points[3 * i], snapshot.Points[3 * i + 1], snapshot.Points[3 * i + 2]);
        return TriangleSurface.Of(points, snapshot.Faces);
    }

    private static TriangleSurface? Unusable(string path, string found, ProblemList problems)
    {
        problems.Add(ProblemCode.SnapshotBroken, new(path), found);
        return null;
    }

    private static GridSurface? Grid(GroundGrid grid, ProblemList problems)
    {
        if (!(grid is { Rows: > 1, Columns: > 1, CellEast: > 0 and < 1e6, CellNorth: > 0 and < 1e6 } && (long)grid.Rows * grid.Columns <= MostCells
              && Math.Abs(grid.West) <= GroundPoint.FurthestOut && Math.Abs(grid.North) <= GroundPoint.FurthestOut))
        {
            problems.Add(ProblemCode.SnapshotBroken, new("ground.grid"), $"{grid.Rows} rows of {grid.Columns} cells; at least two of each, of a size above zero");
            return null;
        }
        var heights = new double[grid.Rows * grid.Columns];
        Array.Fill(heights, double.NaN);
        for (var i = 0; i < grid.Parts.Count; i++)
            if (!Lay(grid.Parts[i], grid, heights))
            {
                problems.Add(ProblemCode.SnapshotBroken, new($"ground.grid.parts[{i}]"), $"row {grid.Parts[i].Row}, column {grid.Parts[i].Column} and {grid.Parts[i].Heights.Count} heights; they must lie within the grid");
                return null;
            }
        return new GridSurface(new GridFrame(grid.Rows, grid.Columns, grid.West, grid.North, grid.CellEast, grid.CellNorth, GridHeights.AtCentres), heights);
    }

    private static bool Lay(GroundGridPart part, GroundGrid grid, double[] heights)
    {
        if (part.Row < 0 || part.Row >= grid.Rows || part.Column < 0 || part.Column + part.Heights.Count > grid.Columns) return false;
        for (var i = 0; i < part.Heights.Count; i++) heights[part.Row * grid.Columns + part.Column + i] = part.Heights[i];
        return true;
    }
}
