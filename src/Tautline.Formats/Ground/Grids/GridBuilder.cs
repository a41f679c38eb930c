namespace Tautline.Formats.Ground.Grids;

/// <summary>Collects the heights of a part of a grid, and what can be said of them in passing.</summary>
internal sealed class GridBuilder
{
    private readonly GridShape _shape;
    private readonly GridPart _part;
    private readonly double[] _wide = [];
    private readonly float[] _narrow = [];
    private double _sum;
    private double _lowest = double.PositiveInfinity;
    private double _highest = double.NegativeInfinity;

    /// <summary>Takes memory for the part, which is within the limits, at once: eight bytes a height where wide, else four.</summary>
    public GridBuilder(GridShape shape, GridPart part, bool wide)
    {
        (_shape, _part) = (shape, part);
        if (wide) Array.Fill(_wide = new double[part.Cells], double.NaN);
        else Array.Fill(_narrow = new float[part.Cells], float.NaN);
    }

    /// <summary>Cells that got a height.</summary>
    public int Valid { get; private set; }

    /// <summary>Sets a height; a place outside of the part, and what is no finite number, is passed over.</summary>
    public void Set(int row, int column, double height)
    {
        if (row < _part.Row || row >= _part.EndRow || column < _part.Column || column >= _part.EndColumn || !double.IsFinite(height)) return;
        var at = (row - _part.Row) * _part.Columns + column - _part.Column;
        if (_wide.Length > 0) _wide[at] = height;
        else _narrow[at] = (float)height;
        Valid++;
        _sum += height;
        (_lowest, _highest) = (Math.Min(_lowest, height), Math.Max(_highest, height));
    }

    public GridContent Build()
    {
        var content = _wide.Length > 0 ? new GridContent(_wide) : new GridContent(_narrow);
        return content with
        {
            Rows = _part.Rows,
            Columns = _part.Columns,
            West = _shape.West + _part.Column * _shape.CellEast,
            North = _shape.North - _part.Row * _shape.CellNorth,
            CellEast = _shape.CellEast,
            CellNorth = _shape.CellNorth,
            Whole = (_shape.Rows, _shape.Columns),
            Valid = Valid,
            Mean = Valid > 0 ? _sum / Valid : double.NaN,
            Lowest = Valid > 0 ? _lowest : double.NaN,
            Highest = Valid > 0 ? _highest : double.NaN,
        };
    }
}
