using System.Numerics;
using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Plane geometry in whole numbers: coordinates times 2^80 lose nothing here, so every answer is exact and owes nothing to the engine's tests.</summary>
internal static class Exactly
{
    public static BigInteger Turn(GroundPoint a, GroundPoint b, GroundPoint p)
    {
        var (ax, ay, bx, by, px, py) = (Whole(a.East), Whole(a.North), Whole(b.East), Whole(b.North), Whole(p.East), Whole(p.North));
        return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
    }

    /// <summary>Above zero inside the circle through three points that turn left.</summary>
    public static BigInteger InCircle(GroundPoint a, GroundPoint b, GroundPoint c, GroundPoint d)
    {
        var (dx, dy) = (Whole(d.East), Whole(d.North));
        var (ax, ay, bx, by) = (Whole(a.East) - dx, Whole(a.North) - dy, Whole(b.East) - dx, Whole(b.North) - dy);
        var (cx, cy) = (Whole(c.East) - dx, Whole(c.North) - dy);
        return (ax * ax + ay * ay) * (bx * cy - cx * by) - (bx * bx + by * by) * (ax * cy - cx * ay) + (cx * cx + cy * cy) * (ax * by - bx * ay);
    }

    public static BigInteger TwiceTheArea(TriangleSurface surface)
    {
        var sum = BigInteger.Zero;
        foreach (var (a, b, c) in Faces.Of(surface)) sum += Turn(a, b, c);
        return sum;
    }

    /// <summary>Twice the area of the hull, by a monotone chain below and one above.</summary>
    public static BigInteger HullOf(IEnumerable<GroundPoint> points)
    {
        var sorted = points.Distinct().OrderBy(p => p.East).ThenBy(p => p.North).ToArray();
        List<GroundPoint> hull = [.. Chain(sorted), .. Chain([.. sorted.Reverse()])];
        var sum = BigInteger.Zero;
        for (var i = 1; i + 1 < hull.Count; i++) sum += Turn(hull[0], hull[i], hull[i + 1]);
        return sum;
    }

    private static List<GroundPoint> Chain(GroundPoint[] sorted)
    {
        List<GroundPoint> chain = [];
        foreach (var p in sorted)
        {
            while (chain.Count > 1 && Turn(chain[^2], chain[^1], p) <= 0) chain.RemoveAt(chain.Count - 1);
            chain.Add(p);
        }
        return chain;
    }

    private static BigInteger Whole(double metres)
    {
        var scaled = metres * Math.ScaleB(1, 80);
        Assert.Equal(Math.Truncate(scaled), scaled);
        return new BigInteger(scaled);
    }
}

/// <summary>The faces of a surface as places.</summary>
internal static class Faces
{
    public static List<(GroundPoint A, GroundPoint B, GroundPoint C)> Of(TriangleSurface surface)
    {
        var faces = new List<(GroundPoint, GroundPoint, GroundPoint)>();
        for (var i = 0; i < surface.Corners.Length; i += 3)
            faces.Add((surface.Points[surface.Corners[i]], surface.Points[surface.Corners[i + 1]], surface.Points[surface.Corners[i + 2]]));
        return faces;
    }

    /// <summary>Every edge once in each direction it is used, with the corner across from it.</summary>
    public static Dictionary<(int From, int To), int> EdgesOf(TriangleSurface surface)
    {
        var edges = new Dictionary<(int, int), int>();
        for (var i = 0; i < surface.Corners.Length; i++)
        {
            var first = i - i % 3;
            edges.Add((surface.Corners[i], surface.Corners[first + (i + 1) % 3]), surface.Corners[first + (i + 2) % 3]);
        }
        return edges;
    }

    public static List<(int From, int To)> RimOf(TriangleSurface surface)
    {
        var edges = EdgesOf(surface);
        return [.. edges.Keys.Where(e => !edges.ContainsKey((e.To, e.From)))];
    }
}
