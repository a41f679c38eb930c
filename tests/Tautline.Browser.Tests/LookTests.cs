using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>Languages, keys, sizes and colours.</summary>
[Trait("Category", "Slow")]
public sealed class LookTests(BrowserSite site)
{
    [Fact]
    public async Task ThePageSpeaksSpanishAndKeepsTheChoice()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look" }).ClickAsync();
        await visit.Page.GetByLabel("Español").CheckAsync();
        await visit.Page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Button, new() { Name = "Materiales" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "malla ciclónica (de eslabones)" }).First).ToBeVisibleAsync();
        await visit.Page.ReloadAsync();

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Navigation)).ToContainTextAsync("Especificación y reglas");
        Assert.Equal("es", await visit.Page.Locator("html").GetAttributeAsync("lang"));
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ABrowserInSpanishIsSpokenToInSpanish()
    {
        await using Visit visit = await site.VisitAsync(language: "es-MX");
        await visit.OpenAsync();

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Empezar un trabajo" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task AJobIsOpenedEditedAskedAndTakenBackByKeysAlone()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await TabToAsync(visit.Page, "sloped lot");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.KeptAsync();
        await visit.Page.GetByLabel("Length 3").FocusAsync();
        await visit.Page.Keyboard.PressAsync("Control+a");
        await visit.Page.Keyboard.TypeAsync("94'");
        await visit.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(visit.Undo).ToBeEnabledAsync();
        await visit.Page.Keyboard.PressAsync("Alt+5");
        await TabToAsync(visit.Page, "concrete, 80-lb bag");
        await visit.Page.Keyboard.PressAsync("Enter");
        await TabToAsync(visit.Page, "why? net");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Details.Locator(".why-box")).ToContainTextAsync("net of take-off line");
        await visit.Page.Keyboard.PressAsync("Control+z");

        await Assertions.Expect(visit.Redo).ToBeEnabledAsync();
        Assert.Empty(visit.Troubles);
    }

    [Theory]
    [InlineData(1440, 900, "light")]
    [InlineData(1440, 900, "dark")]
    [InlineData(1440, 900, "sunlight")]
    [InlineData(1024, 768, "light")]
    [InlineData(390, 844, "light")]
    [InlineData(390, 844, "dark")]
    [InlineData(390, 844, "sunlight")]
    public async Task ThePageFitsItsWindowAndAReadingAidFindsNothingAmiss(int width, int height, string theme)
    {
        await using Visit visit = await site.VisitAsync(width, height, theme);
        await visit.OpenAsync();
        await NothingAmissAsync(visit, $"start-{width}-{theme}");
        await visit.OpenSampleAsync("sloped lot");
        await NothingAmissAsync(visit, $"site-{width}-{theme}");
        foreach (string step in (string[])["Spec & rules", "Ground", "Fabric", "Take-off", "Papers"])
        {
            await visit.GoAsync(step);
            await NothingAmissAsync(visit, $"{step.Split(' ')[0]}-{width}-{theme}");
        }

        Assert.Empty(visit.Troubles);
    }

    private static async Task NothingAmissAsync(Visit visit, string name)
    {
        await visit.ShootAsync(name);
        Assert.Equal(0, await visit.OverflowAsync());
        AxeResult found = await visit.Page.RunAxe();
        Assert.Empty(found.Violations.Select(v => $"{v.Impact} {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}"));
        Assert.NotEmpty(found.Passes);
    }

    private static async Task TabToAsync(IPage page, string name)
    {
        List<string?> passed = [];
        for (int pressed = 0; pressed < 120; pressed++)
        {
            await page.Keyboard.PressAsync("Tab");
            string? text = await page.EvaluateAsync<string?>("() => document.activeElement?.textContent?.trim()");
            if (text == name) return;
            passed.Add(text);
        }

        Assert.Fail($"'{name}' is not reached by the tab key, only {string.Join(", ", passed.Distinct().Select(t => $"'{t}'"))}");
    }
}
