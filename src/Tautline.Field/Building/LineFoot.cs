using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Field.Log;

namespace Tautline.Field.Building;

/// <summary>Where a place in the job lies along its lines and beside them: square to a straight leg, through the centre on a curved one.</summary>
/// <param name="Line">Index of the line.</param>
/// <param name="Leg">The leg it was found on.</param>
/// <param name="At">Level, from the start of the leg; before zero or past its end where the place is out over an end of the line.</param>
/// <param name="Off">Above zero to the right of the line walked forward.</param>
internal readonly record struct LineFoot(int Line, SiteLeg Leg, Length At, Length Off)
{
    /// <summary>Level, from the start of the line.</summary>
    public Length Station => Length.FromNanometres(Leg.StartNm) + At;

    /// <summary>Nothing where no line is nearer than <see cref="Standing.NearLine"/>. The leg the post was set on goes before one that is nearer.</summary>
    public static LineFoot? Of(Plan plan, PostDone post)
        => Best(All(plan, post, overEnds: true).Where(f => Length.Abs(f.Off) < Standing.NearLine), post);

    /// <summary>The same on legs that have a name, and held to them: what is out over an end of a line is off that end by so much.</summary>
    public static LineFoot? OnLeg(Plan plan, PostDone post)
        => Best(All(plan, post, overEnds: false).Where(f => f.Leg.Leg is not null && Length.Abs(f.Off) < Standing.NearLine), post);

    /// <summary>The nearest place of one line, however far it is.</summary>
    public static LineFoot Nearest(Plan plan, int line, PostDone post) => All(plan, post, overEnds: true).Where(f => f.Line == line).MinBy(f => Length.Abs(f.Off));

    private static IEnumerable<LineFoot> All(Plan plan, PostDone post, bool overEnds)
        => plan.Basis.Lines.SelectMany((l, line) => l.Site.Chain.Legs.Select(leg => On(l.Site, line, leg, post, overEnds)));

    private static LineFoot? Best(IEnumerable<LineFoot> feet, PostDone post)
    {
        LineFoot? best = null;
        foreach (var foot in feet)
        {
            if (foot.Leg.Leg?.Id == post.Leg) return foot;
            if (best is not { } held || Length.Abs(foot.Off) < Length.Abs(held.Off)) best = foot;
        }
        return best;
    }

    private static LineFoot On(SiteLine site, int line, SiteLeg leg, PostDone post, bool overEnds)
    {
        // Where the line was not moved the place is the one that was entered, to the last digit.
        if (leg.Leg?.Id == post.Leg && WasEntered(site.Chain, leg, post)) return new(line, leg, post.At, Length.Zero);
        if (leg.Curve is { } curve) return OnArc(line, leg, curve, post);
        var open = overEnds && !site.Line.Closed;
        return OnStraight(line, leg, post, open && leg.Index == 0, open && leg.Index == site.Chain.Legs.Count - 1);
    }

    private static bool WasEntered(Chain chain, SiteLeg leg, PostDone post)
    {
        if (post.At.Nanometres < 0 || post.At.Nanometres > leg.LevelNm) return false;
        var (east, north) = chain.Point(leg.StartNm + post.At.Nanometres);
        return Distance(post, east, north) < Length.FromMillimetres(1);
    }

    private static LineFoot OnStraight(int line, SiteLeg leg, PostDone post, bool before, bool past)
    {
        var (dx, dy) = (post.East.Metres - leg.From.East.Metres, post.North.Metres - leg.From.North.Metres);
        var level = leg.LevelNm * 1e-9;
        var along = dx * leg.Heading.East + dy * leg.Heading.North;
        var held = Math.Clamp(along, before ? Math.Min(along, 0) : 0, past ? Math.Max(along, level) : level);
        return Foot(line, leg, held, leg.Heading, dx - held * leg.Heading.East, dy - held * leg.Heading.North);
    }

    private static LineFoot OnArc(int line, SiteLeg leg, PlacedCurve curve, PostDone post)
    {
        var first = Direction.FromVector((curve.Pc.East - curve.Centre.East).Metres, (curve.Pc.North - curve.Centre.North).Metres);
        var (dx, dy) = (post.East.Metres - curve.Centre.East.Metres, post.North.Metres - curve.Centre.North.Metres);
        // Right at the centre every place of the arc is as near.
        var turn = dx == 0 && dy == 0 ? 0 : Direction.Between(first, Direction.FromVector(dx, dy));
        var part = Within(curve.Side == CurveSide.Right ? turn : -turn, curve.Curve.DeltaDegrees) / curve.Curve.DeltaDegrees;
        var at = curve.At(curve.PcStation + part * curve.Curve.ArcLength)!.Value;
        return Foot(line, leg, part * leg.LevelNm * 1e-9, at.Tangent, (post.East - at.Point.East).Metres, (post.North - at.Point.North).Metres);
    }

    /// <summary>An angle from the start of an arc, held to the arc: past either end it is the nearer one.</summary>
    private static double Within(double degrees, double delta)
    {
        var ahead = degrees < 0 ? degrees + 360 : degrees;
        return ahead <= delta ? ahead : ahead - delta < 360 - ahead ? delta : 0;
    }

    private static LineFoot Foot(int line, SiteLeg leg, double along, Direction heading, double dx, double dy)
    {
        var off = Math.Sqrt(dx * dx + dy * dy);
        var right = heading.North * dx - heading.East * dy;
        return new(line, leg, new Length(along), new Length(right < 0 ? -off : off));
    }

    private static Length Distance(PostDone post, double east, double north)
    {
        var (x, y) = (post.East.Metres - east, post.North.Metres - north);
        return new(Math.Sqrt(x * x + y * y));
    }
}
