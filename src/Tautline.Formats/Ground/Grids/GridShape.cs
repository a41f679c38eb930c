namespace Tautline.Formats.Ground.Grids;

/// <summary>
/// Shape and place of a whole grid in the file's coordinates; row 0 is the northern one, and west and north are sides of its cells, not places of
/// heights.
/// </summary>
internal sealed record GridShape(int Rows, int Columns, double West, double North, double CellEast, double CellNorth)
{
    public GroundExtent Extent => new(West, North - Rows * CellNorth, West + Columns * CellEast, North);

    /// <summary>Whether all figures are numbers and the cells have a size.</summary>
    public bool IsSound => CellEast > 0 && CellNorth > 0 && Extent.East > West && Extent.South < North
        && double.IsFinite(Extent.West + Extent.East + Extent.South + Extent.North);
}

/// <summary>The rows and columns of a grid that are kept.</summary>
internal readonly record struct GridPart(int Row, int Column, int Rows, int Columns)
{
    public long Cells => (long)Rows * Columns;

    public int EndRow => Row + Rows;

    public int EndColumn => Column + Columns;

    public bool HoldsRow(int row) => row >= Row && row < EndRow;

    /// <summary>
    /// The part whose heights give ground everywhere within a window; all without one. Nothing where the two do not meet.
    /// </summary>
    public static GridPart Of(GridShape shape, GroundExtent? window)
    {
        if (window is not { } box) return new(0, 0, shape.Rows, shape.Columns);
        // Heights stand in the middle of cells, so half a cell more, and one more for what rounding does.
        var west = Whole((box.West - shape.West) / shape.CellEast - 1.5, shape.Columns);
        var east = Whole((box.East - shape.West) / shape.CellEast + 1.5, shape.Columns);
        var north = Whole((shape.North - box.North) / shape.CellNorth - 1.5, shape.Rows);
        var south = Whole((shape.North - box.South) / shape.CellNorth + 1.5, shape.Rows);
        return box.Meets(shape.Extent) ? new(north, west, south - north, east - west) : default;
    }

    private static int Whole(double cells, int most) => (int)Math.Clamp(Math.Floor(cells), 0, most);
}
