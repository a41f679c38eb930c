namespace Tautline.Desk;

/// <summary>
/// The way to what the field needs, which is fetched late: this class names none of its types, so that it can be there from the start. A job with a log opens with
/// it, for its plan goes through what stands.
/// </summary>
/// <param name="make">Makes the desk of the field, from what is fetched late; told to call back when something on it changed.</param>
public sealed class FieldGate(Session session, Shelf shelf, Late late, Func<Action, Task<object>> make)
{
    private object? desk;
    private string job = "";

    public event Action? Changed;

    public bool Ready => desk is not null && session.HasJob && job == session.Job.Id.Value;

    /// <summary>What the browser said, where the log cannot be read.</summary>
    public string Trouble { get; private set; } = "";

    /// <summary>The desk of the field, by its own type; open it first.</summary>
    public T Desk<T>() where T : class => (T)(desk ?? throw new InvalidOperationException("The field is not open."));

    /// <summary>A job was opened: where it has a log, its plan is made anew through what stands.</summary>
    public async Task JobOpenedAsync()
    {
        if (session.HasJob && !Ready && await CountAsync() > 0) await OpenAsync();
    }

    public async Task OpenAsync()
    {
        if (!session.HasJob || Ready) return;
        string wanted = session.Job.Id.Value;
        try
        {
            await late.FieldAsync();
            desk = await make(() => Changed?.Invoke());
            (job, Trouble) = (wanted, "");
        }
        catch (ShelfException fault)
        {
            Trouble = fault.Message;
        }
        Changed?.Invoke();
    }

    private async Task<int> CountAsync()
    {
        try
        {
            return await shelf.CountEntriesAsync(session.Job.Id.Value);
        }
        catch (ShelfException)
        {
            return 0; // no shelf, no log: the page says elsewhere that nothing is kept
        }
    }
}
