using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>The line from its side, linked with the plan and the numbers.</summary>
[Trait("Category", "Slow")]
public sealed class ProfileTests(BrowserSite site)
{
    private static ILocator Profile(Visit visit) => visit.Page.Locator(".profile-sheet");

    private async Task<Visit> HillAsync()
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("larkspur ground");
        await Assertions.Expect(Profile(visit).Locator("[data-tag='post 17']").First).ToBeAttachedAsync();
        return visit;
    }

    /// <summary>A18 is the corner at 1+68.70: it is clicked on the profile, its numbers stand beside, the plan has it selected.</summary>
    [Fact]
    public async Task APostIsClickedAndItsNumbersAreShown()
    {
        await using Visit visit = await HillAsync();
        await Profile(visit).Locator("path.s-hit[data-tag='post 17']").ClickAsync();
        await Assertions.Expect(visit.Details).ToContainTextAsync("A18");
        await Assertions.Expect(visit.Details).ToContainTextAsync("1+68.70");
        await Assertions.Expect(Profile(visit).Locator("[data-tag='post 17'].selected").First).ToBeAttachedAsync();
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task WhatIsSelectedElsewhereShowsInTheProfile()
    {
        await using Visit visit = await HillAsync();
        await visit.Page.GetByRole(AriaRole.Tab, new() { Name = "Posts", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "A41", Exact = true }).ClickAsync();
        await Assertions.Expect(Profile(visit).Locator("[data-tag='post 40'].selected").First).ToBeAttachedAsync();
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheArrowKeysGoFromPostToPostAndZoomShowsFewer()
    {
        await using Visit visit = await HillAsync();
        await Profile(visit).FocusAsync();
        await visit.Page.Keyboard.PressAsync("Home");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(visit.Details).ToContainTextAsync("A2");
        int before = await Profile(visit).Locator("path.s-hit").CountAsync();
        for (int i = 0; i < 4; i++) await visit.Page.Keyboard.PressAsync("+");
        await Assertions.Expect(Profile(visit).Locator("path.s-hit[data-tag='post 61']")).ToHaveCountAsync(0);
        Assert.InRange(await Profile(visit).Locator("path.s-hit").CountAsync(), 2, before - 1);
        await visit.Page.Keyboard.PressAsync("0");
        await Assertions.Expect(Profile(visit).Locator("path.s-hit")).ToHaveCountAsync(before);
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task HoverOnTheProfileShowsOnIt()
    {
        await using Visit visit = await HillAsync();
        await Profile(visit).Locator("path.s-hit[data-tag='post 17']").HoverAsync();
        await Assertions.Expect(Profile(visit).Locator("[data-tag='post 17'].hovered").First).ToBeAttachedAsync();
        Assert.Empty(visit.Troubles);
    }

    /// <summary>The line is straight as drawn until an edit moves it: the profile follows.</summary>
    [Fact]
    public async Task AnEditIsSeenFromTheSideToo()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("sloped lot");
        await Assertions.Expect(Profile(visit).Locator("path.s-hit[data-tag='post 25']")).ToBeAttachedAsync();
        await visit.Page.GetByLabel("Length 3").FillAsync("94'");
        await visit.Page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(Profile(visit).Locator("path.s-hit[data-tag='post 27']")).ToBeAttachedAsync(new() { Timeout = 10_000 });
        Assert.Empty(visit.Troubles);
    }

    /// <summary>Goat Hill, run 1: 13 pickets to cross at each end.</summary>
    [Fact]
    public async Task TheCutCardIsDrawn()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("goat hill");
        await visit.GoAsync("Fabric");
        await visit.Page.Locator("details.hang summary").First.ClickAsync();
        await visit.Page.Locator("details.hang button.quiet").First.ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".card-drawing svg").First).ToContainTextAsync("13 pickets to cross");
        await visit.ShootAsync("cut-card");
        Assert.Empty(visit.Troubles);
    }
}
