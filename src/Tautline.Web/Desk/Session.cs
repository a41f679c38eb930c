using System.Diagnostics;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;

namespace Tautline.Web.Desk;

/// <summary>
/// The job on the desk, its plan, what was done to it and what is pointed at: the one state every part of the page reads, and the one
/// door every edit goes through. Single-threaded like the page.
/// </summary>
public sealed class Session
{
    /// <summary>Plans longer than this are announced first, so that the page can say so.</summary>
    private const double LongMilliseconds = 150;

    private readonly Lazy<FenceCatalog> catalog = new(FenceCatalog.BuiltIn);
    private Job? job;
    private Job? shown;
    private Plan? plan;
    private OpenedJob? source;

    /// <summary>The job, the plan, the history or whether planning is under way has changed.</summary>
    public event Action? Changed;

    /// <summary>The job was edited, opened or taken back: what is kept must be kept again.</summary>
    public event Action? Edited;

    /// <summary>Something else is selected.</summary>
    public event Action? SelectionChanged;

    /// <summary>The pointer is over something else.</summary>
    public event Action? HoverChanged;

    public FenceCatalog Catalog => catalog.Value;

    /// <summary>A job is open and planned.</summary>
    public bool HasJob => job is not null && plan is not null;

    /// <summary>The job as the last edit left it; while something is dragged, as it would be.</summary>
    /// <exception cref="InvalidOperationException">No job is open: ask <see cref="HasJob"/> first.</exception>
    public Job Job => shown ?? job ?? throw new InvalidOperationException("No job is open.");

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

    public History History { get; private set; } = History.Empty;

    /// <summary>Puts another job on the desk. Its history begins anew.</summary>
    public Task OpenAsync(OpenedJob file, bool readOnly = false)
    {
        job = file.Job ?? throw new ArgumentException("There is no job in this file.", nameof(file));
        (source, shown, History, ReadOnly) = (file, null, History.Empty, readOnly);
        (Selected, Hovered) = (Selection.None, Selection.None);
        (plan, PlanMilliseconds) = (null, 0);
        return ReplanAsync(announce: true);
    }

    public void Close()
    {
        (job, shown, plan, source, History, Findings) = (null, null, null, null, History.Empty, []);
        (Selected, Hovered, ReadOnly) = (Selection.None, Selection.None, false);
        Changed?.Invoke();
    }

    public void SetReadOnly(bool readOnly)
    {
        ReadOnly = readOnly;
        Changed?.Invoke();
    }

    /// <summary>Edits the job: the step can be undone by its label, the plan follows, the job is kept.</summary>
    /// <param name="label">What was done, as 'move corner 2'.</param>
    /// <param name="edit">A pure edit; where it gives back the same job nothing happened.</param>
    /// <returns>Done when the plan has followed; false where nothing was edited.</returns>
    public async Task<bool> Apply(string label, Func<Job, Job> edit)
    {
        if (ReadOnly || job is not { } before) return false;
        Job after = edit(before);
        if (ReferenceEquals(after, before) && shown is null) return false;
        shown = null;
        if (!ReferenceEquals(after, before)) History = History.Did(label, before);
        (job, source) = (after, source! with { Json = default, Job = after });
        await ReplanAsync();
        if (!ReferenceEquals(after, before)) Edited?.Invoke();
        return true;
    }

    /// <summary>Shows the job as it would be, while something is dragged; nothing takes the preview back. The history stays.</summary>
    public Task Preview(Func<Job, Job>? edit)
    {
        if (ReadOnly || job is null) return Task.CompletedTask;
        shown = edit?.Invoke(job);
        return ReplanAsync();
    }

    public Task Undo() => Step(History.Undo);

    public Task Redo() => Step(History.Redo);

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

    private async Task Step(Func<Job, (History History, Job Job)?> step)
    {
        if (ReadOnly || job is null || step(job) is not { } done) return;
        (History, job, shown, source) = (done.History, done.Job, null, source! with { Json = default, Job = done.Job });
        await ReplanAsync();
        Edited?.Invoke();
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
        PlanMilliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        Words = new PlanWords(now.Units);
        Findings = [.. source!.Findings.Concat(plan.Problems.Select(source.Describe)).OrderByDescending(f => f.Severity)];
        Revision++;
    }
}
