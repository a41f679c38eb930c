using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Picture;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Desk.Map;

/// <summary>Answers the hand while it moves: snaps, typed lengths and angles, places along the lines. It changes nothing.</summary>
public sealed class MapSight(Session session)
{
    private static readonly double[] metricSteps = [0.01, 0.05, 0.1, 0.5, 1, 5, 10];
    private static readonly double[] footSteps = [1 / 12.0, 0.5, 1, 5, 10, 50];

    private Job Job => session.Job;

    private bool Metric => Job.Units == UnitSystem.Metric;

    /// <param name="from">The vertex before; nothing for a first point.</param>
    /// <param name="way">The way of the leg before.</param>
    /// <param name="except">A vertex that is dragged.</param>
    /// <param name="drawn">Points of the line being drawn: it is snapped to as well.</param>
    public SnapAnswer Snap(SitePoint point, Length tolerance, SitePoint? from, Direction? way, VertexId? except, IReadOnlyList<SitePoint> drawn)
    {
        IReadOnlyList<Snap> found = tolerance.Metres > 0 ? Snapping.Candidates(With(drawn), new SnapAsk(point, tolerance, from, way, Step(tolerance), except)) : [];
        Snap? snap = found.Count > 0 ? found[0] : null;
        SitePoint at = snap?.Point ?? point;
        return new(at.East.Metres, at.North.Metres, snap?.Kind.ToString() ?? "", snap?.IsRound ?? false, LengthWords(from, at), TurnWords(from, way, at));
    }

    /// <summary>A round length that two pixels of the pointer do not jump over.</summary>
    private Length Step(Length tolerance)
    {
        double least = tolerance.Metres / 6;
        return Metric
            ? Length.FromMetres(metricSteps.FirstOrDefault(s => s >= least, 0))
            : Length.FromFeet(footSteps.FirstOrDefault(s => Length.FromFeet(s).Metres >= least, 0));
    }

    private Job With(IReadOnlyList<SitePoint> drawn)
    {
        if (drawn.Count < 2) return Job;
        var keys = OrderKey.Spread(drawn.Count);
        var line = new Line
        {
            Id = new("drawn"),
            Spec = default,
            Vertices = [.. drawn.Select((p, i) => new Vertex
            {
                Id = new($"drawn {i}"), Order = keys[i], East = p.East, North = p.North, Leg = i < drawn.Count - 1 ? new Leg { Id = new($"drawn leg {i}") } : null,
            })],
        };
        return Job with { Lines = [.. Job.Lines, line] };
    }

    public string LengthWords(SitePoint? from, SitePoint to) => from is { } start ? session.Words.Long(start.DistanceTo(to)) : "";

    private static string TurnWords(SitePoint? from, Direction? way, SitePoint to) => from is not { } start || Way(start, to) is not { } now ? ""
        : way is { } before ? AngleText.Format(Direction.Between(before, now)) : BearingText.Format(now);

    private static Direction? Way(SitePoint from, SitePoint to) =>
        from == to ? null : Direction.FromVector((to.East - from.East).Metres, (to.North - from.North).Metres);

    /// <summary>The point that a typed length and angle lead to. A length alone goes where the pointer is, an angle alone as far.</summary>
    /// <param name="angle">A turn such as 'R 90' or '-45' from the leg before, or a bearing.</param>
    public TypedAnswer Typed(string length, string angle, SitePoint from, Direction? way, SitePoint? pointer)
    {
        Direction? ahead = pointer is { } to ? Way(from, to) : null;
        Length far = ahead is null ? Length.Zero : from.DistanceTo(pointer!.Value);
        if (length.Trim().Length > 0)
        {
            Parsed<Length> read = LengthText.Parse(length, Metric ? LengthUnit.Metre : LengthUnit.Foot);
            if (!read.Ok) return new(false, 0, 0, $"{read.Problem.Message} {read.Problem.Hint}");
            far = read.Value;
        }

        ahead ??= way ?? Direction.DueNorth;
        if (angle.Trim().Length > 0)
        {
            if (Read(angle.Trim(), way ?? Direction.DueNorth, out string wrong) is not { } turned) return new(false, 0, 0, wrong);
            ahead = turned;
        }

        if (far.Metres <= 0) return new(false, 0, 0, $"{session.Words.Long(far)}?");
        SitePoint at = from.Step(ahead.Value, far);
        return new(true, at.East.Metres, at.North.Metres, "");
    }

    /// <summary>A bare number turns right, a negative one left.</summary>
    private static Direction? Read(string angle, Direction way, out string wrong)
    {
        wrong = "";
        string turn = char.IsAsciiDigit(angle[0]) ? $"R {angle}" : angle[0] is '-' or '−' ? $"L {angle[1..]}" : angle;
        if (AngleText.Parse(turn) is { Ok: true } read) return way.TurnRight(read.Value);
        Parsed<Direction> bearing = BearingText.Parse(angle);
        if (bearing.Ok) return bearing.Value;
        wrong = $"{bearing.Problem.Message} {bearing.Problem.Hint}";
        return null;
    }

    /// <summary>The middle of everything drawn, east and north in metres.</summary>
    public static double[] Middle(Job job)
    {
        var points = job.Lines.SelectMany(l => l.Vertices).Select(v => (East: v.East.Metres, North: v.North.Metres)).ToList();
        return points.Count == 0 ? [0, 0] : [(points.Min(p => p.East) + points.Max(p => p.East)) / 2, (points.Min(p => p.North) + points.Max(p => p.North)) / 2];
    }

    /// <summary>Where a point falls on the lines; nothing where there are none.</summary>
    public LinePlace? Place(SitePoint point, LineId? only = null) => Placing.Nearest(Job, point, Length.FromMetres(1e6), only);

    public string Station(LinePlace place) => session.Words.Station(place.Station);

    /// <summary>A stretch around a place, as long as given, and its words.</summary>
    public AlongAnswer Around(LinePlace place, Length wide) => new(
        true, place.Point.East.Metres, place.Point.North.Metres, Station(place), LinePaths.Between(Job, place.Line, place.Station - wide / 2, place.Station + wide / 2));

    public AlongAnswer Between(LinePlace from, LinePlace to) => new(
        true, to.Point.East.Metres, to.Point.North.Metres, $"{session.Words.Long(Length.Abs(to.Station - from.Station))}  ({Station(from)} – {Station(to)})",
        LinePaths.Between(Job, from.Line, from.Station, to.Station));
}
