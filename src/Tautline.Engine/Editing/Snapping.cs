using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>What a point snaps to, the stronger first.</summary>
public enum SnapKind
{
    /// <summary>A vertex of another line, or of this one.</summary>
    Vertex,

    /// <summary>Two guides meet.</summary>
    Crossing,

    /// <summary>On another leg.</summary>
    OnLeg,

    /// <summary>Straight on from the leg before.</summary>
    Straight,

    /// <summary>Square to the leg before.</summary>
    RightAngle,

    /// <summary>Due north, south, east or west, where there is no leg before.</summary>
    Cardinal,

    /// <summary>On the extension of a leg past its end.</summary>
    Extension,

    /// <summary>Parallel or square to another leg.</summary>
    Parallel,

    /// <summary>A round length alone.</summary>
    RoundLength,
}

/// <summary>A point that is snapped to.</summary>
/// <param name="IsRound">True where the length from the vertex before is round too.</param>
/// <param name="Id">Of the vertex or leg it is taken from; empty for a length alone.</param>
public sealed record Snap(SnapKind Kind, SitePoint Point, bool IsRound, string Id);

/// <summary>A point on its way.</summary>
/// <param name="Tolerance">How far a snap may move it.</param>
/// <param name="From">The vertex before, to which length and direction are told; nothing for the first point of a line.</param>
/// <param name="Way">The way the leg before ran; nothing without one.</param>
/// <param name="Step">What lengths are rounded to: a foot or half a metre; zero for none.</param>
/// <param name="Except">A vertex that is dragged: neither it nor its legs are snapped to.</param>
public sealed record SnapAsk(SitePoint Point, Length Tolerance, SitePoint? From, Direction? Way, Length Step, VertexId? Except);

/// <summary>Finds what a point on its way may snap to, the best first. All within the tolerance, none twice.</summary>
public static class Snapping
{
    private const double SameDegrees = 0.02;

    public static IReadOnlyList<Snap> Candidates(Job job, SnapAsk ask)
    {
        List<Snap> found = [];
        List<(SitePoint Through, Direction Way, SnapKind Kind, string Id)> guides = [];
        foreach (var line in job.Lines) Add(LineShape.Of(line), ask, found, guides);
        if (ask is { From: { } from, Way: { } way })
        {
            guides.Add((from, way, SnapKind.Straight, ""));
            guides.Add((from, way.Left, SnapKind.RightAngle, ""));
        }
        else if (ask.From is { } start)
        {
            guides.Add((start, Direction.DueNorth, SnapKind.Cardinal, ""));
            guides.Add((start, Direction.DueEast, SnapKind.Cardinal, ""));
        }
        AddGuides(ask, found, guides);
        if (Round(ask.Point, ask) is { } round) found.Add(new(SnapKind.RoundLength, round, true, ""));
        return [.. found
            .Where(s => s.Point.DistanceTo(ask.Point) <= ask.Tolerance).OrderBy(s => s.Kind).ThenByDescending(s => s.IsRound)
            .ThenBy(s => s.Point.DistanceTo(ask.Point).Metres)];
    }

    private static void Add(LineShape shape, SnapAsk ask, List<Snap> found, List<(SitePoint, Direction, SnapKind, string)> guides)
    {
        foreach (var vertex in shape.Vertices)
            if (vertex.Id != ask.Except && LegPath.PointOf(vertex) is var p && p.DistanceTo(ask.Point) <= ask.Tolerance)
                found.Add(new(SnapKind.Vertex, p, false, vertex.Id.Value));
        for (var i = 0; i < shape.Legs.Count; i++)
        {
            if (shape.Vertices[i].Id == ask.Except || shape.Vertices[shape.Next(i)].Id == ask.Except) continue;
            var (path, id) = (shape.Legs[i], shape.Vertices[i].Leg?.Id.Value ?? "");
            var foot = path.Nearest(ask.Point);
            if (Length.Abs(foot.Right) <= ask.Tolerance && foot.AtNm > 0 && foot.AtNm < path.LevelNm) found.Add(new(SnapKind.OnLeg, foot.Point, false, id));
            if (path.Curve is not null) continue;
            if (IsPast(path, ask.Point)) AddGuide(guides, ask, (path.To, path.Heading, SnapKind.Extension, id));
            if (ask.From is not { } from) continue;
            AddGuide(guides, ask, (from, path.Heading, SnapKind.Parallel, id));
            AddGuide(guides, ask, (from, path.Heading.Left, SnapKind.Parallel, id));
        }
    }

    /// <summary>Only guides that pass near the point are kept: there may be thousands of legs.</summary>
    private static void AddGuide(
        List<(SitePoint Through, Direction Way, SnapKind Kind, string Id)> guides, SnapAsk ask, (SitePoint Through, Direction Way, SnapKind Kind, string Id) guide)
    {
        if (Foot(ask.Point, guide.Through, guide.Way).DistanceTo(ask.Point) > ask.Tolerance) return;
        if (guides.Exists(g => g.Through == guide.Through && Same(g.Way, guide.Way))) return;
        guides.Add(guide);
    }

    private static void AddGuides(SnapAsk ask, List<Snap> found, List<(SitePoint Through, Direction Way, SnapKind Kind, string Id)> guides)
    {
        foreach (var guide in guides)
        {
            var foot = Foot(ask.Point, guide.Through, guide.Way);
            var rounded = ask.From == guide.Through && Round(foot, ask) is { } r && r.DistanceTo(ask.Point) <= ask.Tolerance ? r : (SitePoint?)null;
            found.Add(new(guide.Kind, rounded ?? foot, rounded is not null, guide.Id));
        }
        for (var i = 0; i < guides.Count; i++)
            for (var j = i + 1; j < guides.Count && j < i + 12; j++)
                if (Crossing(guides[i].Through, guides[i].Way, guides[j].Through, guides[j].Way) is { } crossing)
                    found.Add(new(SnapKind.Crossing, crossing, false, guides[j].Id));
    }

    private static bool IsPast(LegPath path, SitePoint point) => path.FootNm(point) is var at && (at < 0 || at > path.LevelNm);

    private static bool Same(Direction a, Direction b)
    {
        var off = Math.Abs(Direction.Between(a, b));
        return off < SameDegrees || off > 180 - SameDegrees;
    }

    private static SitePoint Foot(SitePoint point, SitePoint through, Direction way)
        => through.Step(way, (point.East - through.East) * way.East + (point.North - through.North) * way.North);

    /// <summary>The point at a round distance from the vertex before, the same way.</summary>
    private static SitePoint? Round(SitePoint point, SnapAsk ask)
    {
        if (ask.From is not { } from || !(ask.Step.Metres > 0) || Survey.Way(from, point) is not { } way) return null;
        var steps = Math.Round(from.DistanceTo(point) / ask.Step);
        return steps < 1 ? null : from.Step(way, ask.Step * steps);
    }

    private static SitePoint? Crossing(SitePoint a, Direction aWay, SitePoint b, Direction bWay)
    {
        var across = aWay.East * bWay.North - aWay.North * bWay.East;
        if (Math.Abs(across) < 0.02) return null; // too flat to mean a point
        var along = ((b.East - a.East) * bWay.North - (b.North - a.North) * bWay.East) / across;
        return a.Step(aWay, along);
    }
}
