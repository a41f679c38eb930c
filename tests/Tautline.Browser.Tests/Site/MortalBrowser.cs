using System.Diagnostics;
using Microsoft.Playwright;

namespace Tautline.Browser.Tests.Site;

/// <summary>A Chromium with a profile on disk that can be killed from outside, with every process it started.</summary>
internal sealed class MortalBrowser : IAsyncDisposable
{
    private readonly Process process;
    private readonly IBrowser browser;
    private readonly string address;

    private MortalBrowser(Process process, IBrowser browser, IPage page, string address)
        => (this.process, this.browser, Page, this.address) = (process, browser, page, address);

    public IPage Page { get; }

    public static async Task<MortalBrowser> StartAsync(IPlaywright playwright, string chromium, IEnumerable<string> arguments, string profile, string address)
    {
        string port = Path.Combine(profile, "DevToolsActivePort");
        Directory.CreateDirectory(profile);
        File.Delete(port);
        Process process = Process.Start(new ProcessStartInfo(chromium, [.. arguments, "--remote-debugging-port=0", $"--user-data-dir={profile}", "about:blank"])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        _ = process.StandardError.ReadToEndAsync();
        _ = process.StandardOutput.ReadToEndAsync();
        for (int i = 0; i < 400 && !(File.Exists(port) && (await File.ReadAllLinesAsync(port)).Length > 1); i++) await Task.Delay(50);
        IBrowser browser = await playwright.Chromium.ConnectOverCDPAsync($"http://127.0.0.1:{(await File.ReadAllLinesAsync(port))[0]}");
        IPage page = browser.Contexts[0].Pages[0];
        return new(process, browser, page, address);
    }

    public async Task OpenAsync()
    {
        await Page.GotoAsync(address);
        await Page.Locator(".start, .bench").First.WaitForAsync();
    }

    public async Task KillAsync()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) await KillAsync();
        try
        {
            await browser.DisposeAsync();
        }
        catch (PlaywrightException)
        {
            // it is gone already
        }
        process.Dispose();
    }
}
