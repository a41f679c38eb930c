using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Editing;

/// <summary>Edits of gates. A gate is slid to where its opening lies within the leg; what runs into another gate is refused.</summary>
public static class GateEdits
{
    /// <summary>Sets a gate with the middle of its opening at a level distance from the start of a leg.</summary>
    /// <param name="like">Kind, opening and the rest; its id, leg and place are not looked at.</param>
    public static EditOutcome Place(Job job, LegId leg, Length centre, Gate like, NewIds ids)
    {
        var gate = like with { Id = new(ids.Next("gate")), Leg = leg, NearFace = centre - like.Opening / 2 };
        return Put(job, job.Gates, gate, new(EditKind.PlaceGate, gate.Id.Value), static (gates, g) => [.. gates, g]);
    }

    /// <summary>Moves a gate along its leg, or to another.</summary>
    /// <param name="centre">Level distance of the middle of its opening from the start of the leg.</param>
    public static EditOutcome Move(Job job, GateId id, LegId leg, Length centre)
        => Replace(job, id, EditKind.MoveGate, g => g with { Leg = leg, NearFace = centre - g.Opening / 2 });

    /// <summary>Puts the near face of a gate at a level distance from the start of its leg, as a tape reads it.</summary>
    public static EditOutcome SetNearFace(Job job, GateId id, Length near) => Replace(job, id, EditKind.MoveGate, g => g with { NearFace = near });

    /// <summary>Another opening; the middle stays, unless one face stands within a foot of an end of the leg: then that face stays.</summary>
    public static EditOutcome Resize(Job job, GateId id, Length opening) => Replace(job, id, EditKind.ResizeGate, g =>
    {
        if (EditDraft.Find(job, g.Leg) is not var (shape, index)) return g with { Opening = opening };
        var (foot, level) = (Length.FromInches(12), Length.FromNanometres(shape.Legs[index].LevelNm));
        var near = g.NearFace <= foot ? g.NearFace : level - g.NearFace - g.Opening <= foot ? g.NearFace + g.Opening - opening : g.NearFace + (g.Opening - opening) / 2;
        return g with { Opening = opening, NearFace = near };
    });

    /// <summary>Anything else of a gate; its id stays.</summary>
    public static EditOutcome Change(Job job, GateId id, Func<Gate, Gate> change) => Replace(job, id, EditKind.ChangeGate, change);

    public static EditOutcome Delete(Job job, GateId id)
    {
        var label = new EditLabel(EditKind.DeleteGate, id.Value);
        return job.Gates.Any(g => g.Id == id)
            ? EditDraft.Finish(job, job with { Gates = [.. job.Gates.Where(g => g.Id != id)] }, label)
            : EditDraft.Unknown(label, "gate", id.Value);
    }

    private static EditOutcome Replace(Job job, GateId id, EditKind kind, Func<Gate, Gate> change)
    {
        var label = new EditLabel(kind, id.Value);
        return job.Gates.FirstOrDefault(g => g.Id == id) is { } gate
            ? Put(job, job.Gates, change(gate) with { Id = id }, label, static (gates, now) => [.. gates.Select(g => g.Id == now.Id ? now : g)])
            : EditDraft.Unknown(label, "gate", id.Value);
    }

    private static EditOutcome Put(Job job, IReadOnlyList<Gate> gates, Gate gate, EditLabel label, Func<IReadOnlyList<Gate>, Gate, IReadOnlyList<Gate>> put)
    {
        if (EditDraft.Find(job, gate.Leg) is not var (shape, index)) return EditDraft.Unknown(label, "leg", gate.Leg.Value);
        var (least, most) = Site.GateReader.Sizes(gate.Kind) ?? (0.1, 200); // a kind the planner does not know is kept
        if (!(gate.Opening.Feet >= least - 1e-9 && gate.Opening.Feet <= most + 1e-9)) return EditDraft.Refuse(label, ProblemCode.GateSize, gate.Opening);
        if (!double.IsFinite(gate.NearFace.Metres)) return EditDraft.Refuse(label, ProblemCode.NotFinite);
        if (gate.Post is null && gate.Kind is Gate.Rolling or Gate.Overhead) return EditDraft.Refuse(label, ProblemCode.GatePostUnnamed, gate.Id.Value, gate.Kind);
        var level = Length.FromNanometres(shape.Legs[index].LevelNm);
        var near = Length.Max(Length.Zero, Length.Min(gate.NearFace, level - gate.Opening));
        return EditDraft.Finish(job, job with { Gates = put(gates, gate with { NearFace = near, RunsBack = RunBack(gate, near, level) }) }, label);
    }

    /// <summary>A leaf that slides and does not say where to runs back to where more of the leg lies.</summary>
    private static string? RunBack(Gate gate, Length near, Length level)
        => gate.Kind is not (Gate.Cantilever or Gate.Rolling or Gate.Overhead) || gate.RunsBack is "start" or "end" ? gate.RunsBack
            : near > level - near - gate.Opening ? "start" : "end";
}
