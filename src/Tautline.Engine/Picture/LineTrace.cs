using Tautline.Engine.Editing;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>Points along a line as it is drawn.</summary>
internal static class LineTrace
{
    /// <summary>The points from one station to another: vertices between, arcs within the sagitta.</summary>
    public static List<double> Between(LineShape shape, long fromNm, long toNm)
    {
        List<double> points = [];
        if (shape.Legs.Count == 0) return points;
        var (from, to) = (Math.Clamp(fromNm, 0, shape.LevelNm), Math.Clamp(toNm, 0, shape.LevelNm));
        for (var leg = shape.LegAt(from); leg < shape.Legs.Count && (shape.StartsNm[leg] < to || points.Count == 0); leg++)
            Along(shape.Legs[leg], Math.Max(0, from - shape.StartsNm[leg]), Math.Min(shape.Legs[leg].LevelNm, to - shape.StartsNm[leg]), points);
        return points;
    }

    /// <summary>Adds a leg's points from one distance to another; its first only where the path does not end there yet.</summary>
    public static void Along(LegPath path, long fromNm, long toNm, List<double> points)
    {
        if (points.Count == 0) Add(path.At(fromNm), points);
        if (path.Curve is { } curve && toNm > fromNm)
        {
            // A chord over the sagitta s of radius R is about sqrt(8 R s) long.
            var step = Math.Sqrt(8 * curve.Curve.Radius.Metres * PictureStage.Sagitta.Metres) * 1e9;
            var steps = (int)Math.Min(10_000, Math.Ceiling((toNm - fromNm) / step));
            for (var i = 1; i < steps; i++) Add(path.At(fromNm + (toNm - fromNm) / steps * i), points);
        }
        Add(path.At(toNm), points);
    }

    public static void Add(SitePoint point, List<double> points)
    {
        points.Add(point.East.Metres);
        points.Add(point.North.Metres);
    }
}
