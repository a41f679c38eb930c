using Tautline.Engine.Site.Ground;

namespace Tautline.Engine.Tests.Ground;

/// <summary>Compares profiles with the surface itself, place by place.</summary>
internal static class ProfileCheck
{
    /// <summary>Vertices and the middles between them lie on the surface, gaps have none, and both make up the path.</summary>
    public static void LiesOn(IGroundSurface ground, GroundPath path, GroundProfile profile, double tolerance)
    {
        foreach (var stretch in profile.Stretches)
        {
            Assert.True(stretch.Points.Count >= 2);
            // The ends lie on the rim but for rounding, so there may be none beside them.
            foreach (var p in stretch.Points.Skip(1).SkipLast(1)) Same(ground, path, p.Station, p.Height, tolerance);
            foreach (var (a, b) in stretch.Points.Zip(stretch.Points.Skip(1)))
            {
                Assert.True(b.Station >= a.Station);
                if (b.Station - a.Station > 1e-6) Same(ground, path, (a.Station + b.Station) / 2, (a.Height + b.Height) / 2, tolerance);
            }
        }
        foreach (var gap in profile.Gaps)
            Assert.Null(HeightAt(ground, path, gap.From + 0.6180339887 * (gap.To - gap.From))); // the middle may touch a lone corner
        MakesUp(path, profile);
    }

    private static void MakesUp(GroundPath path, GroundProfile profile)
    {
        var ranges = profile.Stretches.Select(s => s.Range).Concat(profile.Gaps).OrderBy(r => r.From).ToArray();
        Assert.Equal(path.Range.From, ranges[0].From, 2e-6);
        Assert.Equal(path.Range.To, ranges[^1].To, 2e-6);
        foreach (var (a, b) in ranges.Zip(ranges.Skip(1))) Assert.Equal(a.To, b.From, 2e-6);
    }

    private static void Same(IGroundSurface ground, GroundPath path, double station, double height, double tolerance)
    {
        // A path along a slanting rim or through a corner between holes has ground, but the double nearest to the place may lie beside it.
        double[] near = [0, 1e-9, -1e-9];
        var there = near.SelectMany(along => near.Select(aside => HeightAt(ground, path, station + along, aside))).FirstOrDefault(h => h is not null);
        Assert.True(there is not null, $"no ground at station {station}");
        Assert.Equal(there.Value, height, tolerance);
    }

    private static double? HeightAt(IGroundSurface ground, GroundPath path, double station, double aside = 0)
    {
        var i = 1;
        while (i < path.Points.Count - 1 && path.Points[i].Station < station) i++;
        var (a, b) = (path.Points[i - 1], path.Points[i]);
        var part = (station - a.Station) / (b.Station - a.Station);
        var (east, north) = ((b.East - a.East) / (b.Station - a.Station), (b.North - a.North) / (b.Station - a.Station));
        return ground.HeightAt(a.East + part * (b.East - a.East) - aside * north, a.North + part * (b.North - a.North) + aside * east);
    }
}
