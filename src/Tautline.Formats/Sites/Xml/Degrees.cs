namespace Tautline.Formats.Sites.Xml;

/// <summary>What files in degrees share, and short distances on the ellipsoid.</summary>
internal static class Degrees
{
    private const double A = 6378137; // WGS 84, metres
    private const double E2 = 0.00669437999014; // its first eccentricity squared

    public static SiteClaims Claims { get; } = new()
    {
        Degrees = true,
        SystemCode = 4326,
        SystemText = "WGS 84 longitude and latitude",
        HeightUnit = SiteUnit.Metre,
    };

    public static bool AreDegrees(SiteVertex v) => Math.Abs(v.X) <= 180 && Math.Abs(v.Y) <= 90;

    /// <summary>
    /// Metres between two neighbours on the ellipsoid, by the radii of curvature at their middle latitude: good to a part in a million up to some kilometres.
    /// </summary>
    public static double Distance(SiteVertex a, SiteVertex b)
    {
        var middle = double.DegreesToRadians((a.Y + b.Y) / 2);
        var w2 = 1 - E2 * Math.Sin(middle) * Math.Sin(middle);
        var along = A * (1 - E2) / (w2 * Math.Sqrt(w2)) * double.DegreesToRadians(b.Y - a.Y);
        var across = A / Math.Sqrt(w2) * Math.Cos(middle) * double.DegreesToRadians(b.X - a.X);
        return Math.Sqrt(along * along + across * across);
    }

    /// <summary>Metres along a line in degrees.</summary>
    public static double Length(SiteFeature line)
    {
        var sum = line.Closed ? Distance(line.Vertices[^1], line.Vertices[0]) : 0;
        for (var i = 1; i < line.Vertices.Length; i++) sum += Distance(line.Vertices[i - 1], line.Vertices[i]);
        return sum;
    }
}
