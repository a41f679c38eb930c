using System.Diagnostics;
using System.Text;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Tautline.Documents.Paper;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>What is done with whole jobs and files. Says what is under way and, in words, what went wrong; what was on the desk stays.</summary>
public sealed class Doings(Session session, Keeper keeper, Shelf shelf, BrowserFiles files, Look look, Late late)
{
    /// <summary>Names of the tables a plan is saved as.</summary>
    public static IReadOnlyList<string> Tables { get; } = ["takeoff", "posts", "runs", "quantities"];

    public event Action? Changed;

    /// <summary>What is under way; empty where nothing is.</summary>
    public string Busy { get; private set; } = "";

    /// <summary>What was done last.</summary>
    public string Status { get; private set; } = "";

    /// <summary>What could not be done, in words.</summary>
    public string Mishap { get; private set; } = "";

    /// <summary>The file that could not be opened last, with the reasons.</summary>
    public OpenedJob? Refused { get; private set; }

    public PdfPaper? Paper { get; private set; }

    /// <summary>A job that was put into the bin and can be taken out again.</summary>
    public KeptJob? Binned { get; private set; }

    public Task OpenSampleAsync(string fileName) => DoAsync("busy.opening", async () =>
        await OpenNewAsync(OpenedJob.Read(fileName, await files.FetchAsync(Samples.Address(fileName)))));

    public Task OpenFileAsync(IBrowserFile file) => DoAsync("busy.opening", async () => await OpenNewAsync(await ReadAsync(file)));

    public Task OpenTapeAsync(string text) => DoAsync("busy.opening", async () => await OpenNewAsync(OpenedJob.Read("tape book.tape", Encoding.UTF8.GetBytes(text))));

    public Task NewAsync(string name, UnitSystem units) => DoAsync("busy.opening", async () =>
    {
        await keeper.OpenNewAsync(OpenedJob.Made(NewJob.Empty(name, units)));
        Refused = null;
    });

    public Task OpenKeptAsync(string id, bool takeOver = false) => DoAsync("busy.opening", async () =>
    {
        byte[] json = await shelf.ReadAsync(id);
        if (json.Length == 0) return;
        OpenedJob read = OpenedJob.Read("job.json", json);
        if (read.Job is null) Refused = read;
        else await keeper.OpenKeptAsync(OpenedJob.Made(read.Job), takeOver);
    });

    public Task CopyAsync(KeptJob kept) => DoAsync("busy.opening", async () =>
    {
        if (OpenedJob.Read("job.json", await shelf.ReadAsync(kept.Id)).Job is not { } job) return;
        Job copy = NewJob.Copy(job, look.Say.Say("jobs.copyOf", ("name", kept.Name)));
        await shelf.WriteAsync(copy.Id.Value, copy.Name, JobFile.Write(copy));
    });

    /// <summary>Puts a job into the bin; the one on the desk is closed first.</summary>
    public Task BinAsync(KeptJob kept) => DoAsync("busy.working", async () =>
    {
        if (session.HasJob && session.Job.Id.Value == kept.Id) await keeper.CloseAsync();
        await shelf.BinAsync(kept.Id, true);
        Binned = kept;
    });

    public Task UnbinAsync() => DoAsync("busy.working", async () =>
    {
        if (Binned is { } kept) await shelf.BinAsync(kept.Id, false);
        Binned = null;
    });

    public Task GoBackToAsync(KeptVersion version) => DoAsync("busy.opening", async () =>
    {
        if (OpenedJob.Read("job.json", await shelf.ReadVersionAsync(version.Key)).Job is not { } job) return;
        await session.Apply(look.Say.Say("edit.version"), _ => job with { Id = session.Job.Id });
    });

    public Task SaveFileAsync() => DoAsync("busy.saving", async () =>
    {
        string name = session.PlainName + ".json";
        await files.SaveAsync(name, "application/json", JobFile.Write(session.Job));
        Status = look.Say.Say("done.saved", ("file", name));
    });

    public Task SaveCsvAsync(string table) => DoAsync("busy.saving", async () =>
    {
        await late.FormatsAsync();
        string name = $"{session.PlainName}-{table}.csv";
        await files.SaveAsync(name, "text/csv", PlanTable.Write(session.Plan, table, session.Job.Units));
        Status = look.Say.Say("done.saved", ("file", name));
    });

    public Task SaveTextAsync(string name, string text) => DoAsync("busy.saving", async () => await files.SaveAsync(name, "text/plain", Encoding.UTF8.GetBytes(text)));

    public Task PrintAsync() => DoAsync("busy.printing", async () =>
    {
        await late.PaperAsync();
        long start = Stopwatch.GetTimestamp();
        PrintedPaper page = PaperPress.Takeoff(session.Plan, session.Job.Units);
        Paper = new PdfPaper(session.PlainName + "-takeoff.pdf", page, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        await files.SaveAsync(Paper.FileName, "application/pdf", page.Pdf);
        Status = look.Say.Say("done.saved", ("file", Paper.FileName));
    });

    public void Dismiss()
    {
        (Refused, Mishap, Binned, Status) = (null, "", null, "");
        Changed?.Invoke();
    }

    private async Task OpenNewAsync(OpenedJob file)
    {
        if (file.Job is null)
        {
            Refused = file;
            return;
        }

        (Refused, Paper) = (null, null);
        await keeper.OpenNewAsync(file with { Job = file.Job with { Id = await FreeIdAsync(file.Job) } });
    }

    /// <summary>A file keeps its job's id unless a job of that id is on the shelf: then both are kept.</summary>
    private async Task<JobId> FreeIdAsync(Job job) =>
        (await shelf.ListAsync()).Any(k => k.Id == job.Id.Value) ? NewJob.FreshId() : job.Id;

    private async Task<OpenedJob> ReadAsync(IBrowserFile file)
    {
        if (file.Name.EndsWith(".geojson", StringComparison.OrdinalIgnoreCase)) await late.FormatsAsync();
        if (file.Size > JobFile.LargestBytes)
            return OpenedJob.Refused(file.Name, $"The file has {file.Size >> 20} MB.", $"A job file has at most {JobFile.LargestBytes >> 20} MB.");
        using Stream stream = file.OpenReadStream(JobFile.LargestBytes);
        using var all = new MemoryStream();
        await stream.CopyToAsync(all);
        return OpenedJob.Read(file.Name, all.ToArray());
    }

    private async Task DoAsync(string doing, Func<Task> work)
    {
        (Busy, Mishap, Status) = (look.Say[doing], "", "");
        Changed?.Invoke();
        await Task.Delay(1); // so that the word is shown before the page's only thread is held
        try
        {
            await work();
        }
        catch (JSException fault)
        {
            Mishap = fault.Message.Split('\n')[0];
        }
        catch (ShelfException fault)
        {
            Mishap = fault.Message;
        }
        catch (IOException)
        {
            Mishap = look.Say["mishap.read"];
        }
        finally
        {
            Busy = "";
            Changed?.Invoke();
        }
    }
}
