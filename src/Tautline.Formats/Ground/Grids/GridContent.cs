namespace Tautline.Formats.Ground;

/// <summary>A grid of heights in the file's coordinates and units; row 0 is the northern one, column 0 the western one.</summary>
public sealed record GridContent : GroundContent
{
    private const int MostPairs = 1_000_000; // looked at for slopes

    private readonly double[] _wide = [];
    private readonly float[] _narrow = [];

    internal GridContent(double[] heights) => _wide = heights;

    internal GridContent(float[] heights) => _narrow = heights;

    /// <summary>Rows that were kept: all of the file's, or those of the window.</summary>
    public int Rows { get; internal init; }

    public int Columns { get; internal init; }

    /// <summary>Western side of the first column's cells.</summary>
    public double West { get; internal init; }

    /// <summary>Northern side of the first row's cells.</summary>
    public double North { get; internal init; }

    /// <summary>Width of a cell.</summary>
    public double CellEast { get; internal init; }

    /// <summary>Height of a cell from south to north.</summary>
    public double CellNorth { get; internal init; }

    /// <summary>Rows and columns of the file.</summary>
    public (int Rows, int Columns) Whole { get; internal init; }

    /// <summary>Cells that have a height.</summary>
    public int Valid { get; internal init; }

    /// <summary>Of the cells that have a height.</summary>
    public double Mean { get; internal init; }

    public double Lowest { get; internal init; }

    public double Highest { get; internal init; }

    /// <inheritdoc/>
    public override GroundExtent Extent => new(West, North - Rows * CellNorth, West + Columns * CellEast, North);

    /// <inheritdoc/>
    public override (double Lowest, double Highest) Heights => (Lowest, Highest);

    /// <summary>NaN where there is no ground; exactly one of the two arrays is used.</summary>
    internal double[] Wide => _wide;

    internal float[] Narrow => _narrow;

    /// <summary>A height; null where there is no ground.</summary>
    public double? HeightOf(int row, int column)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)row, (uint)Rows, nameof(row));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)column, (uint)Columns, nameof(column));
        var height = At(row * Columns + column);
        return double.IsNaN(height) ? null : height;
    }

    // Between neighbours; of a large grid every so many.
    internal override Slopes? Slopes
    {
        get
        {
            var slopes = new Slopes();
            var cells = Rows * Columns;
            var step = Math.Max(1, cells / MostPairs);
            for (var i = 0; i < cells; i += step)
            {
                if (i % Columns + 1 < Columns) slopes.Add(Math.Abs(At(i + 1) - At(i)) / CellEast);
                if (i + Columns < cells) slopes.Add(Math.Abs(At(i + Columns) - At(i)) / CellNorth);
            }
            return slopes.IsEmpty ? null : slopes;
        }
    }

    private double At(int index) => _wide.Length > 0 ? _wide[index] : _narrow[index];
}
