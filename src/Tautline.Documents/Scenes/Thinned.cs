namespace Tautline.Documents.Scenes;

/// <summary>Leaves out points of a path that cannot be told apart.</summary>
internal static class Thinned
{
    private const double Column = 0.5;
    private const double Seen = 0.25;

    /// <summary>Adds a point, or moves the last one where both lie in one column and nothing would be seen of the last.</summary>
    public static void Add(List<double> path, double x, double y)
    {
        if (path.Count >= 4 && x - path[^4] < Column && Within(y, path[^3], path[^1])) return;
        if (path.Count >= 4 && Math.Abs(Off(path[^4], path[^3], path[^2], path[^1], x, y)) < Seen && x - path[^4] < 40) (path[^2], path[^1]) = (x, y);
        else path.AddRange([x, y]);
    }

    private static bool Within(double y, double a, double b) => y >= Math.Min(a, b) && y <= Math.Max(a, b);

    /// <summary>How far the middle point lies over the straight line between the outer ones.</summary>
    private static double Off(double ax, double ay, double bx, double by, double cx, double cy) => cx - ax < 1e-9 ? double.MaxValue : by - (ay + ((cy - ay) * (bx - ax) / (cx - ax)));
}
