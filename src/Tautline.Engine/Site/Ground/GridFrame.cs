namespace Tautline.Engine.Site.Ground;

/// <summary>Where the heights of a grid stand.</summary>
public enum GridHeights
{
    /// <summary>In the middle of each cell: the frame's corner is half a cell outside the first height.</summary>
    AtCentres,

    /// <summary>At the corners of the cells: the first height stands on the frame's corner.</summary>
    AtCorners,
}

/// <summary>The shape and place of a grid of heights. Row 0 is the northern one, column 0 the western one.</summary>
/// <param name="Rows">At least one.</param>
/// <param name="Columns">At least one.</param>
/// <param name="West">Of the frame's western side, in metres.</param>
/// <param name="North">Of the frame's northern side, in metres.</param>
/// <param name="CellEast">Size of a cell from west to east, in metres, above zero.</param>
/// <param name="CellNorth">Size of a cell from south to north, in metres, above zero.</param>
public sealed record GridFrame(int Rows, int Columns, double West, double North, double CellEast, double CellNorth, GridHeights Heights)
{
    private double Inset => Heights == GridHeights.AtCentres ? 0.5 : 0;

    /// <summary>The place of a height.</summary>
    public PlanPoint At(int row, int column) => new(West + (column + Inset) * CellEast, North - (row + Inset) * CellNorth);

    /// <summary>A place counted in columns from the first height.</summary>
    internal double Column(double east) => Nodes.Snap((east - West) / CellEast - Inset);

    /// <summary>A place counted in rows from the first height.</summary>
    internal double Row(double north) => Nodes.Snap((North - north) / CellNorth - Inset);

    internal void Check(int heights)
    {
        if (Rows < 1 || Columns < 1 || (long)Rows * Columns != heights)
            throw new ArgumentException($"{Rows} rows of {Columns} columns do not hold {heights} heights", nameof(heights));
        if (!(CellEast > 0 && CellNorth > 0 && double.IsFinite(CellEast + CellNorth + West + North)))
            throw new ArgumentException($"a grid needs cells of a size above zero and a place: {this}", nameof(heights));
    }

    /// <summary>Counting in cells.</summary>
    private static class Nodes
    {
        /// <summary>Nearer to a line of heights than this part of a cell is on it, so that a path along the line stays on it.</summary>
        private const double Near = 1e-9;

        public static double Snap(double cells)
        {
            var whole = Math.Round(cells);
            return Math.Abs(cells - whole) < Near ? whole : cells;
        }
    }
}
