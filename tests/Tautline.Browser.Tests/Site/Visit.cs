using System.Collections.Concurrent;
using System.Text;
using Microsoft.Playwright;

namespace Tautline.Browser.Tests.Site;

/// <summary>One answer of the server: what was asked for, how it was compressed, and how long its body was on the wire.</summary>
internal sealed record Answer(string Path, int Status, string Encoding, long Bytes);

/// <summary>One person's visit to the page: what they can do there, and everything that went wrong meanwhile.</summary>
internal sealed class Visit : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> troubles = [];
    private readonly ConcurrentQueue<IResponse> responses = [];
    private readonly string address;

    private Visit(IBrowserContext context, IPage page, string address) => (Context, Page, this.address) = (context, page, address);

    public IBrowserContext Context { get; }

    public IPage Page { get; }

    /// <summary>Errors and warnings of the console, uncaught faults, files that could not be had.</summary>
    public IReadOnlyCollection<string> Troubles => troubles;

    public ILocator Undo => Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Undo") });

    public ILocator Redo => Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Redo") });

    /// <summary>What is said of the selected thing.</summary>
    public ILocator Details => Page.Locator("aside.details");

    public ILocator Totals => Page.Locator("dl.totals");

    public static async Task<Visit> StartAsync(IBrowserContext context, string address)
    {
        var visit = new Visit(context, await context.NewPageAsync(), address);
        visit.Watch(visit.Page);
        return visit;
    }

    /// <summary>Opens the page and waits until a job could be opened.</summary>
    public async Task OpenAsync()
    {
        await Page.GotoAsync(address);
        await Page.Locator(".start, .bench").First.WaitForAsync();
    }

    /// <summary>Another tab of the same browser.</summary>
    public async Task<IPage> OtherTabAsync()
    {
        IPage tab = await Context.NewPageAsync();
        Watch(tab);
        await tab.GotoAsync(address);
        await tab.Locator(".start, .bench").First.WaitForAsync();
        return tab;
    }

    /// <summary>What the server answered so far.</summary>
    public async Task<IReadOnlyList<Answer>> AnswersAsync()
    {
        List<Answer> answers = [];
        foreach (IResponse response in responses)
        {
            RequestSizesResult sizes = await response.Request.SizesAsync();
            answers.Add(new(new Uri(response.Url).AbsolutePath, response.Status, await response.HeaderValueAsync("content-encoding") ?? "", sizes.ResponseBodySize));
        }

        return answers;
    }

    public async Task OpenSampleAsync(string title)
    {
        await Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = title, Exact = true }).ClickAsync();
        await KeptAsync();
    }

    /// <summary>Waits until the browser has acknowledged that the job is kept.</summary>
    public async Task KeptAsync() => await Page.Locator(".kept.kept").WaitForAsync();

    public async Task OpenFileAsync(string name, string text) => await OpenFileAsync(name, Encoding.UTF8.GetBytes(text));

    public async Task OpenFileAsync(string name, byte[] bytes)
    {
        if (await Page.Locator(".start").CountAsync() == 0) await Page.GetByRole(AriaRole.Button, new() { Name = "Jobs", Exact = true }).ClickAsync();
        await Page.Locator(".start, dialog[open]").Last.GetByLabel("Open a file…")
            .SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/octet-stream", Buffer = bytes });
    }

    public async Task GoAsync(string step, string? sheet = null)
    {
        await Page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Button, new() { Name = step }).ClickAsync();
        if (sheet is not null) await Page.GetByRole(AriaRole.Tab, new() { Name = sheet, Exact = true }).ClickAsync();
    }

    /// <summary>A sheet of the step that is open, by its key: its name is of two languages.</summary>
    public Task SheetAsync(string key) => Page.Locator($"#tab-{key}").ClickAsync();

    public async Task<string> HashAsync()
    {
        if (await Page.Locator("#plan-hash").CountAsync() == 0)
        {
            if (await Details.GetByText("About this plan").CountAsync() == 0) await Details.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
            await Details.GetByText("About this plan").ClickAsync();
        }

        return await Page.Locator("#plan-hash").InnerTextAsync();
    }

    /// <summary>Presses 'Make PDF' and takes what the browser saves.</summary>
    public async Task<(string FileName, byte[] Bytes)> MakePdfAsync()
    {
        await GoAsync("Take-off");
        return await SavedAsync(() => Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Make PDF" }).ClickAsync());
    }

    public async Task<(string FileName, byte[] Bytes)> SavedAsync(Func<Task> press)
    {
        IDownload download = await Page.RunAndWaitForDownloadAsync(press);
        return (download.SuggestedFilename, await File.ReadAllBytesAsync(await download.PathAsync()));
    }

    /// <summary>How far the page is wider than its window, in CSS pixels.</summary>
    public async Task<int> OverflowAsync() => await Page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");

    public async Task ShootAsync(string name) =>
        await Page.ScreenshotAsync(new() { Path = Path.Combine(Checkout.Artifacts, name + ".png"), FullPage = true });

    public async ValueTask DisposeAsync() => await Context.DisposeAsync();

    private void Watch(IPage page)
    {
        page.Console += (_, said) => Heard(said);
        page.PageError += (_, fault) => troubles.Enqueue("uncaught: " + fault);
        page.RequestFailed += (_, request) => troubles.Enqueue("failed: " + request.Url);
        page.Response += (_, answer) => Answered(answer);
    }

    private void Heard(IConsoleMessage said)
    {
        if (said.Type is "error" or "warning") troubles.Enqueue($"console {said.Type}: {said.Text}");
    }

    private void Answered(IResponse answer)
    {
        responses.Enqueue(answer);
        if (answer.Status >= 400) troubles.Enqueue($"{answer.Status}: {answer.Url}");
    }
}
