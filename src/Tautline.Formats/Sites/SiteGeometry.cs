namespace Tautline.Formats.Sites;

/// <summary>Lengths, areas and points of lines with arcs, in plan.</summary>
internal static class SiteGeometry
{
    /// <summary>Length of a step whose ends are a chord apart.</summary>
    public static double StepLength(double chord, double bulge)
    {
        if (bulge == 0 || chord == 0) return chord;
        var b = Math.Abs(bulge);
        // radius = c (1 + b^2) / 4b, angle = 4 atan b
        return chord * (1 + b * b) / b * Math.Atan(b);
    }

    public static double Distance(SiteVertex a, SiteVertex b)
    {
        var (x, y) = (b.X - a.X, b.Y - a.Y);
        return Math.Sqrt(x * x + y * y);
    }

    public static double Length(ReadOnlySpan<SiteVertex> vertices, bool closed)
    {
        var sum = closed ? StepLength(Distance(vertices[^1], vertices[0]), vertices[^1].Bulge) : 0;
        for (var i = 1; i < vertices.Length; i++) sum += StepLength(Distance(vertices[i - 1], vertices[i]), vertices[i - 1].Bulge);
        return sum;
    }

    /// <summary>Signed area of a closed line: trapezoids, and the segment between each chord and its arc.</summary>
    public static double Area(ReadOnlySpan<SiteVertex> vertices)
    {
        var sum = 0.0;
        var (ox, oy) = (vertices[0].X, vertices[0].Y);
        for (var i = 0; i < vertices.Length; i++)
        {
            var (a, b) = (vertices[i], vertices[(i + 1) % vertices.Length]);
            sum += ((a.X - ox) * (b.Y - oy) - (b.X - ox) * (a.Y - oy)) / 2;
            sum += SegmentArea(Distance(a, b), a.Bulge);
        }
        return sum;
    }

    /// <summary>Area between a chord and its arc: to the right of the chord, and so added, for an arc that turns anticlockwise.</summary>
    private static double SegmentArea(double chord, double bulge)
    {
        if (bulge == 0) return 0;
        var angle = 4 * Math.Atan(bulge);
        var radius = chord * (1 + bulge * bulge) / (4 * bulge);
        return radius * radius / 2 * (angle - Math.Sin(angle));
    }

    /// <summary>The centre and radius of an arc; the radius is above zero.</summary>
    public static (double X, double Y, double Radius) Circle(SiteVertex a, SiteVertex b)
    {
        var (mx, my) = ((a.X + b.X) / 2, (a.Y + b.Y) / 2);
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        // From the middle of the chord to the centre, to the left of the chord: c/2 * (1 - b^2) / 2b.
        var t = (1 - a.Bulge * a.Bulge) / (4 * a.Bulge);
        var radius = Math.Sqrt(dx * dx + dy * dy) * (1 + a.Bulge * a.Bulge) / (4 * Math.Abs(a.Bulge));
        return (mx - dy * t, my + dx * t, radius);
    }

    /// <summary>Puts chords in the place of arcs, none further from its arc than the tolerance. Heights run evenly along.</summary>
    public static List<SiteVertex> Flattened(ReadOnlySpan<SiteVertex> vertices, bool closed, double tolerance)
    {
        var flat = new List<SiteVertex>(vertices.Length);
        for (var i = 0; i < vertices.Length; i++)
        {
            var last = i == vertices.Length - 1;
            flat.Add(vertices[i] with { Bulge = 0 });
            if (vertices[i].Bulge != 0 && (!last || closed)) AddArc(flat, vertices[i], vertices[last ? 0 : i + 1], tolerance);
        }
        return flat;
    }

    private static void AddArc(List<SiteVertex> flat, SiteVertex a, SiteVertex b, double tolerance)
    {
        var (x, y, radius) = Circle(a, b);
        var angle = 4 * Math.Atan(a.Bulge);
        var pieces = Pieces(radius, angle, tolerance);
        var start = Math.Atan2(a.Y - y, a.X - x);
        for (var k = 1; k < pieces; k++)
        {
            var part = (double)k / pieces;
            var at = start + angle * part;
            flat.Add(new(x + radius * Math.Cos(at), y + radius * Math.Sin(at), a.Z + (b.Z - a.Z) * part));
        }
    }

    /// <summary>How many chords keep within a tolerance of an arc: the middle ordinate of each is r (1 - cos(angle / 2n)).</summary>
    public static int Pieces(double radius, double angle, double tolerance)
    {
        if (!(radius > 0) || !double.IsFinite(radius) || !double.IsFinite(angle)) return 1;
        var each = 2 * Math.Acos(Math.Max(0, 1 - Math.Max(tolerance, 1e-12) / radius));
        return (int)Math.Clamp(Math.Ceiling(Math.Abs(angle) / Math.Max(each, 1e-3)), 1, 10_000);
    }
}
