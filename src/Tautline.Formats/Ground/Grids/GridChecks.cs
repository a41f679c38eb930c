using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Grids;

/// <summary>What must hold of a grid before memory is taken for it.</summary>
internal static class GridChecks
{
    /// <summary>Why the grid cannot be taken in; null when it can.</summary>
    public static Finding? Wrong(GridShape shape, GroundOptions options)
    {
        if (shape.Rows < 2 || shape.Columns < 2) return GridFindings.TooFewCells(shape.Rows, shape.Columns);
        if (!shape.IsSound) return GridFindings.NoPlace;
        var part = GridPart.Of(shape, options.Window);
        if (part.Cells == 0) return GridFindings.WindowOutside(options.Window ?? default, shape.Extent);
        return part.Cells > options.Limits.Cells ? GridFindings.TooManyCells(part.Rows, part.Columns, options.Limits.Cells, shape.Extent) : null;
    }
}
