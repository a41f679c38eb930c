using Tautline.Engine.Jobs;

namespace Tautline.Engine.Editing;

/// <summary>A job as an edit left it.</summary>
public sealed record JobStep(EditLabel Label, Job Job);

/// <summary>
/// What can be undone and done again, and the job as it is. Immutable. Edits of one drag are one step: those of one label that come running while the drag
/// lasts. At most <see cref="Most"/> steps are kept; the oldest go first.
/// </summary>
public sealed class JobHistory
{
    private readonly IReadOnlyList<JobStep> steps;
    private readonly int at;
    private readonly bool open;

    private JobHistory(IReadOnlyList<JobStep> steps, int at, bool open, int most) => (this.steps, this.at, this.open, Most) = (steps, at, open, most);

    public int Most { get; }

    public Job Job => steps[at].Job;

    public bool CanUndo => at > 0;

    public bool CanRedo => at < steps.Count - 1;

    /// <summary>What undoing would take back.</summary>
    public EditLabel? UndoLabel => CanUndo ? steps[at].Label : null;

    /// <summary>What would be done again.</summary>
    public EditLabel? RedoLabel => CanRedo ? steps[at + 1].Label : null;

    /// <param name="most">Steps that can be undone.</param>
    public static JobHistory Of(Job job, int most = 200)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        return new([new(default, job)], 0, false, most);
    }

    /// <summary>The job after an edit. What was undone before cannot be done again.</summary>
    /// <param name="dragging">True while a drag lasts: edits of the same label make one step until <see cref="Settle"/>.</param>
    public JobHistory Push(EditLabel label, Job job, bool dragging = false)
    {
        if (ReferenceEquals(job, Job)) return this;
        var merges = open && dragging && at > 0 && steps[at].Label == label;
        var kept = merges ? at : at + 1;
        var first = Math.Max(0, kept - Most);
        List<JobStep> now = [.. steps.Skip(first).Take(kept - first), new(label, job)];
        return new(now, now.Count - 1, dragging, Most);
    }

    /// <summary>The drag is over: the next edit is a step of its own.</summary>
    public JobHistory Settle() => open ? new(steps, at, false, Most) : this;

    public JobHistory Undo() => CanUndo ? new(steps, at - 1, false, Most) : this;

    public JobHistory Redo() => CanRedo ? new(steps, at + 1, false, Most) : this;
}
