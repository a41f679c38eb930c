using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Tautline.Browser.Tests.Site.BrowserSite))]

namespace Tautline.Browser.Tests.Site;

/// <summary>The published app on its own server, and a Chromium to open it with. Both are started once for all tests.</summary>
public sealed class BrowserSite : IAsyncLifetime
{
    private static readonly string[] arguments =
    [
        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    private readonly Lazy<Task<CompanyServers>> company = new(CompanyServers.StartAsync);
    private ServedApp? server;
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (FindChromium() is not { } chromium) return;
        server = await ServedApp.StartAsync();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = arguments });
    }

    /// <summary>A page of its own for one test, with nothing kept or cached from any other. Skips the test where there is no Chromium.</summary>
    internal async Task<Visit> VisitAsync(int width = 1440, int height = 900, string theme = "light", string language = "en-GB", string? address = null)
    {
        if (browser is null || server is null) Assert.Skip("no 'chromium' on the PATH");
        IBrowserContext context = await browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = theme == "dark" ? ColorScheme.Dark : ColorScheme.Light,
            AcceptDownloads = true,
            Locale = language,
            TimezoneId = "Asia/Kolkata",
        });
        if (theme == "sunlight") await context.AddInitScriptAsync("try { localStorage.setItem('tautline.theme', 'sunlight') } catch { }");
        return await Visit.StartAsync(context, address ?? server.Address);
    }

    /// <summary>Where companies are: started when the first test asks.</summary>
    internal async Task<string> CompaniesAsync() => (await company.Value).Address;

    /// <summary>A Chromium process of its own with a profile on disk, to be killed like a phone whose battery dies.</summary>
    internal async Task<MortalBrowser> MortalAsync(string profile)
    {
        if (playwright is null || server is null) Assert.Skip("no 'chromium' on the PATH");
        return await MortalBrowser.StartAsync(playwright, FindChromium()!, arguments, profile, server.Address);
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
        if (company.IsValueCreated) await (await company.Value).DisposeAsync();
        if (server is not null) await server.DisposeAsync();
    }

    private static string? FindChromium() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, "chromium")).FirstOrDefault(File.Exists);
}
