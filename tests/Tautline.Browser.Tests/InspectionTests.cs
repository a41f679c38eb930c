using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>A fence is looked at on the phone: measured, put right, signed for.</summary>
[Trait("Category", "Slow")]
public sealed class InspectionTests(BrowserSite site)
{
    private static ILocator Checks(IPage page) => page.Locator("section.field-run", new() { Has = page.Locator(".check-stages") });

    private static ILocator Punch(IPage page) => page.Locator("section.field-run", new() { Has = page.Locator(".punch-list") });

    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    private static async Task<Visit> StartAsync(BrowserSite site, string language = "en-GB")
    {
        Visit visit = await site.VisitAsync(360, 740, "sunlight", language);
        await visit.OpenAsync();
        await visit.OpenSampleAsync("sloped lot");
        await visit.GoAsync(language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field");
        await KeptAsync(visit.Page, 0);
        await visit.SheetAsync("checks");
        return visit;
    }

    private static ILocator Head(IPage page, string check) => Checks(page).Locator("button.check-head", new() { HasText = check });

    private static async Task MeasureAsync(IPage page, string check, string value)
    {
        if (await Head(page, check).GetAttributeAsync("aria-expanded") != "true") await Head(page, check).ClickAsync();
        await Checks(page).GetByLabel("Measured").FillAsync(value);
        await Checks(page).GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
    }

    [Fact]
    public async Task WhatIsOutOfToleranceIsPutRightAndAcceptedBeforeTheStageIsSigned()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("checks");

        await Head(page, "Posts out of plumb").ClickAsync();
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Tolerance: at most 2°");
        await Assertions.Expect(Checks(page)).ToContainTextAsync("MIL-HDBK-1013/10");
        await Checks(page).GetByLabel("Measured").FillAsync("lots");
        await Assertions.Expect(Checks(page).GetByRole(AriaRole.Alert)).ToContainTextAsync("no measure");
        await Checks(page).GetByLabel("Measured").FillAsync("3");
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Out of the tolerance: a punch item is opened.");
        await visit.ShootAsync("field-check-form");
        await Checks(page).GetByLabel("Note").FillAsync("leans to the street");
        await Checks(page).GetByLabel("Note").BlurAsync();
        await Checks(page).GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
        await KeptAsync(page, 1);
        await Assertions.Expect(Head(page, "Posts out of plumb")).ToContainTextAsync("not as it should be");
        await Assertions.Expect(Punch(page)).ToContainTextAsync("Posts out of plumb: 3°, not as it should be, leans to the street");
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Not to be signed while a check is not as it should be.");
        await Assertions.Expect(Checks(page).GetByRole(AriaRole.Button, new() { Name = "Sign for this stage" })).ToBeDisabledAsync();
        await Punch(page).GetByRole(AriaRole.Button, new() { NameRegex = new("^Put right") }).ClickAsync();
        await KeptAsync(page, 2);
        await Assertions.Expect(Punch(page)).ToContainTextAsync("put right, to be looked at");
        await MeasureAsync(page, "Posts out of plumb", "1,5");
        await KeptAsync(page, 3);
        await Assertions.Expect(Punch(page)).ToContainTextAsync("Nothing is to be put right.");

        int kept = 3;
        ILocator run = Checks(page).GetByRole(AriaRole.Combobox, new() { Name = "Where" });
        int runs = await run.Locator("option").CountAsync();
        for (int r = 0; r < runs; r++)
        {
            await run.SelectOptionAsync(new SelectOptionValue { Index = r });
            foreach (string check in await Checks(page).Locator("li.open button.check-head span:nth-child(2)").AllInnerTextsAsync())
            {
                await Head(page, check).ClickAsync();
                await Checks(page).GetByRole(AriaRole.Button, new() { Name = "✓ As it should be" }).ClickAsync();
                await KeptAsync(page, ++kept);
                await Head(page, check).ClickAsync();
            }
        }

        ILocator sign = Checks(page).GetByRole(AriaRole.Button, new() { Name = "Sign for this stage" });
        await sign.ClickAsync();
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Write who signs.");
        await Checks(page).GetByLabel("Who signs").FillAsync("R. Ash");
        await Checks(page).GetByLabel("Who signs").BlurAsync();
        await sign.ClickAsync();
        await KeptAsync(page, ++kept);
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Signed for by R. Ash");

        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("checks");
        await Assertions.Expect(Checks(page)).ToContainTextAsync("Signed for by R. Ash");
        // A post is hit by a truck the day after: the signature falls with it.
        await MeasureAsync(page, "Posts out of plumb", "6");
        await KeptAsync(page, ++kept);
        await Assertions.Expect(Checks(page)).Not.ToContainTextAsync("Signed for by");
        await visit.SheetAsync("book");
        await Assertions.Expect(page.Locator("section[aria-label='Log']")).ToContainTextAsync("Signed for: Posts, R. Ash");
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("en-GB")]
    [InlineData("es-MX")]
    public async Task ChecksFitAPhoneInBothLanguages(string language)
    {
        await using Visit visit = await StartAsync(site, language);
        IPage page = visit.Page;
        await Checks(page).Locator("button.check-head").Nth(2).ClickAsync();
        await Checks(page).Locator(".card-turn button").First.ClickAsync();
        await KeptAsync(page, 1);
        await Punch(page).Locator("form input").FillAsync("cap missing at the corner");
        await Punch(page).Locator("form button").ClickAsync();
        await KeptAsync(page, 2);
        await Assertions.Expect(Punch(page).Locator(".punch-list > li")).ToHaveCountAsync(2);
        AxeResult found = await page.RunAxe();
        await visit.ShootAsync($"field-checks-{language}");
        Assert.Empty(found.Violations.Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        Assert.True(await visit.OverflowAsync() <= 0);
        foreach (int stage in new[] { 1, 2, 3, 4 })
        {
            await Checks(page).Locator(".check-stages button").Nth(stage).ClickAsync();
            if (await Checks(page).Locator("button.check-head").CountAsync() > 0) await Checks(page).Locator("button.check-head").First.ClickAsync();
            Assert.True(await visit.OverflowAsync() <= 0, $"stage {stage} is wider than the phone");
            Assert.DoesNotContain("inspect.", await Checks(page).InnerTextAsync(), StringComparison.Ordinal);
            int small = await page.EvaluateAsync<int>("() => [...document.querySelectorAll('.field-day button, .field-day input, .field-day select')].filter(e => e.offsetParent && !e.closest('.file-button') && e.getBoundingClientRect().height < 47.5).length");
            Assert.Equal(0, small);
        }

        Assert.Empty(visit.Troubles);
    }
}
