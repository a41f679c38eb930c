using Tautline.Formats.Ground.Grids;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>
/// Where a raster lies: a tiepoint with a pixel scale, or a matrix (OGC GeoTIFF 1.1, section 7.1 and annex B). Turned and slanted grids are refused:
/// the Engine's grids stand upright.
/// </summary>
internal static class GeoTiffPlace
{
    private const double LargestTurn = 1e-9; // per cell; a thousandth of a millimetre over a kilometre of metre cells

    /// <summary>
    /// The place, or why there is none. With heights at corners GTRasterType is 2: the place named is that of a height, the middle of a cell, not
    /// of a cell's corner.
    /// </summary>
    public static (GridShape? Shape, Finding? Refused) Of(TiffDirectory tiff, TiffLayout layout, bool heightsAreAtCorners)
    {
        if (tiff.Doubles(TiffTag.ModelTransformation) is { } matrix) return ByMatrix(matrix, layout, heightsAreAtCorners);
        if (tiff.Doubles(TiffTag.ModelTiepoint) is not { Length: >= 6 } tie) return (null, GeoTiffFindings.NoPlace);
        if (tiff.Doubles(TiffTag.ModelPixelScale) is not [var x, var y, ..]) return (null, tie.Length > 6 ? GeoTiffFindings.ControlPoints : GeoTiffFindings.NoPlace);
        if (y < 0) return (null, GeoTiffFindings.RowsFromSouth);
        return Checked(tie[3] - tie[0] * x, tie[4] + tie[1] * y, x, y, layout, heightsAreAtCorners);
    }

    private static (GridShape? Shape, Finding? Refused) ByMatrix(double[] m, TiffLayout layout, bool heightsAreAtCorners)
    {
        if (m.Length < 16) return (null, GeoTiffFindings.NoPlace);
        var cell = Math.Max(Math.Abs(m[0]), Math.Abs(m[5]));
        if (Math.Max(Math.Abs(m[1]), Math.Abs(m[4])) > LargestTurn * cell) return (null, GeoTiffFindings.Turned);
        if (m[5] > 0) return (null, GeoTiffFindings.RowsFromSouth);
        return Checked(m[3], m[7], m[0], -m[5], layout, heightsAreAtCorners);
    }

    private static (GridShape? Shape, Finding? Refused) Checked(
        double west, double north, double cellEast, double cellNorth, TiffLayout layout, bool heightsAreAtCorners)
    {
        var half = heightsAreAtCorners ? 0.5 : 0;
        var shape = new GridShape(layout.Rows, layout.Columns, west - half * cellEast, north + half * cellNorth, cellEast, cellNorth);
        return shape.IsSound ? (shape, null) : (null, GridFindings.NoPlace);
    }
}
