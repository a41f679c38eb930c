namespace Tautline.Engine.Site.Ground;

/// <summary>Thins a profile for storage.</summary>
public static class ProfileReduce
{
    /// <summary>
    /// Drops vertices so that no dropped one is further than the tolerance, plumb, from the line between the kept ones before and after it; so the
    /// kept line is nowhere further than that from the whole one. Ends stay, and so do upright steps higher than the tolerance. One pass: from the last kept vertex a wedge of
    /// slopes is narrowed by every vertex passed, and the line is carried on to the last vertex whose own slope is in the wedge.
    /// </summary>
    /// <param name="tolerance">In metres, not negative; zero drops only what is exactly on the line.</param>
    public static GroundProfile Thin(GroundProfile profile, double tolerance) =>
        profile with { Stretches = [.. profile.Stretches.Select(s => new ProfileStretch(Thin(s.Points, tolerance)))] };

    /// <inheritdoc cref="Thin(GroundProfile, double)"/>
    public static IReadOnlyList<ProfilePoint> Thin(IReadOnlyList<ProfilePoint> points, double tolerance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(tolerance);
        if (points.Count < 3) return points;
        var kept = new List<ProfilePoint> { points[0] };
        var wedge = Wedge.Open;
        for (var i = 1; i < points.Count; i++)
        {
            if (!wedge.Holds(kept[^1], points[i]))
            {
                kept.Add(points[i - 1]);
                wedge = Wedge.Open;
            }
            wedge = wedge.Narrowed(kept[^1], points[i], tolerance);
        }
        kept.Add(points[^1]);
        return kept;
    }

    /// <summary>The slopes at which a line from the kept vertex passes all vertices since within the tolerance.</summary>
    private readonly record struct Wedge(double Low, double High)
    {
        public static Wedge Open => new(double.NegativeInfinity, double.PositiveInfinity);

        /// <summary>A step has no slope: it is held only by a wedge that nothing has narrowed yet.</summary>
        public bool Holds(ProfilePoint from, ProfilePoint to)
        {
            if (!(to.Station > from.Station)) return this == Open;
            var slope = (to.Height - from.Height) / (to.Station - from.Station);
            return slope >= Low && slope <= High;
        }

        public Wedge Narrowed(ProfilePoint from, ProfilePoint by, double tolerance)
        {
            // Nothing but the foot of a step lies on a line that goes straight up.
            if (!(by.Station > from.Station)) return new(double.PositiveInfinity, double.NegativeInfinity);
            var run = by.Station - from.Station;
            return new(Math.Max(Low, (by.Height - tolerance - from.Height) / run), Math.Min(High, (by.Height + tolerance - from.Height) / run));
        }
    }
}
