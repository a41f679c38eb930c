using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Editing;

/// <summary>A place on a line.</summary>
/// <param name="At">Level distance from the start of the leg.</param>
/// <param name="Offset">How far the point asked for lies to the right of the line, walking it forward; below zero to the left.</param>
/// <param name="Point">On the line.</param>
public sealed record LinePlace(LineId Line, LegId Leg, Length At, Length Station, Length Offset, SitePoint Point);

/// <summary>Finds places on the lines of a job as they are drawn.</summary>
public static class Placing
{
    /// <summary>The place nearest to a point; nothing where no leg is as near as asked for.</summary>
    /// <param name="only">Looks at one line alone.</param>
    public static LinePlace? Nearest(Job job, SitePoint point, Length within, LineId? only = null)
    {
        LinePlace? best = null;
        foreach (var line in job.Lines.Where(l => only is not { } id || l.Id == id))
        {
            var shape = LineShape.Of(line);
            for (var i = 0; i < shape.Legs.Count; i++)
            {
                if (shape.Vertices[i].Leg is not { } leg) continue;
                var foot = shape.Legs[i].Nearest(point);
                var off = Length.Abs(foot.Right);
                if (off > within || (best is not null && off >= Length.Abs(best.Offset))) continue;
                var at = Length.FromNanometres(foot.AtNm);
                best = new(line.Id, leg.Id, at, Length.FromNanometres(shape.StartsNm[i] + foot.AtNm), foot.Right, foot.Point);
            }
        }
        return best;
    }

    /// <summary>The place at a station of a line, kept within its ends; nothing where there is no such line.</summary>
    public static LinePlace? AtStation(Job job, LineId line, Length station)
    {
        if (EditDraft.Shape(job, line) is not { Legs.Count: > 0 } shape || !double.IsFinite(station.Metres)) return null;
        var nm = Math.Clamp(Length.Max(Length.Zero, Length.Min(station, new(1e6))).Nanometres, 0, shape.LevelNm);
        var index = shape.LegAt(nm);
        return shape.Vertices[index].Leg is { } leg
            ? new(line, leg.Id, Length.FromNanometres(nm - shape.StartsNm[index]), Length.FromNanometres(nm), Length.Zero, shape.Point(nm))
            : null;
    }
}
