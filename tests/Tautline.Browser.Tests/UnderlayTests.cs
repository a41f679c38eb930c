using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Papers.Paper;

namespace Tautline.Browser.Tests;

/// <summary>What is laid under the drawing.</summary>
[Trait("Category", "Slow")]
public sealed class UnderlayTests(BrowserSite site)
{
    private const string AcrossAPixel = """
        () => new Promise((done, failed) => {
          const open = indexedDB.open('tautline-underlay');
          open.onerror = () => failed(open.error);
          open.onsuccess = () => {
            const all = open.result.transaction('underlays').objectStore('underlays').getAll();
            all.onsuccess = () => { open.result.close(); done(Math.hypot(all.result[0].placement.a, all.result[0].placement.d)); };
          };
        })
        """;

    private static byte[] Pdf(params string[] pages) => PdfWriter.Write(new PaperDocument("Site")
    {
        Sheets = [.. pages.Select(p => new PaperSheet(p) { Blocks = [.. Enumerable.Repeat(new PaperBlock.Words(p, true), 40)] })],
    }).Pdf;

    private static async Task ChooseAsync(Visit visit, string name, byte[] bytes) =>
        await visit.Page.Locator("#underlay-menu input[type=file]").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/pdf", Buffer = bytes });

    private static async Task<byte[]> SeenAsync(Visit visit)
    {
        // The menu lies over the drawing: it is put away while the drawing is looked at.
        bool open = await visit.Page.EvaluateAsync<bool>("() => { const menu = document.getElementById('underlay-menu'); const open = menu.matches(':popover-open'); if (open) menu.hidePopover(); return open; }");
        await visit.Page.EvaluateAsync("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 400))))");
        byte[] seen = await PlanHand.Sheet(visit).ScreenshotAsync();
        if (open) await visit.Page.EvaluateAsync("() => document.getElementById('underlay-menu').showPopover()");
        return seen;
    }

    private static async Task<Visit> WithMenuAsync(BrowserSite site)
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Underlay", Exact = true }).ClickAsync();
        return visit;
    }

    [Fact]
    public async Task APageOfAPdfIsLaidDownScaledByTwoPointsAndKept()
    {
        await using Visit visit = await WithMenuAsync(site);
        byte[] bare = await SeenAsync(visit);
        ILocator menu = visit.Page.Locator("#underlay-menu");
        await ChooseAsync(visit, "survey.pdf", Pdf("First sheet", "The second one"));
        await Assertions.Expect(menu).ToContainTextAsync("of 2");
        byte[] first = await SeenAsync(visit);
        Assert.NotEqual(bare, first);
        await menu.GetByLabel("Page").FillAsync("2");
        await menu.GetByLabel("Page").PressAsync("Enter");
        await Assertions.Expect(menu.GetByLabel("Page")).ToHaveValueAsync("2");
        await visit.Page.WaitForTimeoutAsync(800);
        Assert.NotEqual(first, await SeenAsync(visit));

        double before = await visit.Page.EvaluateAsync<double>(AcrossAPixel);
        await menu.GetByRole(AriaRole.Button, new() { Name = "Scale by two points" }).ClickAsync();
        await visit.Page.Keyboard.PressAsync("Escape");
        await menu.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await PlanHand.ClickAsync(visit, 10, 10);
        await PlanHand.ClickAsync(visit, 50, 10);
        ILocator distance = visit.Page.GetByLabel("Distance between the two points");
        await distance.FillAsync("100'");
        await distance.PressAsync("Enter");
        await distance.WaitForAsync(new() { State = WaitForSelectorState.Hidden });
        await visit.Page.WaitForTimeoutAsync(300);
        Assert.InRange(await visit.Page.EvaluateAsync<double>(AcrossAPixel) / before, 2.4, 2.6);

        await visit.KeptAsync();
        await visit.ShootAsync("underlay-pdf");
        await visit.Page.ReloadAsync();
        await visit.Page.Locator(".map-sheet").WaitForAsync();
        await visit.Page.WaitForTimeoutAsync(800);
        Assert.NotEqual(bare, await SeenAsync(visit));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Underlay", Exact = true }).ClickAsync();
        await menu.GetByRole(AriaRole.Button, new() { Name = "Take it away" }).ClickAsync();
        Assert.Equal(bare, await SeenAsync(visit));
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ABrokenPdfIsToldInWords()
    {
        await using Visit visit = await WithMenuAsync(site);
        await ChooseAsync(visit, "torn.pdf", "%PDF-1.7 and nothing else"u8.ToArray());
        await Assertions.Expect(visit.Page.Locator("#underlay-menu [role=alert]")).ToContainTextAsync("torn.pdf cannot be read as a PDF.");
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }
}
