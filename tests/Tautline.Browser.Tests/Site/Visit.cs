using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Tautline.Browser.Tests.Site;

/// <summary>One person's visit to the page: what they can do there, and everything that went wrong meanwhile.</summary>
internal sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly StaticServer server;
    private readonly ConcurrentQueue<string> troubles = [];

    private Visit(IBrowserContext context, IPage page, StaticServer server) => (this.context, Page, this.server) = (context, page, server);

    public IPage Page { get; }

    /// <summary>Errors and warnings of the console, uncaught faults, files that could not be had.</summary>
    public IReadOnlyCollection<string> Troubles => troubles;

    public ILocator PlanHash => Page.Locator("#plan-hash");

    public static async Task<Visit> StartAsync(IBrowserContext context, StaticServer server)
    {
        var visit = new Visit(context, await context.NewPageAsync(), server);
        visit.Page.Console += (_, said) => visit.Heard(said);
        visit.Page.PageError += (_, fault) => visit.troubles.Enqueue("uncaught: " + fault);
        visit.Page.RequestFailed += (_, request) => visit.troubles.Enqueue("failed: " + request.Url);
        visit.Page.Response += (_, answer) => visit.Answered(answer);
        return visit;
    }

    /// <summary>Opens the page and waits until a job could be opened.</summary>
    public async Task<IReadOnlyList<Answer>> OpenAsync()
    {
        int before = server.Answers.Count;
        await Page.GotoAsync(server.Address);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Open sample" }).WaitForAsync();
        return [.. server.Answers.Skip(before)];
    }

    public async Task OpenSampleAsync(string title)
    {
        await Page.GetByLabel("Sample job").SelectOptionAsync(new SelectOptionValue { Label = title });
        await Page.GetByRole(AriaRole.Button, new() { Name = "Open sample" }).ClickAsync();
        await Page.GetByRole(AriaRole.Button, new() { Name = "Plan", Exact = true }).WaitForAsync();
    }

    public async Task OpenFileAsync(string name, string text) => await Page.GetByLabel("Or a job file")
        .SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/octet-stream", Buffer = System.Text.Encoding.UTF8.GetBytes(text) });

    public async Task PlanAsync()
    {
        await Page.GetByRole(AriaRole.Button, new() { Name = "Plan", Exact = true }).ClickAsync();
        await PlanHash.WaitForAsync();
    }

    /// <summary>Presses 'Make PDF' and takes what the browser saves.</summary>
    public async Task<(string FileName, byte[] Bytes)> MakePdfAsync()
    {
        IDownload download = await Page.RunAndWaitForDownloadAsync(
            () => Page.GetByRole(AriaRole.Button, new() { Name = "Make PDF" }).ClickAsync());
        return (download.SuggestedFilename, await File.ReadAllBytesAsync(await download.PathAsync()));
    }

    /// <summary>How far the page is wider than its window, in CSS pixels.</summary>
    public async Task<int> OverflowAsync() => await Page.EvaluateAsync<int>("document.documentElement.scrollWidth - window.innerWidth");

    public async Task ShootAsync(string name) =>
        await Page.ScreenshotAsync(new() { Path = Path.Combine(Checkout.Artifacts, name + ".png"), FullPage = true });

    public async ValueTask DisposeAsync() => await context.DisposeAsync();

    private void Heard(IConsoleMessage said)
    {
        if (said.Type is "error" or "warning") troubles.Enqueue($"console {said.Type}: {said.Text}");
    }

    private void Answered(IResponse answer)
    {
        if (answer.Status >= 400) troubles.Enqueue($"{answer.Status}: {answer.Url}");
    }
}
