using System.Collections.Immutable;
using Tautline.Engine.Jobs;

namespace Tautline.Web.Desk;

/// <summary>What can be taken back and done again. Immutable; a step is the job as it stood and what was done to it.</summary>
/// <param name="Past">The latest on top: the job before the edit.</param>
/// <param name="Future">The next on top: the job after the edit.</param>
public sealed record History(ImmutableStack<Step> Past, ImmutableStack<Step> Future, int Kept)
{
    /// <summary>Jobs share what an edit did not touch; still a day's work must not fill the page's memory.</summary>
    public const int Most = 500;

    public static History Empty { get; } = new([], [], 0);

    public string? UndoLabel => Past.IsEmpty ? null : Past.Peek().Label;

    public string? RedoLabel => Future.IsEmpty ? null : Future.Peek().Label;

    public History Did(string label, Job before)
    {
        ImmutableStack<Step> past = Kept < Most ? Past : [.. Past.Take(Most - 1).Reverse()];
        return new(past.Push(new(label, before)), [], Math.Min(Kept + 1, Most));
    }

    /// <summary>The job as it was before the last edit; nothing where there is none.</summary>
    public (History History, Job Job)? Undo(Job now) => Past.IsEmpty
        ? null
        : (new(Past.Pop(out Step step), Future.Push(new(step.Label, now)), Kept - 1), step.Job);

    public (History History, Job Job)? Redo(Job now) => Future.IsEmpty
        ? null
        : (new(Past.Push(new(Future.Peek().Label, now)), Future.Pop(out Step step), Kept + 1), step.Job);
}

/// <summary>One edit: what it is called, and the job on its other side.</summary>
public sealed record Step(string Label, Job Job);
