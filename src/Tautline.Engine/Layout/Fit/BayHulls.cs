namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The part of each bay's ground that a straight fabric bottom can touch: from above the corners of the upper hull, from
/// below those of the lower one. Flat lists, bay after bay; places as shares of the bay.
/// </summary>
internal sealed class BayHulls
{
    private readonly List<(double Share, double Height)> upper = [];
    private readonly List<(double Share, double Height)> lower = [];
    private readonly int[] upperFrom;
    private readonly int[] lowerFrom;

    public BayHulls(IReadOnlyList<FitPost> posts, GroundProfile ground)
    {
        (upperFrom, lowerFrom) = (new int[posts.Count], new int[posts.Count]);
        List<GroundVertex> bay = [];
        for (var i = 0; i + 1 < posts.Count; i++)
        {
            var (from, to) = (posts[i].Station, posts[i + 1].Station);
            ground.Between(from, to, bay);
            foreach (var vertex in bay)
            {
                var share = (vertex.Station - from) / (to - from);
                Push(upper, upperFrom[i], share, vertex.Height, 1);
                Push(lower, lowerFrom[i], share, vertex.Height, -1);
            }
            (upperFrom[i + 1], lowerFrom[i + 1]) = (upper.Count, lower.Count);
        }
    }

    public ReadOnlySpan<(double Share, double Height)> Upper(int bay) => Of(upper, upperFrom, bay);

    public ReadOnlySpan<(double Share, double Height)> Lower(int bay) => Of(lower, lowerFrom, bay);

    /// <summary>Smallest and largest gap under a straight fabric bottom.</summary>
    public (double Least, double Most) Gaps(int bay, double top, double next, double plumb)
    {
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var (share, height) in Upper(bay)) least = Math.Min(least, (1 - share) * top + share * next - plumb - height);
        foreach (var (share, height) in Lower(bay)) most = Math.Max(most, (1 - share) * top + share * next - plumb - height);
        return (least, most);
    }

    private static ReadOnlySpan<(double Share, double Height)> Of(List<(double Share, double Height)> hull, int[] from, int bay)
        => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(hull)[from[bay]..from[bay + 1]];

    /// <summary>Adds a point on the right and drops those it hides; side is 1 for the upper hull, -1 for the lower.</summary>
    private static void Push(List<(double Share, double Height)> hull, int start, double share, double height, int side)
    {
        while (hull.Count > start && Hides(hull, start, share, height, side)) hull.RemoveAt(hull.Count - 1);
        if (hull.Count > start && hull[^1].Share == share) return;
        hull.Add((share, height));
    }

    private static bool Hides(List<(double Share, double Height)> hull, int start, double share, double height, int side)
    {
        var (s1, h1) = hull[^1];
        if (s1 == share) return side * height >= side * h1;
        if (hull.Count - start < 2) return false;
        var (s0, h0) = hull[^2];
        return side * ((h1 - h0) * (share - s0) - (height - h0) * (s1 - s0)) <= 0;
    }
}
