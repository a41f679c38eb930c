using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>The foot of a point on a leg.</summary>
/// <param name="AtNm">Along the leg from its start, within its ends.</param>
/// <param name="Right">How far the point lies to the right of the leg, walking it forward; below zero to the left. Past an end the whole distance.</param>
public readonly record struct LegFoot(long AtNm, Length Right, SitePoint Point);

/// <summary>The way a leg runs as it is drawn, whether or not the job can be planned: straight where its arc is none.</summary>
public sealed record LegPath(SitePoint From, SitePoint To, PlacedCurve? Curve)
{
    public static LegPath Of(Vertex from, Vertex to)
    {
        var (a, b) = (PointOf(from), PointOf(to));
        var curve = CurveReader.Read(from.Leg?.Curve, from, to, a.DistanceTo(b), default, new ProblemList());
        return new(a, b, from.Leg?.Curve?.Bends is "left" or "right" ? curve : null);
    }

    public static SitePoint PointOf(Vertex vertex) => new(Whole.Tame(vertex.East), Whole.Tame(vertex.North));

    public Length Chord => From.DistanceTo(To);

    /// <summary>Level length in whole nanometres, as the site stage measures it.</summary>
    public long LevelNm { get; } = Math.Max(1, Whole.Nm(Curve?.Curve.ArcLength ?? From.DistanceTo(To)));

    /// <summary>The way it runs at its start; due north where its ends are one.</summary>
    public Direction Heading => Curve?.Tangent ?? Survey.Way(From, To) ?? Direction.DueNorth;

    /// <summary>The way it runs at its end.</summary>
    public Direction Ahead => Curve?.Ahead ?? Heading;

    public SitePoint At(long nm)
    {
        if (Curve is { } curve) return curve.At(curve.PcStation + Length.FromNanometres(Math.Clamp(nm, 0, LevelNm)))?.Point ?? To;
        var part = nm / (double)LevelNm;
        return new(From.East + (To.East - From.East) * part, From.North + (To.North - From.North) * part);
    }

    /// <summary>The way it runs at a distance from its start.</summary>
    public Direction HeadingAt(long nm)
        => Curve is { } curve ? curve.At(curve.PcStation + Length.FromNanometres(Math.Clamp(nm, 0, LevelNm)))?.Tangent ?? Ahead : Heading;

    public LegFoot Nearest(SitePoint point)
    {
        var at = Math.Clamp(FootNm(point), 0, LevelNm);
        var (foot, way) = (At(at), HeadingAt(at));
        var (east, north) = ((point.East - foot.East).Metres, (point.North - foot.North).Metres);
        var distance = foot.DistanceTo(point);
        return new(at, east * way.North - north * way.East < 0 ? -distance : distance, foot);
    }

    /// <summary>Square on to the leg, also past its ends; of an arc the nearer of its ends there.</summary>
    public long FootNm(SitePoint point)
    {
        if (Curve is { } curve) return ArcFoot(curve, point);
        var (e, n) = ((To.East - From.East).Metres, (To.North - From.North).Metres);
        var square = e * e + n * n;
        if (square == 0) return 0;
        var part = ((point.East - From.East).Metres * e + (point.North - From.North).Metres * n) / square;
        return Whole.Nm(new Length(part * LevelNm * 1e-9));
    }

    private long ArcFoot(PlacedCurve curve, SitePoint point)
    {
        if (Survey.Way(curve.Centre, point) is not { } to || Survey.Way(curve.Centre, From) is not { } from) return 0;
        var turn = Direction.Between(from, to) * (curve.Side == CurveSide.Right ? 1 : -1);
        if (turn < 0) turn += 360;
        var delta = curve.Curve.DeltaDegrees;
        if (turn > delta) return turn - delta < 360 - turn ? LevelNm : 0;
        return new Length(turn / delta * LevelNm * 1e-9).Nanometres;
    }
}
