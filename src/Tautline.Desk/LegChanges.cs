using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Desk;

/// <summary>What is done in the table of legs.</summary>
public static class LegChanges
{
    private static readonly Length usualLeg = Engine.Quantities.Length.FromFeet(50);

    /// <summary>Ids of one edit are made of a seed of their own.</summary>
    public static NewIds FreshIds() => new(Guid.NewGuid().ToString("n")[..8]);

    public static Task<string> Turn(Session session, LegRow row, string text) => Written.Turn(session, text, (job, turn) => LegEdits.SetTurn(job, row.From, turn));

    public static Task<string> Length(Session session, LegRow row, string text) => Written.Length(session, text, (job, length) => LegEdits.SetLength(job, row.Id, length));

    public static Task<string> Grade(Session session, LegRow row, string text) => Written.Slope(session, text, (job, grade) => LegEdits.SetGrade(job, row.Id, grade));

    /// <summary>Puts a corner into the middle of a leg.</summary>
    public static Task SplitAsync(Session session, LegRow row) => session.Apply(job => Shape(job, row.Line) is { } shape
        ? VertexEdits.Insert(job, row.Id, Engine.Quantities.Length.FromNanometres(shape.Legs[row.Index].LevelNm) / 2, FreshIds())
        : Nothing(job));

    public static Task RemoveAsync(Session session, LegRow row) => session.Apply(job => VertexEdits.Delete(job, row.From));

    /// <summary>Goes on straight ahead by a usual length.</summary>
    public static Task AddLegAsync(Session session, Line line) => session.Apply(job => Shape(job, line.Id) is { Legs.Count: > 0 } shape
        ? LineEdits.Continue(job, line.Id, false, LegPath.PointOf(shape.Vertices[^1]).Step(shape.Legs[^1].Ahead, usualLeg), FreshIds())
        : Nothing(job));

    public static Task CloseOrOpenAsync(Session session, Line line) => session.Apply(job =>
        !line.Closed ? LineEdits.Close(job, line.Id, FreshIds())
        : Shape(job, line.Id)?.Vertices[^1].Leg is { } last ? LineEdits.Open(job, last.Id)
        : Nothing(job));

    public static Task RemoveLineAsync(Session session, Line line) => session.Apply(job => LineEdits.Delete(job, line.Id));

    /// <summary>A straight line to begin with, beside what there is.</summary>
    public static Task NewLineAsync(Session session) => session.Apply(job =>
    {
        if (job.Specs.Count == 0) job = job with { Specs = [NewJob.UsualSpec] };
        Length north = job.Lines.SelectMany(l => l.Vertices).Select(v => v.North).DefaultIfEmpty(usualLeg).Min() - usualLeg;
        SitePoint start = new(Engine.Quantities.Length.Zero, north);
        return LineEdits.Draw(job, [start, start.Step(Direction.DueEast, usualLeg + usualLeg)], false, job.Specs[0].Id, "", FreshIds());
    });

    private static LineShape? Shape(Job job, LineId id) => job.Lines.FirstOrDefault(l => l.Id == id) is { } line ? LineShape.Of(line) : null;

    private static EditOutcome Nothing(Job job) => new(job, default, []);
}
