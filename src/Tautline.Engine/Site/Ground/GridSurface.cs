namespace Tautline.Engine.Site.Ground;

/// <summary>
/// Ground as a grid of heights, bilinear between four of them. There is no ground between heights one of which is missing, nor outside of the
/// outermost. A height that is no number, equals the stated mark or is beyond <see cref="GroundPoint.Highest"/> is missing.
/// </summary>
public sealed class GridSurface : IGroundSurface
{
    /// <summary>Between a profile's straight pieces and the curved ground, in metres.</summary>
    public const double ProfileTolerance = 0.001;

    private readonly double[] wide = [];
    private readonly float[] narrow = [];
    private readonly double noData;

    /// <param name="frame">Throws where it is no frame or does not fit the heights: whoever reads a file has to check.</param>
    /// <param name="heights">In metres, row by row from the north; used as they are, not copied.</param>
    /// <param name="noData">The mark of a missing height, if there is one.</param>
    public GridSurface(GridFrame frame, double[] heights, double? noData = null)
    {
        frame.Check(heights.Length);
        (Frame, wide, this.noData) = (frame, heights, noData ?? double.NaN);
    }

    /// <inheritdoc cref="GridSurface(GridFrame, double[], double?)"/>
    public GridSurface(GridFrame frame, float[] heights, double? noData = null)
    {
        frame.Check(heights.Length);
        // The mark was stored as a float too.
        (Frame, narrow, this.noData) = (frame, heights, (float)(noData ?? double.NaN));
    }

    public GridFrame Frame { get; }

    /// <summary>A given height; none where it is missing.</summary>
    public double? HeightOf(int row, int column)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)row, (uint)Frame.Rows, nameof(row));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)column, (uint)Frame.Columns, nameof(column));
        return Node(row, column);
    }

    /// <inheritdoc/>
    public double? HeightAt(double east, double north)
    {
        var (column, row) = (Frame.Column(east), Frame.Row(north));
        return PatchAt(column, row)?.At(column, row);
    }

    /// <summary>
    /// A vertex at every line of heights that the path crosses, at the highest and lowest place of each patch it passes, and in between as many as
    /// keep the straight pieces within <see cref="ProfileTolerance"/> of the ground.
    /// </summary>
    public GroundProfile Along(GroundPath path)
    {
        var profile = new ProfileBuilder(path.Range);
        var crossings = new GridCrossings(this);
        for (var i = 1; i < path.Points.Count; i++)
            crossings.Along(new(path.Points[i - 1], path.Points[i]), profile);
        return profile.Build();
    }

    /// <summary>The patch between four heights that holds a place counted in cells; none where a height is missing.</summary>
    internal GridPatch? PatchAt(double column, double row)
    {
        if (!(column >= 0 && column <= Frame.Columns - 1 && row >= 0 && row <= Frame.Rows - 1)) return null;
        var (c, r) = ((int)Math.Floor(column), (int)Math.Floor(row));
        // On a line of heights the patches on either side agree, but one may have no ground.
        var (onColumn, onRow) = (c == column, r == row);
        return Patch(r, c)
            ?? (onColumn ? Patch(r, c - 1) : null)
            ?? (onRow ? Patch(r - 1, c) : null)
            ?? (onColumn && onRow ? Patch(r - 1, c - 1) : null);
    }

    private GridPatch? Patch(int row, int column)
    {
        if (row < 0 || column < 0 || row + 1 >= Frame.Rows || column + 1 >= Frame.Columns) return null;
        return Node(row, column) is { } nw && Node(row, column + 1) is { } ne && Node(row + 1, column) is { } sw && Node(row + 1, column + 1) is { } se
            ? new(row, column, nw, ne, sw, se)
            : null;
    }

    private double? Node(int row, int column)
    {
        var at = row * Frame.Columns + column;
        var height = wide.Length > 0 ? wide[at] : narrow[at];
        return height != noData && Math.Abs(height) <= GroundPoint.Highest ? height : null;
    }
}

/// <summary>The ground between four heights: h = nw + toEast u + toSouth v + twist u v, with u and v from 0 to 1.</summary>
internal readonly struct GridPatch(int row, int column, double nw, double ne, double sw, double se)
{
    private readonly double toEast = ne - nw;
    private readonly double toSouth = sw - nw;

    /// <summary>How much the slope to the east grows over the patch to the south.</summary>
    public double Twist { get; } = nw - ne - sw + se;

    public double At(double atColumn, double atRow)
    {
        var (u, v) = (Math.Clamp(atColumn - column, 0, 1), Math.Clamp(atRow - row, 0, 1));
        return nw + toEast * u + (toSouth + Twist * u) * v;
    }

    /// <summary>The rise at a place on a way that goes on by so many columns and rows.</summary>
    public double Rise(double atColumn, double atRow, double columns, double rows) =>
        (toEast + Twist * (atRow - row)) * columns + (toSouth + Twist * (atColumn - column)) * rows;
}
