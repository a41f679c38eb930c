using Tautline.Formats.Import;
using static Tautline.Formats.Ground.GroundFindings;
using static Tautline.Formats.Import.ProblemSeverity;

namespace Tautline.Formats.Ground.Grids;

/// <summary>What the readers of both kinds of grid can say.</summary>
internal static class GridFindings
{
    public static Finding TooFewCells(long rows, long columns) => new(
        Error, "TooFewCells",
        Text($"The grid has {Count(rows, "row", "rows")} and {Count(columns, "column", "columns")}. Ground lies between four heights, so two of each are the least."),
        "Check that the right part was cut out.");

    public static Finding TooManyCells(long rows, long columns, int most, GroundExtent extent) => new(
        Error, "TooManyCells",
        Text($"{rows:N0} rows of {columns:N0} columns are {rows * columns:N0} heights; at most {most:N0} are held at once. They cover {extent}."),
        "State the window that is wanted, around the site.");

    public static Finding WindowOutside(GroundExtent window, GroundExtent grid) => new(
        Error, "WindowOutside", $"The window {window} does not meet the grid, {grid}.", "State it in the file's own coordinates.");

    public static readonly Finding NoPlace = new(
        Error, "NoPlace",
        "The corner or the size of the cells is not a number above zero, or so large that the grid has no place.",
        "Check the header.");

    public static Finding Grid(GridContent grid) => new(
        Information, "Grid",
        Text($"{Count(grid.Rows, "row", "rows")} of {Count(grid.Columns, "column", "columns")}, cells {grid.CellEast:0.######} by {grid.CellNorth:0.######}; {grid.Valid:N0} of {(long)grid.Rows * grid.Columns:N0} have a height{(grid.Valid > 0 ? Text($", {grid.Lowest:0.####} to {grid.Highest:0.####}") : "")}."));

    public static readonly Finding NoHeights = new(Error, "NoHeights", "No cell has a height.", "Check the mark of cells without ground.");
}
