using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Area from coordinates.</summary>
public static class CoordinateArea
{
    /// <summary>
    /// The area inside a closed line: half the sum of cross products, taken from the first point so that large coordinates
    /// cost no digits. Never negative; fewer than three points enclose none. Where the line crosses itself its loops
    /// count against each other.
    /// </summary>
    public static Area Of(IReadOnlyList<SitePoint> corners)
    {
        var twice = 0.0;
        for (var i = 1; i + 1 < corners.Count; i++)
            twice += Cross(corners[0], corners[i], corners[i + 1]);
        return new Area(Math.Abs(twice) / 2);
    }

    private static double Cross(SitePoint origin, SitePoint a, SitePoint b)
    {
        var (ae, an) = ((a.East - origin.East).Metres, (a.North - origin.North).Metres);
        var (be, bn) = ((b.East - origin.East).Metres, (b.North - origin.North).Metres);
        return ae * bn - be * an;
    }
}
