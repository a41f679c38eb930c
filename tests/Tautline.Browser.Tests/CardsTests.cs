using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>The foreman's cards on a phone without signal, in both languages.</summary>
[Trait("Category", "Slow")]
public sealed class CardsTests(BrowserSite site)
{
    private static ILocator Cards(IPage page) => page.Locator("section.field-cards");

    private static async Task<Visit> StartAsync(BrowserSite site, string sample, string language, string theme = "sunlight")
    {
        Visit visit = await site.VisitAsync(360, 740, theme, language);
        await visit.OpenAsync();
        await visit.OpenSampleAsync(sample);
        string step = language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field";
        await visit.GoAsync(step);
        await Assertions.Expect(visit.Page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", "0");
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();
        await visit.GoAsync(step);
        await visit.SheetAsync("cards");
        await Cards(visit.Page).WaitForAsync();
        return visit;
    }

    private static Task OpenAsync(IPage page, string card) => page.Locator("#card-" + card).ClickAsync();

    private static Task BackAsync(IPage page) => Cards(page).Locator("button.card-back").ClickAsync();

    /// <summary>Fields are found by their place: their words are of two languages.</summary>
    private static async Task TypeAsync(IPage page, params (int Field, string Text)[] typed)
    {
        foreach ((int field, string text) in typed) await Cards(page).Locator("input:not([type=date])").Nth(field).FillAsync(text);
    }

    private static async Task TicketAsync(IPage page, int kept)
    {
        await page.Locator("#tab-book").ClickAsync();
        ILocator form = page.Locator("form.field-form").Filter(new() { Has = page.Locator("input[type=date]") });
        await form.Locator("input").First.FillAsync("A-117");
        await form.Locator("button").ClickAsync();
        await Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{kept}");
        await page.Locator("#tab-cards").ClickAsync();
    }

    private static async Task LookAsync(Visit visit, string name)
    {
        IPage page = visit.Page;
        string wide = await page.EvaluateAsync<string>("() => [...document.querySelectorAll('.field-cards *')].filter(e => e.offsetParent && e.getBoundingClientRect().right > 361).map(e => e.outerHTML.slice(0, 120)).slice(0, 3).join(' | ')");
        Assert.True(wide.Length == 0, $"{name} is wider than the phone: {wide}");
        AxeResult found = await page.RunAxe();
        await page.SetViewportSizeAsync(360, 3200); // what sticks to the edges of the screen lies over no card then
        await Cards(page).ScreenshotAsync(new() { Path = Path.Combine(Checkout.Artifacts, $"card-{name}.png") });
        await page.SetViewportSizeAsync(360, 740);
        Assert.Empty(found.Violations.Select(v => $"{name} {v.Id}: {v.Nodes[0].Html}"));
        int small = await page.EvaluateAsync<int>("() => [...document.querySelectorAll('.field-cards button, .field-cards input, .field-cards select, .field-cards summary')].filter(e => e.offsetParent && e.getBoundingClientRect().height < 47.5).length");
        Assert.Equal(0, small);
    }

    [Theory]
    [InlineData("en-GB")]
    [InlineData("es-MX")]
    public async Task EveryCardOpensOnAPhoneWithoutSignal(string language)
    {
        await using Visit visit = await StartAsync(site, "level yard", language);
        IPage page = visit.Page;
        Assert.True(await visit.OverflowAsync() <= 0);
        await LookAsync(visit, $"list-{language}");
        string[] cards = await Cards(page).Locator(".card-list button").EvaluateAllAsync<string[]>("all => all.map(b => b.id.slice(5))");
        Assert.Equal(["stake", "drill", "cut", "pour", "stack", "fabric", "gate", "change", "drop"], cards);
        await TicketAsync(page, 1);
        foreach (string card in cards)
        {
            await OpenAsync(page, card);
            await Cards(page).Locator("h4").WaitForAsync();
            if (card == "drill") await TypeAsync(page, (0, "24 in"));
            if (card == "pour") await TypeAsync(page, (0, "15"), (2, "7"), (3, "35"));
            if (card == "cut") await TypeAsync(page, (0, "30 in"), (1, "25.8 in"), (2, "14 in"));
            if (card == "fabric") await TypeAsync(page, (0, "120 30"));
            if (card == "drop") await TypeAsync(page, (0, "1800"), (1, "80"));
            await LookAsync(visit, $"{card}-{language}");
            await BackAsync(page);
        }

        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    /// <summary>The yard's water line is marked from 38' 6" to 41' 6" of its second leg: the posts about it are dug by hand, none without a ticket or a zone.</summary>
    [Fact]
    public async Task TheDrillCardAllowsNothingWithoutTicketAndZone()
    {
        await using Visit visit = await StartAsync(site, "level yard", "en-GB");
        IPage page = visit.Page;
        await OpenAsync(page, "drill");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Do not dig");
        await Assertions.Expect(Cards(page).Locator(".drill-group")).ToHaveCountAsync(0);
        await TicketAsync(page, 1);
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Until then no hole is allowed");
        await Assertions.Expect(Cards(page).Locator(".drill-group")).ToHaveCountAsync(0);
        await TypeAsync(page, (0, "5 ft"));
        await Assertions.Expect(Cards(page).Locator(".drill-group.byhand")).ToContainTextAsync("marked water line");
        await Assertions.Expect(Cards(page).Locator(".drill-group.maydrill")).ToContainTextAsync("A1 –");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Private lines are not marked");
    }

    [Fact]
    public async Task TheCutIsShownStepByStep()
    {
        await using Visit visit = await StartAsync(site, "sloped lot", "en-GB");
        IPage page = visit.Page;
        await OpenAsync(page, "cut");
        await TypeAsync(page, (0, "30 in"), (1, "22 in"), (2, "14 in"));
        await Assertions.Expect(Cards(page)).ToContainTextAsync("1 / 7");
        for (int step = 2; step <= 7; step++)
        {
            await Cards(page).GetByRole(AriaRole.Button, new() { Name = "Next ›" }).ClickAsync();
            await Assertions.Expect(Cards(page)).ToContainTextAsync($"{step} / 7");
            if (step == 4) await LookAsync(visit, "cut-step");
        }
        await Assertions.Expect(Cards(page)).ToContainTextAsync("run out at the bottom");
        await Cards(page).Locator("summary").ClickAsync();
        await LookAsync(visit, "cut-whole");
        await TypeAsync(page, (1, "0"));
        await Assertions.Expect(Cards(page).GetByRole(AriaRole.Alert).First).ToBeVisibleAsync();
        await Assertions.Expect(Cards(page).Locator(".card-step")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task TheRodIsReadWhereTheGroundWasMeasured()
    {
        await using Visit visit = await StartAsync(site, "larkspur ground", "en-GB");
        IPage page = visit.Page;
        await OpenAsync(page, "stake");
        await TypeAsync(page, (0, "218 m"));
        await Assertions.Expect(Cards(page).Locator(".card-rows li").First).ToContainTextAsync("Rod");
        await LookAsync(visit, "stake-ground");
    }

    /// <summary>Three holes of rock at 45.50 are 136.50. Nothing is kept before it is signed; signed it is in the log, and still there after the page was opened again.</summary>
    [Fact]
    public async Task AChangeIsSignedBeforeTheWorkGoesOn()
    {
        await using Visit visit = await StartAsync(site, "level yard", "en-GB");
        IPage page = visit.Page;
        await OpenAsync(page, "change");
        await TypeAsync(page, (0, "12' 6\""), (1, "rock at thirty inches, core drill"), (2, "3"), (3, "hole"), (4, "45.50"), (5, "R. Ash"));
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Total 136.50");
        ILocator keep = Cards(page).GetByRole(AriaRole.Button, new() { Name = "Keep the change" });
        await keep.ClickAsync();
        await Assertions.Expect(Cards(page).GetByRole(AriaRole.Alert)).ToContainTextAsync("not signed");
        await Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", "0");

        ILocator pad = Cards(page).Locator(".sign-pad");
        await pad.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult box = (await pad.BoundingBoxAsync())!;
        foreach (int stroke in new[] { 0, 1 })
        {
            await page.Mouse.MoveAsync(box.X + 40 + (stroke * 90), box.Y + 90);
            await page.Mouse.DownAsync();
            for (int i = 1; i <= 8; i++) await page.Mouse.MoveAsync(box.X + 40 + (stroke * 90) + (i * 10), box.Y + 90 - (i % 2 * 40));
            await page.Mouse.UpAsync();
            await Assertions.Expect(pad.Locator("polyline")).ToHaveCountAsync(stroke + 2);
        }
        await LookAsync(visit, "change-signed");
        await keep.ClickAsync();
        await Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", "1");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Kept in the log");
        await Assertions.Expect(pad.Locator("polyline")).ToHaveCountAsync(1);

        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("book");
        await Assertions.Expect(page.Locator("section[aria-label='Log'] .field-list")).ToContainTextAsync("rock at thirty inches, core drill: 3 hole × 45.50 = 136.50, yard, signed R. Ash");
        await visit.SheetAsync("cards");
        await OpenAsync(page, "change");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Together 136.50");
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    /// <summary>Over a surface the card says how far the leaves stand over the ground on both sides of the line.</summary>
    [Fact]
    public async Task TheGateCardLooksUnderTheArc()
    {
        await using Visit visit = await StartAsync(site, "larkspur ground", "en-GB");
        IPage page = visit.Page;
        await OpenAsync(page, "gate");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Swung to the left");
        await Assertions.Expect(Cards(page)).ToContainTextAsync("Swung to the right");
        await LookAsync(visit, "gate-ground");
    }
}
