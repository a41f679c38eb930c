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

    private readonly List<End> ends;

    /// <summary>Ends by the square of the widest gap they lie in: what is near lies there or in the eight squares around.</summary>
    private readonly ILookup<(long, long), End> squares;

    private LineGaps(IReadOnlyList<SiteLine> lines)
    {
        ends = [.. lines.Where(l => !l.Line.Closed).SelectMany(EndsOf)];
        squares = ends.ToLookup(e => Square(e.At));
    }

    public static void Check(IReadOnlyList<SiteLine> lines, Job job, ProblemList problems)
    {
        var gaps = new LineGaps(lines);
        var pairs = gaps.ends.Select(e => (End: e, Other: gaps.Across(e)!)).Where(p => p.Other is not null).ToList();
        if (pairs.Count == 0) return;
        var standing = Standing([.. pairs.Select(p => p.End)], lines);
        var at = job.Lines.Select((l, i) => (l.Id, i)).ToDictionary(l => l.Id, l => l.i);
        HashSet<(End, End)> told = [];
        foreach (var (end, other) in pairs.Where(p => !standing.Contains(p.End)))
            if (!told.Contains((other, end)) && told.Add((end, other)))
                Tell(end, other, $"lines[{at[end.Line.Line.Id]}]", problems);
    }

    private static IEnumerable<End> EndsOf(SiteLine line)
    {
        if (line.Line.Start is null) yield return new End(line, true);
        if (line.Line.Finish is null) yield return new End(line, false);
    }

    private static (long East, long North) Square(SitePoint at)
        => ((long)Math.Floor(at.East / widest), (long)Math.Floor(at.North / widest));

    /// <summary>The nearest end, if it is near and does not itself stand on the line of this one.</summary>
    private End? Across(End end)
    {
        var nearest = Around(end).MinBy(o => o.At.DistanceTo(end.At));
        if (nearest is null || nearest.At.DistanceTo(end.At) > widest) return null;
        return !end.Line.Chain.Legs.Any(l => !ReferenceEquals(l, nearest.Leg) && IsOn(nearest.At, l)) ? nearest : null;
    }

    private IEnumerable<End> Around(End end)
    {
        var (east, north) = Square(end.At);
        for (var e = east - 1; e <= east + 1; e++)
            for (var n = north - 1; n <= north + 1; n++)
                foreach (var other in squares[(e, n)])
                    if (other != end && (!ReferenceEquals(other.Line, end.Line) || end.Line.Chain.Legs.Count > 2)) yield return other;
    }

    /// <summary>The ends that stand on another leg. Every leg is held against the ends of its own stretch from west to east alone.</summary>
    private static HashSet<End> Standing(List<End> near, IReadOnlyList<SiteLine> lines)
    {
        near.Sort((a, b) => a.At.East.CompareTo(b.At.East));
        var east = near.ConvertAll(e => e.At.East.Metres);
        HashSet<End> standing = [];
        foreach (var leg in lines.SelectMany(l => l.Chain.Legs))
        {
            var reach = meeting.Metres + (leg.Curve?.Curve.MiddleOrdinate.Metres ?? 0);
            var (from, to) = (leg.From.East.Metres, leg.To.East.Metres);
            for (var i = FirstFrom(Math.Min(from, to) - reach, east); i < east.Count && east[i] <= Math.Max(from, to) + reach; i++)
                if (!ReferenceEquals(leg, near[i].Leg) && IsOn(near[i].At, leg)) standing.Add(near[i]);
        }
        return standing;
    }

    private static int FirstFrom(double least, List<double> ascending)
    {
        var (low, high) = (0, ascending.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (ascending[middle] < least) low = middle + 1;
            else high = middle;
        }
        return low;
    }

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

    private static void Tell(End end, End other, string path, ProblemList problems)
    {
        var station = Length.FromNanometres(end.IsStart ? 0 : end.Line.Chain.LevelNm);
        problems.Add(
            ProblemCode.LinesGap, new(path, end.Line.Line.Id, station), end.Side, end.Name, other.Side, other.Name,
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
}
