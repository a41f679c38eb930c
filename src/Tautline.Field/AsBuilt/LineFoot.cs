using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.AsBuilt;

/// <summary>Where a place in the job lies along its lines and beside them.</summary>
/// <param name="Line">Index of the line.</param>
/// <param name="Station">Level; before zero or past the end where it stands out over an end.</param>
/// <param name="Off">Above zero to the right of the line walked forward.</param>
internal readonly record struct LineFoot(int Line, Length Station, Length Off)
{
    /// <summary>Nothing where no line is nearer than <see cref="Standing.NearLine"/>. The leg the post was set on goes before one that is nearer.</summary>
    public static LineFoot? Of(Plan plan, PostDone post)
    {
        LineFoot? best = null;
        for (var l = 0; l < plan.Basis.Lines.Count; l++)
            foreach (var leg in plan.Basis.Lines[l].Site.Chain.Legs)
            {
                var foot = On(plan, l, leg, post);
                if (Length.Abs(foot.Off) >= Standing.NearLine) continue;
                if (leg.Leg?.Id == post.Leg) return foot;
                if (best is not { } held || Length.Abs(foot.Off) < Length.Abs(held.Off)) best = foot;
            }
        return best;
    }

    private static LineFoot On(Plan plan, int line, SiteLeg leg, PostDone post)
    {
        var (chain, closed) = (plan.Basis.Lines[line].Site.Chain, plan.Lines[line].Closed);
        // Where the line was not moved the station is the one that was entered, to the last digit.
        if (leg.Leg?.Id == post.Leg && Entered(chain, leg, post) is { } entered) return new(line, entered, Length.Zero);
        var (before, past) = (!closed && leg.Index == 0, !closed && leg.Index == chain.Legs.Count - 1);
        return leg.Curve is { } curve ? OnArc(line, leg, curve, post) : OnStraight(line, leg, post, before, past);
    }

    private static Length? Entered(Chain chain, SiteLeg leg, PostDone post)
    {
        if (post.At.Nanometres < 0 || post.At.Nanometres > leg.LevelNm) return null;
        var station = leg.StartNm + post.At.Nanometres;
        var (east, north) = chain.Point(station);
        return Distance(post, east, north) < Length.FromMillimetres(1) ? Length.FromNanometres(station) : null;
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
        return new(line, Length.FromNanometres(leg.StartNm) + new Length(along), new Length(right < 0 ? -off : off));
    }

    private static Length Distance(PostDone post, double east, double north)
    {
        var (x, y) = (post.East.Metres - east, post.North.Metres - north);
        return new(Math.Sqrt(x * x + y * y));
    }
}
