using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What is done in the tables of gates and of what else stands along the lines.</summary>
public static class GateChanges
{
    public static IReadOnlyList<string> Kinds { get; } = [Gate.Walk, Gate.Double, Gate.Cantilever, Gate.Rolling, Gate.Overhead];

    public static IReadOnlyList<string> ObstacleKinds { get; } =
        [Obstacle.NoDig, Obstacle.Slab, Obstacle.Rock, Obstacle.Wall, Obstacle.Tree, Obstacle.Wet, Obstacle.Swale, Obstacle.Culvert];

    public static Task AddAsync(Session session, LegId leg) => session.Apply(job =>
        GateEdits.Place(job, leg, Middle(job, leg), new Gate { Id = default, Leg = leg, Kind = Gate.Walk, NearFace = default, Opening = Length.FromFeet(4) }, LegChanges.FreshIds()));

    public static Task<string> Opening(Session session, GateId gate, string text) => Written.Length(session, text, (job, opening) => GateEdits.Resize(job, gate, opening));

    public static Task<string> NearFace(Session session, GateId gate, string text) => Written.Length(session, text, (job, near) => GateEdits.SetNearFace(job, gate, near));

    /// <summary>Another kind; one that slides runs back to the end of its leg until somebody says otherwise.</summary>
    public static Task KindAsync(Session session, GateId gate, string? kind) => kind is null ? Task.CompletedTask : session.Apply(job =>
        GateEdits.Change(job, gate, g => g with { Kind = kind, RunsBack = kind is Gate.Walk or Gate.Double ? null : g.RunsBack ?? "end" }));

    public static Task RemoveAsync(Session session, GateId gate) => session.Apply(job => GateEdits.Delete(job, gate));

    public static Task AddObstacleAsync(Session session, LegId leg) => session.Apply(job =>
    {
        if (Where(job, leg) is not ({ } line, var index)) return new EditOutcome(job, default, []);
        Length from = Length.FromNanometres(line.StartsNm[index]);
        var like = new Obstacle { Id = default, Leg = leg, Kind = Obstacle.NoDig, From = default, To = default };
        Length half = Length.FromNanometres(line.Legs[index].LevelNm) / 2;
        return StretchEdits.Place(job, line.Line.Id, from + half - Length.Min(half, Length.FromFeet(1)), from + half + Length.Min(half, Length.FromFeet(1)), like, LegChanges.FreshIds());
    });

    public static Task KindAsync(Session session, ObstacleId id, string? kind) => kind is null ? Task.CompletedTask : session.Apply(job => StretchEdits.Change(job, id, o => o with { Kind = kind }));

    public static Task<string> From(Session session, Obstacle obstacle, string text) => Written.Length(session, text, (job, from) => StretchEdits.Resize(job, obstacle.Id, from, obstacle.To));

    public static Task<string> To(Session session, Obstacle obstacle, string text) => Written.Length(session, text, (job, to) => StretchEdits.Resize(job, obstacle.Id, obstacle.From, to));

    public static Task<string> Clear(Session session, Obstacle obstacle, string text) => Written.Length(session, text, (job, clear) => StretchEdits.Change(job, obstacle.Id, o => o with { Clearance = clear }));

    public static Task RemoveAsync(Session session, ObstacleId id) => session.Apply(job => StretchEdits.Delete(job, id));

    public static Task AddPinAsync(Session session, LegId leg) => session.Apply(job => PlaceEdits.Pin(job, leg, Middle(job, leg), false, LegChanges.FreshIds()));

    public static Task<string> At(Session session, Pin pin, string text) => Written.Length(session, text, (job, at) => PlaceEdits.Move(job, pin.Id, pin.Leg, at));

    public static Task StandsAsync(Session session, Pin pin) => session.Apply(job => PlaceEdits.Change(job, pin.Id, p => p with { Stands = !p.Stands }));

    public static Task RemoveAsync(Session session, PinId id) => session.Apply(job => PlaceEdits.Delete(job, id));

    private static Length Middle(Job job, LegId leg) => Where(job, leg) is ({ } shape, var index) ? Length.FromNanometres(shape.Legs[index].LevelNm) / 2 : default;

    private static (LineShape Shape, int Index)? Where(Job job, LegId leg)
    {
        foreach (Line line in job.Lines)
        {
            LineShape shape = LineShape.Of(line);
            if (shape.IndexOf(leg) is var index and >= 0) return (shape, index);
        }

        return null;
    }
}
