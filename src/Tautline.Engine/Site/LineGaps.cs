using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>
/// Tells of free ends of lines that come close to another end and do not meet it. An end is free where it ties to nothing and
/// stands on no other leg; it is told with the end nearest to it, and no pair twice.
/// </summary>
internal sealed class LineGaps
{
    /// <summary>Our own figure: under this a gap is more likely a slip than an opening somebody wants.</summary>
    private static readonly Length widest = Length.FromFeet(6);

    /// <summary>Nearer than this is the same place: nobody sets posts that exactly.</summary>
    private static readonly Length meeting = Length.FromMillimetres(10);

    private readonly IReadOnlyList<(SiteLine Line, Box Box)> lines;
    private readonly List<End> ends;

    /// <summary>Ends by the square of the widest gap they lie in: what is near lies there or in the eight squares around.</summary>
    private readonly ILookup<(long, long), End> squares;

    private LineGaps(IReadOnlyList<SiteLine> all)
    {
        lines = [.. all.Select(l => (l, Box.Of(l)))];
        ends = [.. all.Where(l => !l.Line.Closed).SelectMany(EndsOf)];
        squares = ends.ToLookup(e => Square(e.At));
    }

    public static void Check(IReadOnlyList<SiteLine> lines, Job job, ProblemList problems)
    {
        var gaps = new LineGaps(lines);
        HashSet<(End, End)> told = [];
        foreach (var end in gaps.ends)
            if (gaps.Across(end) is { } other && !told.Contains((other, end)) && told.Add((end, other)))
                Tell(end, other, job, problems);
    }

    private static IEnumerable<End> EndsOf(SiteLine line)
    {
        if (line.Line.Start is null) yield return new End(line, true);
        if (line.Line.Finish is null) yield return new End(line, false);
    }

    private static (long East, long North) Square(SitePoint at)
        => ((long)Math.Floor(at.East / widest), (long)Math.Floor(at.North / widest));

    /// <summary>The end on the other side of a gap; none where there is no gap.</summary>
    private End? Across(End end)
    {
        var nearest = Around(end).MinBy(o => o.At.DistanceTo(end.At));
        if (nearest is null || nearest.At.DistanceTo(end.At) > widest) return null;
        return IsFree(end) && !end.Line.Chain.Legs.Any(l => !ReferenceEquals(l, nearest.Leg) && IsOn(nearest.At, l)) ? nearest : null;
    }

    private IEnumerable<End> Around(End end)
    {
        var (east, north) = Square(end.At);
        for (var e = east - 1; e <= east + 1; e++)
            for (var n = north - 1; n <= north + 1; n++)
                foreach (var other in squares[(e, n)])
                    if (other != end && (!ReferenceEquals(other.Line, end.Line) || end.Line.Chain.Legs.Count > 2)) yield return other;
    }

    private bool IsFree(End end)
        => !lines.Any(l => l.Box.Holds(end.At) && l.Line.Chain.Legs.Any(leg => !ReferenceEquals(leg, end.Leg) && IsOn(end.At, leg)));

    private static bool IsOn(SitePoint at, SiteLeg leg) => leg.Curve is { } curve ? IsOnArc(at, curve) : IsOnStraight(at, leg);

    /// <summary>On the circle, and no further from either end than they are from one another: an arc is at most half the circle.</summary>
    private static bool IsOnArc(SitePoint at, PlacedCurve arc)
        => Length.Abs(at.DistanceTo(arc.Centre) - arc.Curve.Radius) <= meeting
           && Length.Max(at.DistanceTo(arc.Pc), at.DistanceTo(arc.Pt)) <= arc.Curve.Chord + meeting;

    private static bool IsOnStraight(SitePoint at, SiteLeg leg)
    {
        var from = new SitePoint(leg.From.East, leg.From.North);
        var ahead = (at.East - from.East).Metres * leg.Heading.East + (at.North - from.North).Metres * leg.Heading.North;
        var foot = from.Step(leg.Heading, new Length(Math.Clamp(ahead, 0, leg.LevelNm * 1e-9)));
        return foot.DistanceTo(at) <= meeting;
    }

    private static void Tell(End end, End other, Job job, ProblemList problems)
    {
        var at = job.Lines.TakeWhile(l => !ReferenceEquals(l, end.Line.Line)).Count();
        var station = Length.FromNanometres(end.IsStart ? 0 : end.Line.Chain.LevelNm);
        problems.Add(
            ProblemCode.LinesGap, new($"lines[{at}]", end.Line.Line.Id, station), end.Side, end.Name, other.Side, other.Name,
            end.At.DistanceTo(other.At));
    }

    /// <summary>One end of an open line; compared by reference.</summary>
    private sealed class End(SiteLine line, bool isStart)
    {
        public SiteLine Line => line;

        public bool IsStart => isStart;

        public SiteLeg Leg => isStart ? line.Chain.Legs[0] : line.Chain.Legs[^1];

        public SitePoint At => isStart ? new(Leg.From.East, Leg.From.North) : new(Leg.To.East, Leg.To.North);

        public string Side => isStart ? "start" : "end";

        public string Name => line.Line.Name.Length > 0 ? line.Line.Name : line.Line.Id.Value;
    }

    /// <summary>A line's reach on the map, so that far lines are passed over without looking at their legs.</summary>
    private readonly record struct Box(double West, double South, double East, double North)
    {
        public static Box Of(SiteLine line)
        {
            var vertices = line.Line.Vertices;
            var bulge = line.Chain.Legs.Max(l => l.Curve?.Curve.MiddleOrdinate.Metres ?? 0) + meeting.Metres;
            return new(
                vertices.Min(v => v.East.Metres) - bulge, vertices.Min(v => v.North.Metres) - bulge, vertices.Max(v => v.East.Metres) + bulge,
                vertices.Max(v => v.North.Metres) + bulge);
        }

        public bool Holds(SitePoint at) => at.East.Metres >= West && at.East.Metres <= East && at.North.Metres >= South && at.North.Metres <= North;
    }
}
