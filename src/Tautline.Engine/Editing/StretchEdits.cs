using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Edits of obstacles and of work along a line. A stretch is kept within its leg; moved past an end it stops there.</summary>
public static class StretchEdits
{
    private static readonly Length shortest = Length.FromInches(1);

    /// <summary>Enters an obstacle from one station of a line to another. Over a vertex it becomes one stretch for each leg.</summary>
    /// <param name="like">Kind and the rest; its id, leg and place are not looked at.</param>
    public static EditOutcome Place(Job job, LineId line, Length from, Length to, Obstacle like, NewIds ids)
    {
        var label = new EditLabel(EditKind.PlaceObstacle, line.Value);
        if (Parts(job, line, from, to) is not { } parts) return EditDraft.Unknown(label, "line", line.Value);
        if (parts.Count == 0) return EditDraft.Refuse(label, ProblemCode.EditStretchEmpty);
        if (Lacks(like, label) is { } refused) return refused;
        var added = parts.Select(p => like with { Id = new(ids.Next("obstacle")), Leg = p.Leg, From = p.From, To = p.To }).ToList();
        return EditDraft.Finish(job, job with { Obstacles = [.. job.Obstacles, .. added] }, label with { Subject = added[0].Id.Value });
    }

    /// <summary>Enters work from one station of a line to another. Over a vertex it becomes one stretch for each leg.</summary>
    public static EditOutcome Place(Job job, LineId line, Length from, Length to, SiteWork like, NewIds ids)
    {
        var label = new EditLabel(EditKind.PlaceWork, line.Value);
        if (Parts(job, line, from, to) is not { } parts) return EditDraft.Unknown(label, "line", line.Value);
        if (parts.Count == 0) return EditDraft.Refuse(label, ProblemCode.EditStretchEmpty);
        if (Lacks(like, label) is { } refused) return refused;
        var added = parts.Select(p => like with { Id = new(ids.Next("work")), Leg = p.Leg, From = p.From, To = p.To }).ToList();
        return EditDraft.Finish(job, job with { Works = [.. job.Works, .. added] }, label with { Subject = added[0].Id.Value });
    }

    /// <summary>What the planner would refuse, wherever the obstacle lies. A kind it does not know is kept.</summary>
    private static EditOutcome? Lacks(Obstacle obstacle, EditLabel label)
        => !(obstacle.Clearance.Metres is >= 0 and < 1000) ? EditDraft.Refuse(label, ProblemCode.EditClearance, obstacle.Clearance)
            : obstacle.Kind is Obstacle.Swale or Obstacle.Culvert && obstacle.Depth is not { Metres: > 0 and < 100 }
                ? EditDraft.Refuse(label, ProblemCode.ClosureDepth, obstacle.Id.Value ?? "", obstacle.Kind) : null;

    private static EditOutcome? Lacks(SiteWork work, EditLabel label)
        => work.Posts < 0 || (work.Kind == SiteWork.Clearing && work.Width is not { Metres: > 0 and < 1000 })
                ? EditDraft.Refuse(label, ProblemCode.EditWorkWidth) : null;

    /// <summary>The parts of a stretch on the legs it runs over; nothing where there is no such line.</summary>
    private static List<(LegId Leg, Length From, Length To)>? Parts(Job job, LineId line, Length from, Length to)
    {
        if (EditDraft.Shape(job, line) is not { } shape) return null;
        var (start, end) = (Math.Max(0, Length.Min(from, to).Nanometres), Math.Min(shape.LevelNm, Length.Max(from, to).Nanometres));
        List<(LegId, Length, Length)> parts = [];
        for (var i = 0; i < shape.Legs.Count; i++)
        {
            var (a, b) = (Math.Max(start, shape.StartsNm[i]), Math.Min(end, shape.StartsNm[i + 1]));
            if (shape.Vertices[i].Leg is { } leg && b - a >= shortest.Nanometres)
                parts.Add((leg.Id, Length.FromNanometres(a - shape.StartsNm[i]), Length.FromNanometres(b - shape.StartsNm[i])));
        }
        return parts;
    }

    /// <summary>Moves an obstacle; its length stays as far as the leg allows.</summary>
    /// <param name="from">Level distance of its start from the start of the leg.</param>
    public static EditOutcome Move(Job job, ObstacleId id, LegId leg, Length from)
        => Replace(job, id, EditKind.MoveObstacle, o => o with { Leg = leg, From = from, To = from + (o.To - o.From) }, slide: true);

    public static EditOutcome Resize(Job job, ObstacleId id, Length from, Length to)
        => Replace(job, id, EditKind.ResizeObstacle, o => o with { From = Length.Min(from, to), To = Length.Max(from, to) }, slide: false);

    /// <summary>Anything else of an obstacle; its id stays.</summary>
    public static EditOutcome Change(Job job, ObstacleId id, Func<Obstacle, Obstacle> change) => Replace(job, id, EditKind.ChangeObstacle, change, slide: false);

    public static EditOutcome Delete(Job job, ObstacleId id)
    {
        var label = new EditLabel(EditKind.DeleteObstacle, id.Value);
        return job.Obstacles.Any(o => o.Id == id)
            ? EditDraft.Finish(job, job with { Obstacles = [.. job.Obstacles.Where(o => o.Id != id)] }, label)
            : EditDraft.Unknown(label, "obstacle", id.Value);
    }

    public static EditOutcome Move(Job job, WorkId id, LegId leg, Length from)
        => Replace(job, id, EditKind.MoveWork, w => w with { Leg = leg, From = from, To = from + (w.To - w.From) }, slide: true);

    public static EditOutcome Resize(Job job, WorkId id, Length from, Length to)
        => Replace(job, id, EditKind.ResizeWork, w => w with { From = Length.Min(from, to), To = Length.Max(from, to) }, slide: false);

    public static EditOutcome Change(Job job, WorkId id, Func<SiteWork, SiteWork> change) => Replace(job, id, EditKind.ChangeWork, change, slide: false);

    public static EditOutcome Delete(Job job, WorkId id)
    {
        var label = new EditLabel(EditKind.DeleteWork, id.Value);
        return job.Works.Any(w => w.Id == id)
            ? EditDraft.Finish(job, job with { Works = [.. job.Works.Where(w => w.Id != id)] }, label)
            : EditDraft.Unknown(label, "work", id.Value);
    }

    private static EditOutcome Replace(Job job, ObstacleId id, EditKind kind, Func<Obstacle, Obstacle> change, bool slide)
    {
        var label = new EditLabel(kind, id.Value);
        if (job.Obstacles.FirstOrDefault(o => o.Id == id) is not { } was) return EditDraft.Unknown(label, "obstacle", id.Value);
        var now = change(was) with { Id = id };
        if (EditDraft.Find(job, now.Leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", now.Leg.Value);
        if (Within(now.From, now.To, shape.Legs[index].LevelNm, slide) is not var (from, to)) return EditDraft.Refuse(label, ProblemCode.EditStretchEmpty);
        if (Lacks(now, label) is { } refused) return refused;
        now = now with { From = from, To = to };
        return EditDraft.Finish(job, job with { Obstacles = [.. job.Obstacles.Select(o => o.Id == id ? now : o)] }, label);
    }

    private static EditOutcome Replace(Job job, WorkId id, EditKind kind, Func<SiteWork, SiteWork> change, bool slide)
    {
        var label = new EditLabel(kind, id.Value);
        if (job.Works.FirstOrDefault(w => w.Id == id) is not { } was) return EditDraft.Unknown(label, "work", id.Value);
        var now = change(was) with { Id = id };
        if (EditDraft.Find(job, now.Leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", now.Leg.Value);
        if (Within(now.From, now.To, shape.Legs[index].LevelNm, slide) is not var (from, to)) return EditDraft.Refuse(label, ProblemCode.EditStretchEmpty);
        if (Lacks(now, label) is { } refused) return refused;
        now = now with { From = from, To = to };
        return EditDraft.Finish(job, job with { Works = [.. job.Works.Select(w => w.Id == id ? now : w)] }, label);
    }

    /// <summary>A stretch within its leg: slid back, or cut at its ends; nothing where an inch or less is left.</summary>
    private static (Length From, Length To)? Within(Length from, Length to, long levelNm, bool slide)
    {
        if (!double.IsFinite(from.Metres) || !double.IsFinite(to.Metres)) return null;
        var level = Length.FromNanometres(levelNm);
        if (slide)
        {
            var start = Length.Max(Length.Zero, Length.Min(from, level - (to - from)));
            (from, to) = (start, start + (to - from));
        }
        (from, to) = (Length.Max(Length.Zero, from), Length.Min(level, to));
        return to - from < shortest ? null : (from, to);
    }
}
