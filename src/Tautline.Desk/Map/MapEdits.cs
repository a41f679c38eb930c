using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Desk.Map;

/// <summary>What the hand did, as an edit of the job.</summary>
public static class MapEdits
{
    /// <summary>A line through points; where it begins at an end of an open line, that line goes on.</summary>
    public static EditOutcome Draw(Job job, IReadOnlyList<SitePoint> points, bool closed, SpecId spec, string name, NewIds ids)
    {
        if (!closed && points.Count > 1 && EndAt(job, points[0]) is var (line, atStart)) return Continue(job, line, atStart, points, ids);
        return LineEdits.Draw(job, points, closed, spec, name, ids);
    }

    private static EditOutcome Continue(Job job, LineId line, bool atStart, IReadOnlyList<SitePoint> points, NewIds ids)
    {
        EditOutcome outcome = LineEdits.Continue(job, line, atStart, points[1], ids);
        foreach (SitePoint point in points.Skip(2))
            if (outcome.Job is { } so) outcome = LineEdits.Continue(so, line, atStart, point, ids);
        return outcome;
    }

    private static (LineId Line, bool AtStart)? EndAt(Job job, SitePoint point)
    {
        foreach (Line line in job.Lines.Where(l => !l.Closed))
            if (LineShape.Of(line) is { Legs.Count: > 0 } shape)
            {
                if (shape.Legs[^1].To.DistanceTo(point).Metres < 1e-3) return (line.Id, false);
                if (shape.Legs[0].From.DistanceTo(point).Metres < 1e-3) return (line.Id, true);
            }
        return null;
    }

    /// <summary>Drops what was dragged.</summary>
    /// <param name="part">'middle' of a leg, 'from' or 'to' of a stretch; empty for the whole thing.</param>
    /// <param name="grabbed">Where it was taken hold of.</param>
    public static EditOutcome Drop(Job job, string kind, string id, string part, SitePoint at, SitePoint grabbed, NewIds ids) => kind switch
    {
        "vertex" => VertexEdits.Move(job, new(id), at),
        "leg" => Pull(job, new(id), at, grabbed, ids),
        "gate" => Placed(job, at, place => GateEdits.Move(job, new(id), place.Leg, place.At)),
        "pin" => Placed(job, at, place => PlaceEdits.Move(job, new PinId(id), place.Leg, place.At)),
        "obstacle" => Stretch(
            job, job.Obstacles.FirstOrDefault(o => o.Id.Value == id) is { } o ? (o.Leg, o.From, o.To) : null, part, at, grabbed,
            (leg, from) => StretchEdits.Move(job, new ObstacleId(id), leg, from), (from, to) => StretchEdits.Resize(job, new ObstacleId(id), from, to)),
        "work" => Stretch(
            job, job.Works.FirstOrDefault(w => w.Id.Value == id) is { } w ? (w.Leg, w.From, w.To) : null, part, at, grabbed,
            (leg, from) => StretchEdits.Move(job, new WorkId(id), leg, from), (from, to) => StretchEdits.Resize(job, new WorkId(id), from, to)),
        _ => Refused(),
    };

    /// <summary>A corner pulled out of a leg, at the place it was taken hold of.</summary>
    private static EditOutcome Pull(Job job, LegId leg, SitePoint at, SitePoint grabbed, NewIds ids)
    {
        foreach (Line line in job.Lines)
            if (LineShape.Of(line) is var shape && shape.IndexOf(leg) is >= 0 and var index)
                return VertexEdits.InsertAt(job, leg, Length.FromNanometres(shape.Legs[index].Nearest(grabbed).AtNm), at, ids);
        return Refused();
    }

    private static EditOutcome Stretch(
        Job job, (LegId Leg, Length From, Length To)? was, string part, SitePoint at, SitePoint grabbed, Func<LegId, Length, EditOutcome> move,
        Func<Length, Length, EditOutcome> resize)
    {
        if (was is not var (leg, from, to) || Nearest(job, at) is not { } place) return Refused();
        if (part is "from" or "to")
        {
            Length end = place.Leg == leg ? place.At : part == "from" ? Length.Zero : to;
            return part == "from" ? resize(end, to) : resize(from, end);
        }

        Length hold = Nearest(job, grabbed) is { } start && start.Leg == leg ? start.At - from : Length.Zero;
        return move(place.Leg, place.At - hold);
    }

    /// <summary>Takes out what is selected.</summary>
    public static EditOutcome Delete(Job job, Selection selected) => selected.Kind switch
    {
        SelectionKind.Vertex when VertexOf(job, selected) is { } vertex => VertexEdits.Delete(job, vertex),
        SelectionKind.Gate => GateEdits.Delete(job, new(selected.Id)),
        SelectionKind.Obstacle => StretchEdits.Delete(job, new ObstacleId(selected.Id)),
        SelectionKind.Work => StretchEdits.Delete(job, new WorkId(selected.Id)),
        SelectionKind.Pin => PlaceEdits.Delete(job, new PinId(selected.Id)),
        SelectionKind.Line => LineEdits.Delete(job, selected.Line),
        _ => Refused(),
    };

    public static VertexId? VertexOf(Job job, Selection selected) =>
        job.Lines.FirstOrDefault(l => l.Id == selected.Line) is { } line && LineShape.Of(line).Vertices is var all && selected.Index >= 0 && selected.Index < all.Count
            ? all[selected.Index].Id
            : null;

    public static LinePlace? Nearest(Job job, SitePoint point, LineId? only = null) => Placing.Nearest(job, point, Length.FromMetres(1e6), only);

    public static EditOutcome Placed(Job job, SitePoint at, Func<LinePlace, EditOutcome> edit) => Nearest(job, at) is { } place ? edit(place) : Refused();

    private static EditOutcome Refused() => new(null, default, [new Problem(ProblemCode.EditUnknown, new(""), ["place", ""])]);
}
