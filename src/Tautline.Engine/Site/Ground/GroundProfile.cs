namespace Tautline.Engine.Site.Ground;

/// <summary>A vertex of a profile: station and height in metres.</summary>
public readonly record struct ProfilePoint(double Station, double Height);

/// <summary>A range of stations, in metres.</summary>
public readonly record struct StationRange(double From, double To);

/// <summary>Ground without a gap: two or more vertices, stations not falling. Two vertices at one station are an upright step.</summary>
public sealed record ProfileStretch(IReadOnlyList<ProfilePoint> Points)
{
    public StationRange Range => new(Points[0].Station, Points[^1].Station);

    /// <summary>The height at a station of the stretch, the later one at an upright step; none off the stretch.</summary>
    public double? HeightAt(double station)
    {
        if (!(station >= Range.From && station <= Range.To)) return null;
        var (low, high) = (0, Points.Count - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Points[middle].Station <= station) low = middle;
            else high = middle;
        }
        return Between(Points[low], Points[high], station);
    }

    internal static double Between(ProfilePoint a, ProfilePoint b, double station) =>
        b.Station > a.Station ? a.Height + (b.Height - a.Height) * ((station - a.Station) / (b.Station - a.Station)) : b.Height;
}

/// <summary>The ground along a path.</summary>
/// <param name="Range">The path's own stations.</param>
/// <param name="Stretches">Where there is ground, in order.</param>
/// <param name="Gaps">Where there is none, in order; together with the stretches they make up the range.</param>
public sealed record GroundProfile(StationRange Range, IReadOnlyList<ProfileStretch> Stretches, IReadOnlyList<StationRange> Gaps)
{
    /// <summary>The height at a station; none in a gap or off the path.</summary>
    public double? HeightAt(double station) => Stretches.Select(s => s.HeightAt(station)).FirstOrDefault(h => h is not null);
}
