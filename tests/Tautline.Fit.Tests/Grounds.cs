using Tautline.Engine.Layout.Fit;

namespace Tautline.Fit.Tests;

/// <summary>Ground profiles for tests, and a plain reading of them that shares nothing with the Engine's.</summary>
internal static class Grounds
{
    /// <summary>Height by straight interpolation, found by looking at every stretch; at a wall its foot.</summary>
    public static double At(IReadOnlyList<GroundVertex> ground, double station)
    {
        var here = ground.Where(g => g.Station == station).ToList();
        if (here.Count > 0) return here.Min(g => g.Height);
        for (var i = 1; i < ground.Count; i++)
            if (station < ground[i].Station)
            {
                var (a, b) = (ground[i - 1], ground[i]);
                return a.Height + (b.Height - a.Height) * (station - a.Station) / (b.Station - a.Station);
            }
        return ground[^1].Height;
    }

    /// <summary>Every raw vertex of a bay and the ground at its two posts; of a wall at a post the side that lies in the bay.</summary>
    public static IEnumerable<(double Station, double Height)> Under(IReadOnlyList<GroundVertex> ground, double from, double to)
    {
        foreach (var v in ground.Where(v => v.Station > from && v.Station < to)) yield return (v.Station, v.Height);
        yield return (from, ground.Any(g => g.Station == from) ? ground.Last(g => g.Station == from).Height : At(ground, from));
        yield return (to, ground.Any(g => g.Station == to) ? ground.First(g => g.Station == to).Height : At(ground, to));
    }

    /// <summary>Ground given by a function, a vertex each step.</summary>
    public static IReadOnlyList<GroundVertex> Of(double length, double step, Func<double, double> height)
    {
        var count = (int)Math.Round(length / step);
        return [.. Enumerable.Range(0, count + 1).Select(i => new GroundVertex(length * i / count, height(length * i / count)))];
    }

    /// <summary>Posts at even bays; terminals at both ends and after every stated number of bays.</summary>
    public static IReadOnlyList<FitPost> Posts(double length, int bays, int bend = 0, double longest = double.PositiveInfinity)
        => [.. Enumerable.Range(0, bays + 1).Select(i => new FitPost(length * i / bays, i == 0 || i == bays || (bend > 0 && i % bend == 0), null, longest))];
}
