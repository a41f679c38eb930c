using Microsoft.AspNetCore.Components.Forms;
using Microsoft.JSInterop;
using Tautline.Documents.Paper;
using Tautline.Engine.Jobs;
using Tautline.Web.Desk;

namespace Tautline.Web;

/// <summary>The one page: open a job, plan it, print it.</summary>
public partial class DeskPage
{
    private const int TimedRuns = 20;

    private string sample = Samples.FileNames.FirstOrDefault("");
    private string status = "";
    private string mishap = "";
    private bool busy;

    private string KeptText => Desk.Job is { } kept ? $"{kept.FileName} is still open." : "Nothing else was changed.";

    private Task OpenSampleAsync() => DoAsync("Opening…", async () =>
    {
        byte[] bytes = await Files.FetchAsync(Samples.Address(sample));
        Open(OpenedJob.Read(sample, bytes));
    });

    private Task OpenFileAsync(InputFileChangeEventArgs chosen) => DoAsync("Opening…", async () => Open(await ReadAsync(chosen.File)));

    private Task PlanAsync() => DoAsync("Planning…", () =>
    {
        Desk.Plan();
        status = $"Planned: {Desk.Planned!.Tally}.";
        return Task.CompletedTask;
    });

    private Task TimeAgainAsync() => DoAsync("Timing…", async () =>
    {
        for (int i = 0; i < TimedRuns; i++)
        {
            Desk.PlanAgain();
            await Breathe();
        }

        status = $"Planned {TimedRuns} times more.";
    });

    private Task PrintAsync() => DoAsync("Making the PDF…", async () =>
    {
        PdfPaper paper = Desk.Print(PaperSize.Letter);
        await Files.SaveAsync(paper.FileName, "application/pdf", paper.Page.Pdf);
        status = $"{paper.FileName} was made. {paper.Missing}";
    });

    private void Open(OpenedJob file)
    {
        Desk.Open(file);
        status = Desk.Refused is null ? $"{file.FileName} is open. It is not planned yet." : "";
    }

    private static async Task<OpenedJob> ReadAsync(IBrowserFile file)
    {
        if (file.Size > JobFile.LargestBytes)
            return OpenedJob.Refused(file.Name, $"The file has {file.Size >> 20} MB.", $"A job file has at most {JobFile.LargestBytes >> 20} MB.");
        using Stream stream = file.OpenReadStream(JobFile.LargestBytes);
        using var all = new MemoryStream();
        await stream.CopyToAsync(all);
        return OpenedJob.Read(file.Name, all.ToArray());
    }

    /// <summary>Shows that something is under way, does it, and says in words what went wrong. What was on the page stays.</summary>
    private async Task DoAsync(string doing, Func<Task> work)
    {
        (busy, mishap, status) = (true, "", doing);
        StateHasChanged();
        await Breathe();
        try
        {
            await work();
        }
        catch (JSException fault)
        {
            (status, mishap) = ("", fault.Message.Split('\n')[0]);
        }
        catch (IOException)
        {
            (status, mishap) = ("", "The file could not be read to its end. Choose it again.");
        }
        finally
        {
            busy = false;
        }
    }

    // Planning holds the browser's only thread; without a pause the page would not be drawn before it.
    private static Task Breathe() => Task.Delay(1);
}
