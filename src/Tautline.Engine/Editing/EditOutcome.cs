using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Editing;

/// <summary>What was done to a job; screens name it in their language.</summary>
public enum EditKind
{
    DrawLine, ContinueLine, DeleteLine, MoveLine, ReverseLine, SplitLine, CloseLine, OpenLine, RenameLine, LineSpec, ChangeLine,
    MoveVertex, InsertVertex, DeleteVertex,
    LegLength, LegTurn, LegBearing, LegGrade, LegCurve, LegSpec,
    PlaceGate, MoveGate, ResizeGate, ChangeGate, DeleteGate,
    PlaceObstacle, MoveObstacle, ResizeObstacle, ChangeObstacle, DeleteObstacle,
    PlacePin, MovePin, ChangePin, DeletePin,
    PlaceWork, MoveWork, ResizeWork, ChangeWork, DeleteWork,
    PlaceShot, MoveShot, ChangeShot, DeleteShot,
    ChangeSpec, AddSpec, DeleteSpec, RenameJob, Other,
}

/// <summary>A short name of an edit: what was done, and to what.</summary>
/// <param name="Subject">Id of the thing it was done to.</param>
public readonly record struct EditLabel(EditKind Kind, string Subject);

/// <summary>What came of an edit: a new job, or the reasons why there is none. The job that was given is never changed.</summary>
/// <param name="Job">Nothing where the edit was refused.</param>
/// <param name="Problems">Why it was refused, or what else came of it.</param>
public sealed record EditOutcome(Job? Job, EditLabel Label, IReadOnlyList<Problem> Problems)
{
    public bool Done => Job is not null;
}

/// <summary>Ids for what an edit adds. They come of one seed that the caller makes up anew for each edit.</summary>
public sealed class NewIds(string seed)
{
    private int given;

    /// <summary>The next id, its kind first so that a person can tell what it names.</summary>
    public string Next(string kind)
        => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{kind}-{seed}{(given++ == 0 ? "" : $".{given}")}");
}
