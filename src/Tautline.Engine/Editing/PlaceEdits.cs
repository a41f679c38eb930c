using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Edits of places along a line: pinned posts and shots of the ground. A place is kept within its leg.</summary>
public static class PlaceEdits
{
    /// <summary>Pins a line post.</summary>
    public static EditOutcome Pin(Job job, LegId leg, Length at, bool stands, NewIds ids)
    {
        var pin = new Pin { Id = new(ids.Next("pin")), Leg = leg, At = at, Stands = stands };
        return Put(job, leg, at, new(EditKind.PlacePin, pin.Id.Value), on => job with { Pins = [.. job.Pins, pin with { At = on }] });
    }

    public static EditOutcome Move(Job job, PinId id, LegId leg, Length at)
        => Change(job, id, EditKind.MovePin, p => p with { Leg = leg, At = at });

    /// <summary>Anything else of a pin; its id stays.</summary>
    public static EditOutcome Change(Job job, PinId id, Func<Pin, Pin> change) => Change(job, id, EditKind.ChangePin, change);

    public static EditOutcome Delete(Job job, PinId id)
    {
        var label = new EditLabel(EditKind.DeletePin, id.Value);
        return job.Pins.Any(p => p.Id == id)
            ? EditDraft.Finish(job, job with { Pins = [.. job.Pins.Where(p => p.Id != id)] }, label)
            : EditDraft.Unknown(label, "pin", id.Value);
    }

    private static EditOutcome Change(Job job, PinId id, EditKind kind, Func<Pin, Pin> change)
    {
        var label = new EditLabel(kind, id.Value);
        if (job.Pins.FirstOrDefault(p => p.Id == id) is not { } was) return EditDraft.Unknown(label, "pin", id.Value);
        var now = change(was) with { Id = id };
        return Put(job, now.Leg, now.At, label, on => job with { Pins = [.. job.Pins.Select(p => p.Id == id ? now with { At = on } : p)] });
    }

    /// <summary>Adds a shot of the ground behind the others of its line.</summary>
    public static EditOutcome Shoot(Job job, GroundShot shot)
        => Shots(job, shot, EditKind.PlaceShot, "", (shots, s) => [.. shots, s]);

    /// <summary>Another place or height of a shot.</summary>
    /// <param name="index">Among the shots of its line, in the order they were taken.</param>
    public static EditOutcome Change(Job job, LineId line, int index, GroundShot shot)
    {
        var label = new EditLabel(EditKind.ChangeShot, $"{line.Value}/{index}");
        if (ShotAt(job, line, index) is null) return EditDraft.Unknown(label, "shot", label.Subject);
        return Shots(job, shot, EditKind.ChangeShot, label.Subject, (shots, s) => [.. shots.Select((old, i) => i == index ? s : old)]);
    }

    /// <summary>Takes a shot out. What was levelled over it keeps its height.</summary>
    public static EditOutcome DeleteShot(Job job, LineId line, int index)
    {
        var label = new EditLabel(EditKind.DeleteShot, $"{line.Value}/{index}");
        if (ShotAt(job, line, index) is null) return EditDraft.Unknown(label, "shot", label.Subject);
        var old = job.Lines.First(l => l.Id == line);
        List<GroundShot> shots = [.. Levelled.Heights(old.Ground!.Shots)];
        shots.RemoveAt(index);
        return EditDraft.Finish(job, EditDraft.With(job, old with { Ground = Levelled.With(old.Ground, shots) }), label);
    }

    private static GroundShot? ShotAt(Job job, LineId line, int index)
        => job.Lines.FirstOrDefault(l => l.Id == line)?.Ground?.Shots is { } shots && index >= 0 && index < shots.Count ? shots[index] : null;

    private static EditOutcome Shots(
        Job job, GroundShot shot, EditKind kind, string subject, Func<IReadOnlyList<GroundShot>, GroundShot, IReadOnlyList<GroundShot>> put)
    {
        var label = new EditLabel(kind, subject);
        if (shot.Height is null && shot.Rod is null) return EditDraft.Refuse(label, ProblemCode.GroundShotEmpty);
        if (!(Math.Abs(shot.Height?.Metres ?? 0) < 20_000)) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        return Put(job, shot.Leg, shot.At, label, on =>
        {
            var line = EditDraft.Find(job, shot.Leg)!.Value.Shape.Line;
            var ground = line.Ground ?? new LineGround();
            return EditDraft.With(job, line with { Ground = ground with { Shots = put(ground.Shots, shot with { At = on }) } });
        });
    }

    private static EditOutcome Put(Job job, LegId leg, Length at, EditLabel label, Func<Length, Job> put)
    {
        if (EditDraft.Find(job, leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", leg.Value);
        if (!double.IsFinite(at.Metres)) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        var level = Length.FromNanometres(shape.Legs[index].LevelNm);
        return EditDraft.Finish(job, put(Length.Max(Length.Zero, Length.Min(at, level))), label);
    }
}
