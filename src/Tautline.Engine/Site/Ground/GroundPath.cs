using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.Ground;

/// <summary>A vertex of a path: place and station in metres.</summary>
public readonly record struct PathPoint(double East, double North, double Station);

/// <summary>
/// The way a profile is taken along: straight pieces with stations that rise from vertex to vertex. An arc is laid as chords that are nowhere
/// further than <see cref="ArcTolerance"/> from it; their ends lie on the arc and carry the stations of the arc.
/// </summary>
public sealed class GroundPath
{
    /// <summary>Between an arc and its chords, a tenth of a millimetre in metres: on ground of 100 % that is 0.1 mm of height.</summary>
    public const double ArcTolerance = 0.0001;

    private const int MostChords = 100_000;

    private readonly List<PathPoint> points = [];

    /// <summary>A path that begins at a place.</summary>
    /// <param name="station">Of the beginning.</param>
    public GroundPath(PlanPoint from, double station = 0)
    {
        Check(from, station);
        points.Add(new(GroundPoint.Settle(from.East), GroundPoint.Settle(from.North), station));
    }

    public IReadOnlyList<PathPoint> Points => points;

    public StationRange Range => new(points[0].Station, points[^1].Station);

    /// <summary>Straight from place to place, stations from zero.</summary>
    /// <param name="places">At least one.</param>
    public static GroundPath Through(params ReadOnlySpan<PlanPoint> places)
    {
        var path = new GroundPath(places[0]);
        foreach (var place in places[1..]) path.LineTo(place);
        return path;
    }

    /// <summary>Straight on to a place; a place the path is at already adds nothing.</summary>
    public GroundPath LineTo(PlanPoint to)
    {
        var (east, north) = (to.East - points[^1].East, to.North - points[^1].North);
        return Add(to, points[^1].Station + Math.Sqrt(east * east + north * north));
    }

    /// <summary>On along a curve, which begins where the path ends.</summary>
    public GroundPath CurveTo(PlacedCurve curve)
    {
        var (radius, arc, from) = (curve.Curve.Radius.Metres, curve.Curve.ArcLength.Metres, Range.To);
        // The middle of a chord over an arc of length s lies s^2/8R off it, a little less for a wide arc.
        var chords = (int)Math.Clamp(Math.Ceiling(arc / Math.Sqrt(8 * radius * ArcTolerance)), 1, MostChords);
        for (var i = 1; i < chords; i++)
            if (curve.At(curve.PcStation + new Length(arc * i / chords)) is { } at)
                Add(new(at.Point.East.Metres, at.Point.North.Metres), from + arc * i / chords);
        return Add(new(curve.Pt.East.Metres, curve.Pt.North.Metres), from + arc);
    }

    /// <summary>The same way back; stations rise from the same beginning.</summary>
    public GroundPath Reversed()
    {
        var back = new GroundPath(new(points[^1].East, points[^1].North), Range.From);
        for (var i = points.Count - 2; i >= 0; i--)
            back.Add(new(points[i].East, points[i].North), Range.From + (Range.To - points[i].Station));
        return back;
    }

    private GroundPath Add(PlanPoint to, double station)
    {
        Check(to, station);
        if (station > points[^1].Station) points.Add(new(GroundPoint.Settle(to.East), GroundPoint.Settle(to.North), station));
        return this;
    }

    private static void Check(PlanPoint at, double station)
    {
        if (Math.Abs(at.East) <= GroundPoint.FurthestOut && Math.Abs(at.North) <= GroundPoint.FurthestOut && double.IsFinite(station)) return;
        throw new ArgumentOutOfRangeException(nameof(at), at, "a path stays within the limits of a ground point");
    }
}
