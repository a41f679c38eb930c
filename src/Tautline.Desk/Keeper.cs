using Microsoft.JSInterop;
using Tautline.Engine.Jobs;

namespace Tautline.Desk;

/// <summary>Whether what is on the desk is also on the shelf.</summary>
public enum Keeping { Nothing, UnderWay, Kept, Full, Failed }

/// <summary>
/// Keeps the job on the desk: after every edit, one write at a time, the latest state last. 'Kept' is said when the browser has it on disk.
/// Before the first edit of a visit, and again after a while of edits, the job as it was becomes a version.
/// </summary>
public sealed class Keeper : IDisposable
{
    private static readonly TimeSpan betweenVersions = TimeSpan.FromMinutes(10);

    private readonly Session session;
    private readonly Shelf shelf;
    private readonly TimeProvider clock;
    private readonly DotNetObjectReference<Keeper> self;
    private DateTimeOffset lastVersion;
    private Task writing = Task.CompletedTask;
    private Job? wanted;
    private Job? kept;

    public Keeper(Session session, Shelf shelf, TimeProvider clock)
    {
        (this.session, this.shelf, this.clock) = (session, shelf, clock);
        self = DotNetObjectReference.Create(this);
        session.Edited += Edited;
    }

    public event Action? Changed;

    public Keeping State { get; private set; }

    /// <summary>What the browser said, where it does not keep the job.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>True where another tab took the job over while it was open here.</summary>
    public bool WasTakenOver { get; private set; }

    public bool Unkept => State is Keeping.UnderWay or Keeping.Full or Keeping.Failed;

    /// <summary>Opens a job from the shelf, for reading only where another tab has it open.</summary>
    public async Task OpenKeptAsync(OpenedJob file, bool takeOver = false)
    {
        bool mine = await shelf.TakeAsync(file.Job!.Id.Value, takeOver, self);
        (WasTakenOver, kept, lastVersion) = (false, file.Job, default);
        await session.OpenAsync(file, readOnly: !mine);
        Say(Keeping.Kept);
    }

    /// <summary>Opens a job that is not on the shelf yet, and puts it there.</summary>
    public async Task OpenNewAsync(OpenedJob file)
    {
        await shelf.TakeAsync(file.Job!.Id.Value, true, self);
        (WasTakenOver, kept, lastVersion) = (false, null, clock.GetUtcNow());
        await session.OpenAsync(file);
        Keep();
    }

    public async Task CloseAsync()
    {
        await writing;
        await shelf.LetGoAsync();
        session.Close();
        Say(Keeping.Nothing);
    }

    /// <summary>Keeps the job as it stands once more, after it could not be.</summary>
    public void Keep()
    {
        wanted = session.Job;
        if (!writing.IsCompleted) return;
        writing = WriteAsync();
    }

    public async Task AddVersionAsync(string label) => await shelf.AddVersionAsync(session.Job.Id.Value, label, false, JobFile.Write(session.Job));

    /// <summary>Another tab has taken the job: this one only shows it from now on.</summary>
    [JSInvokable]
    public void TakenOver(string job)
    {
        if (!session.HasJob || session.Job.Id.Value != job) return;
        WasTakenOver = true;
        session.SetReadOnly(true);
        Say(Keeping.Kept);
    }

    public void Dispose()
    {
        session.Edited -= Edited;
        self.Dispose();
    }

    private void Edited() => Keep();

    private async Task WriteAsync()
    {
        Say(Keeping.UnderWay);
        try
        {
            while (wanted is { } job)
            {
                wanted = null;
                await VersionAsync();
                await shelf.WriteAsync(job.Id.Value, job.Name, JobFile.Write(job));
                kept = job;
            }

            Say(Keeping.Kept);
        }
        catch (ShelfException fault)
        {
            Trouble = fault.Message;
            Say(fault.Full ? Keeping.Full : Keeping.Failed);
        }
    }

    private async Task VersionAsync()
    {
        if (kept is not { } before || clock.GetUtcNow() - lastVersion < betweenVersions) return;
        lastVersion = clock.GetUtcNow();
        await shelf.AddVersionAsync(before.Id.Value, "", true, JobFile.Write(before));
    }

    private void Say(Keeping state)
    {
        State = state;
        if (state is Keeping.Kept or Keeping.Nothing) Trouble = "";
        Changed?.Invoke();
    }
}
