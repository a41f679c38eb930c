using System.Text;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>What stands, told on a phone without signal: posts are marked, one is moved, a run is hung.</summary>
[Trait("Category", "Slow")]
public sealed class AsBuiltTests(BrowserSite site)
{
    private static ILocator Pane(IPage page) => page.Locator("#as-built");

    /// <summary>Ninety feet from the post at 60 ft on; its first post belongs to the run before.</summary>
    private static ILocator Run(IPage page) => page.Locator("section.field-run").Nth(2);

    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    private static async Task<Visit> StartAsync(BrowserSite site, string language, string theme = "sunlight")
    {
        Visit visit = await site.VisitAsync(360, 740, theme, language);
        string step = language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field";
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync(step);
        await KeptAsync(visit.Page, 0);
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();
        await visit.GoAsync(step);
        await KeptAsync(visit.Page, 0);
        return visit;
    }

    /// <summary>Three posts as drawn at 69, 78 and 87 ft; the one drawn at 96 ft stands at 60 + 31.5 = 91.5, four and a half feet back; then the run is hung.</summary>
    private static async Task WorkAsync(IPage page)
    {
        ILocator set = Run(page).Locator(".field-work li").Nth(2);
        await set.Locator("input").FillAsync("3");
        await set.Locator("input").BlurAsync();
        await set.Locator("button.done").ClickAsync();
        await KeptAsync(page, 1);
        await Run(page).Locator("summary").ClickAsync();
        ILocator moved = Run(page).Locator("tbody tr").Nth(3).Locator("input");
        await moved.FillAsync("31' 6\"");
        await moved.BlurAsync();
        await KeptAsync(page, 2);
        await Run(page).Locator("summary").ClickAsync();
        await Run(page).Locator(".field-work li").Nth(4).Locator("button.done").ClickAsync();
        await KeptAsync(page, 3);
    }

    private static async Task LookAsync(Visit visit, string name)
    {
        IPage page = visit.Page;
        string wide = await page.EvaluateAsync<string>("() => [...document.querySelectorAll('#as-built *')].filter(e => e.getBoundingClientRect().right > 361).map(e => e.outerHTML.slice(0, 120)).slice(0, 3).join(' | ')");
        Assert.True(wide.Length == 0, $"{name} is wider than the phone: {wide}");
        Assert.True(await visit.OverflowAsync() <= 0);
        AxeResult found = await page.RunAxe();
        await page.SetViewportSizeAsync(360, 4200); // what sticks to the edges of the screen lies over nothing then
        await Pane(page).ScreenshotAsync(new() { Path = Path.Combine(Checkout.Artifacts, $"as-built-{name}.png") });
        await page.SetViewportSizeAsync(360, 740);
        Assert.Empty(found.Violations.Select(v => $"{name} {v.Id}: {v.Nodes[0].Html}"));
        Assert.Equal(0, await page.EvaluateAsync<int>("() => [...document.querySelectorAll('#as-built button')].filter(e => e.getBoundingClientRect().height < 47.5).length"));
    }

    [Fact]
    public async Task APostThatWasMovedIsToldWithHowFar()
    {
        await using Visit visit = await StartAsync(site, "en-GB");
        IPage page = visit.Page;
        await visit.SheetAsync("built");
        await Assertions.Expect(Pane(page)).ToContainTextAsync("Nothing is built yet.");
        await Assertions.Expect(Pane(page).Locator(".card-facts")).ToContainTextAsync("0 of 32, 0 %");

        await visit.SheetAsync("today");
        await WorkAsync(page);
        await visit.SheetAsync("built");
        await Assertions.Expect(Pane(page).Locator(".built-differ li").First).ToContainTextAsync("A12, drawn at 0+96.00: 4' 6\" back");
        await Assertions.Expect(Pane(page).Locator(".built-differ")).ToContainTextAsync("Not built yet: A1 – A8, A13 – A32.");
        await Assertions.Expect(Pane(page).Locator(".card-facts")).ToContainTextAsync("4 of 33, 12 %");
        ILocator hung = Pane(page).GetByRole(AriaRole.Progressbar, new() { Name = "yard, run 3, Hang" });
        await Assertions.Expect(hung).ToHaveJSPropertyAsync("value", 1);
        await Assertions.Expect(Pane(page).GetByRole(AriaRole.Progressbar, new() { Name = "yard, run 3, Tie" })).ToHaveJSPropertyAsync("value", 0);
        await Assertions.Expect(Pane(page)).ToContainTextAsync("yard, run 4, 1+50.00 to 1+79.88: not begun.");
        await Assertions.Expect(Pane(page)).ToContainTextAsync("yard: Hang0+60.00 to 1+50.00");
        await Assertions.Expect(Pane(page)).ToContainTextAsync("not a survey");

        await Pane(page).GetByRole(AriaRole.Button, new() { Name = "Drawing" }).ClickAsync();
        await Assertions.Expect(Pane(page).Locator(".built-drawing svg text", new() { HasText = "A12: 4' 6\" back" })).ToHaveCountAsync(1);
        (string name, byte[] pdf) = await visit.SavedAsync(() => Pane(page).GetByRole(AriaRole.Button, new() { Name = "Save as PDF" }).ClickAsync());
        Assert.Equal("juniper-flat-equipment-yard-as-built.pdf", name);
        Assert.StartsWith("%PDF-", Encoding.Latin1.GetString(pdf), StringComparison.Ordinal);
        await LookAsync(visit, "en");

        await visit.SheetAsync("book");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take back: Set posts, 1 post") }).ClickAsync();
        await KeptAsync(page, 4);
        await visit.SheetAsync("built");
        await Assertions.Expect(Pane(page)).Not.ToContainTextAsync("4' 6\" back");
        await Assertions.Expect(Pane(page)).ToContainTextAsync("What stands is as drawn.");
        Assert.Empty(visit.Troubles);
    }

    [Theory]
    [InlineData("sunlight")]
    [InlineData("dark")]
    public async Task InSpanishToo(string theme)
    {
        await using Visit visit = await StartAsync(site, "es-MX", theme);
        IPage page = visit.Page;
        await WorkAsync(page);
        await visit.SheetAsync("built");
        await Assertions.Expect(Pane(page).Locator(".built-differ li").First).ToContainTextAsync("A12, en el plano en 0+96.00: 4' 6\" atrás");
        await Pane(page).GetByRole(AriaRole.Button, new() { Name = "Dibujo" }).ClickAsync();
        await Assertions.Expect(Pane(page).Locator(".built-drawing svg text", new() { HasText = "4' 6\" atrás" })).ToHaveCountAsync(1);
        await LookAsync(visit, $"es-{theme}");
        Assert.Empty(visit.Troubles);
    }
}
