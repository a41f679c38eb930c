using System.Diagnostics;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Desk;

/// <summary>
/// The job on the desk, its plan, what was done to it and what is pointed at: the one state every part of the page reads, and the one
/// door every edit goes through. Single-threaded like the page.
/// </summary>
public sealed class Session
{
    /// <summary>Plans longer than this are announced first, so that the page can say so.</summary>
    private const double LongMilliseconds = 150;

    private readonly Lazy<FenceCatalog> catalog = new(FenceCatalog.BuiltIn);
    private JobHistory? history;
    private Job? shown;
    private Plan? plan;
    private OpenedJob? source;

    /// <summary>The job, the plan, the history or whether planning is under way has changed.</summary>
    public event Action? Changed;

    /// <summary>The job was edited, opened or taken back: what is kept must be kept again.</summary>
    public event Action? Edited;

    /// <summary>What stands in the ground by the log, from the plan without it; nothing where no log is open.</summary>
    public Func<Plan, BuiltFacts>? Built { get; private set; }

    /// <summary>Something else is selected.</summary>
    public event Action? SelectionChanged;

    /// <summary>The pointer is over something else.</summary>
    public event Action? HoverChanged;

    public FenceCatalog Catalog => catalog.Value;

    /// <summary>A job is open and planned.</summary>
    public bool HasJob => history is not null && plan is not null;

    /// <summary>The job as the last edit left it; while something is dragged, as it would be.</summary>
    /// <exception cref="InvalidOperationException">No job is open: ask <see cref="HasJob"/> first.</exception>
    public Job Job => shown ?? history?.Job ?? throw new InvalidOperationException("No job is open.");

    /// <summary>The plan of the job; the one before while <see cref="Planning"/>.</summary>
    /// <exception cref="InvalidOperationException">No job is open: ask <see cref="HasJob"/> first.</exception>
    public Plan Plan => plan ?? throw new InvalidOperationException("No job is open.");

    public PlanWords Words { get; private set; } = new(default);

    /// <summary>Everything there is to say about the job, worst first.</summary>
    public IReadOnlyList<Finding> Findings { get; private set; } = [];

    /// <summary>Grows with every plan, so that a drawing knows whether it shows this one.</summary>
    public int Revision { get; private set; }

    /// <summary>What planning took, in milliseconds.</summary>
    public double PlanMilliseconds { get; private set; }

    public bool Planning { get; private set; }

    /// <summary>True where nothing may be edited: the job is open in another tab.</summary>
    public bool ReadOnly { get; private set; }

    public Selection Selected { get; private set; } = Selection.None;

    public Selection Hovered { get; private set; } = Selection.None;

    /// <summary>Why the last edit was refused, or what came of it besides; empty once another was made.</summary>
    public IReadOnlyList<Finding> Refusal { get; private set; } = [];

    /// <summary>What undoing would take back; nothing where there is nothing to undo.</summary>
    public EditLabel? UndoLabel => history?.UndoLabel;

    /// <summary>What would be done again.</summary>
    public EditLabel? RedoLabel => history?.RedoLabel;

    /// <summary>Puts another job on the desk. Its history begins anew.</summary>
    public Task OpenAsync(OpenedJob file, bool readOnly = false)
    {
        history = JobHistory.Of(file.Job ?? throw new ArgumentException("There is no job in this file.", nameof(file)));
        (source, shown, ReadOnly, Refusal, Built) = (file, null, readOnly, [], null);
        (Selected, Hovered) = (Selection.None, Selection.None);
        (plan, PlanMilliseconds) = (null, 0);
        return ReplanAsync(announce: true);
    }

    public void Close()
    {
        (history, shown, plan, source, Findings, Refusal) = (null, null, null, null, [], []);
        (Selected, Hovered, ReadOnly, Built) = (Selection.None, Selection.None, false, null);
        Changed?.Invoke();
    }

    public void SetReadOnly(bool readOnly)
    {
        ReadOnly = readOnly;
        Changed?.Invoke();
    }

    /// <summary>Edits the job: the step can be undone by its label, the plan follows, the job is kept.</summary>
    /// <param name="edit">A pure edit, as those of <see cref="Engine.Editing"/>; what it says beside is shown.</param>
    /// <param name="dragging">True while a drag lasts: edits of one label make one step until <see cref="Settle"/>, and nothing is kept before.</param>
    /// <returns>Done when the plan has followed; false where nothing was edited.</returns>
    public async Task<bool> Apply(Func<Job, EditOutcome> edit, bool dragging = false)
    {
        if (ReadOnly || history is not { } before) return false;
        EditOutcome outcome = edit(before.Job);
        Refusal = [.. outcome.Problems.Select(p => source!.Describe(p))];
        shown = null;
        if (outcome.Job is not { } after || ReferenceEquals(after, before.Job))
        {
            Changed?.Invoke();
            return false;
        }

        await MoveToAsync(before.Push(outcome.Label, after, dragging), keep: !dragging);
        return true;
    }

    /// <summary>An edit that has no kind of its own, by its name in words.</summary>
    public Task<bool> Apply(string label, Func<Job, Job> edit) => Apply(job => new EditOutcome(edit(job), new(EditKind.Other, label), []));

    /// <summary>A drag is over: the next edit is a step of its own, and the job is kept.</summary>
    public void Settle()
    {
        history = history?.Settle();
        Edited?.Invoke();
    }

    /// <summary>Shows the job as it would be, while something is dragged; nothing takes the preview back. The history stays.</summary>
    public Task Preview(Func<Job, EditOutcome>? edit)
    {
        if (ReadOnly || history is null) return Task.CompletedTask;
        shown = edit?.Invoke(history.Job).Job;
        return ReplanAsync();
    }

    public Task Undo() => ReadOnly || history is not { CanUndo: true } now ? Task.CompletedTask : MoveToAsync(now.Undo());

    public Task Redo() => ReadOnly || history is not { CanRedo: true } now ? Task.CompletedTask : MoveToAsync(now.Redo());

    /// <summary>The log of the job was opened or has grown: the plan goes through what stands.</summary>
    public Task BuildAsync(Func<Plan, BuiltFacts> built)
    {
        Built = built;
        return history is null ? Task.CompletedTask : ReplanAsync();
    }

    /// <summary>What the last edit had to say is read.</summary>
    public void DismissRefusal()
    {
        Refusal = [];
        Changed?.Invoke();
    }

    public void Select(Selection selection)
    {
        if (selection == Selected) return;
        Selected = selection;
        SelectionChanged?.Invoke();
    }

    public void Hover(Selection selection)
    {
        if (selection == Hovered) return;
        Hovered = selection;
        HoverChanged?.Invoke();
    }

    /// <summary>The file the job came from; an empty name where it was made here.</summary>
    public string FileName => source?.FileName ?? "";

    /// <summary>What files of the job are named by: the file it came from, else its own name.</summary>
    public string PlainName => FileName.Length > 0
        ? Path.GetFileNameWithoutExtension(FileName)
        : string.Join('-', string.Concat((Job.Name.Length > 0 ? Job.Name : Job.Id.Value).Select(c => char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private async Task MoveToAsync(JobHistory now, bool keep = true)
    {
        // What was read from a file is placed in a text that is no longer the job's.
        (history, shown, source) = (now, null, source! with { Json = default, Job = now.Job });
        await ReplanAsync();
        if (keep) Edited?.Invoke();
    }

    private async Task ReplanAsync(bool announce = false)
    {
        if (announce || PlanMilliseconds > LongMilliseconds)
        {
            Planning = true;
            Changed?.Invoke();
            await Task.Delay(1); // planning holds the page's only thread: without a pause the word is not shown before it
        }

        Replan(Job);
        Planning = false;
        Changed?.Invoke();
    }

    private void Replan(Job now)
    {
        long start = Stopwatch.GetTimestamp();
        plan = JobPlanner.Plan(now, Catalog, RuleSets.For(now), BuiltFacts.None);
        if (Built?.Invoke(plan) is { Posts.Count: > 0 } facts) plan = JobPlanner.Plan(now, Catalog, RuleSets.For(now), facts);
        PlanMilliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        Words = new PlanWords(now.Units);
        // A sheet that is still empty is no fault of anybody's: the page says how to begin.
        Findings = [.. source!.Findings.Concat(plan.Problems.Where(p => p.Code != ProblemCode.JobEmpty).Select(p => source.Describe(p, now, plan))).OrderByDescending(f => f.Severity)];
        Revision++;
    }
}
