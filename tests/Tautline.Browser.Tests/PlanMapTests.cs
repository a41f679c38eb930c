using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using static Tautline.Browser.Tests.Site.PlanHand;

namespace Tautline.Browser.Tests;

/// <summary>The plan view under the hand: places are told in feet of the site and turned into pixels by what the drawing says of its view.</summary>
[Trait("Category", "Slow")]
public sealed class PlanMapTests(BrowserSite site)
{
    /// <summary>A tool that was used is laid down once its edit is drawn.</summary>
    private static Task LaidDownAsync(Visit visit) =>
        Assertions.Expect(visit.Page.GetByRole(AriaRole.Toolbar, new() { Name = "Tools of the plan" }).GetByRole(AriaRole.Button, new() { Name = "Select", Exact = true }))
            .ToHaveAttributeAsync("aria-pressed", "true");

    private static Task PostsAsync(Visit visit, int posts) => Assertions.Expect(Sheet(visit)).ToHaveAttributeAsync("data-posts", $"{posts}", new() { Timeout = 15_000 });

    private static Task TotalAsync(Visit visit, string text) => Assertions.Expect(visit.Totals).ToContainTextAsync(text, new() { Timeout = 15_000 });

    /// <summary>The yard of 60 by 90 ft: 32 posts, 300 ft.</summary>
    private async Task<Visit> YardAsync()
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await PostsAsync(visit, 32);
        await Assertions.Expect(Sheet(visit)).ToHaveAttributeAsync("data-view", new System.Text.RegularExpressions.Regex(@"^\S+ \S+ \S+$"));
        return visit;
    }

    /// <summary>100 ft in ten bays and 132 ft 6 in in fourteen: 25 posts.</summary>
    [Fact]
    public async Task ALineIsDrawnByAClickAndTypedMeasures()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.Page.Locator("main.start input[maxlength]").FillAsync("Drawn by hand");
        await visit.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await UseAsync(visit, "Draw a line");
        await Sheet(visit).ClickAsync(new() { Position = new() { X = 120, Y = 280 } });
        foreach ((string length, string turn) in new[] { ("100", "R 0"), ("132-6", "R 90") })
        {
            await visit.Page.Keyboard.TypeAsync(length);
            await visit.Page.Keyboard.PressAsync("Tab");
            await visit.Page.Keyboard.TypeAsync(turn);
            await visit.Page.Keyboard.PressAsync("Enter");
            await Assertions.Expect(Sheet(visit)).ToBeFocusedAsync();
        }

        await visit.Page.Keyboard.PressAsync("Enter");

        await PostsAsync(visit, 25);
        await TotalAsync(visit, "232' 6\"");
        await visit.ShootAsync("plan-drawn");
        Assert.Empty(visit.Troubles);
    }

    /// <summary>The corner goes 10 ft out: sides of 60, 100, 60.828 (the long side of 60 and 10) and 90 ft.</summary>
    [Fact]
    public async Task ADraggedCornerTakesPostsAndTotalsAlong()
    {
        await using Visit visit = await YardAsync();
        await DragAsync(visit, (90, 60), (100, 60));

        await TotalAsync(visit, "310' 9 15/16\"");
        await Assertions.Expect(Sheet(visit)).Not.ToHaveAttributeAsync("data-posts", "32");
        await visit.Undo.ClickAsync();
        await PostsAsync(visit, 32);
        await TotalAsync(visit, "300' 0\"");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AGateIsPlacedDraggedAndDeleted()
    {
        await using Visit visit = await YardAsync();
        await UseAsync(visit, "Gate");
        await ClickAsync(visit, 45, 0);
        await TotalAsync(visit, "Gates3");
        await LaidDownAsync(visit);
        await DragAsync(visit, (45, 0), (25, 0));
        await Assertions.Expect(visit.Undo).ToHaveAccessibleNameAsync(new System.Text.RegularExpressions.Regex("move gate"));
        await Sheet(visit).FocusAsync();
        await visit.Page.Keyboard.PressAsync("Delete");
        await TotalAsync(visit, "Gates2");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AnObstacleIsMarkedAlongTheLine()
    {
        await using Visit visit = await YardAsync();
        await UseAsync(visit, "Obstacle");
        await DragAsync(visit, (30, 0), (40, 0));
        await Assertions.Expect(visit.Undo).ToHaveAccessibleNameAsync("Undo: add an obstacle");
        await visit.ShootAsync("plan-obstacle");
        Assert.Empty(visit.Troubles);
    }

    /// <summary>The middle of a side is pulled out: one corner more.</summary>
    [Fact]
    public async Task AnEdgeIsPulledToACorner()
    {
        await using Visit visit = await YardAsync();
        await ClickAsync(visit, 20, 0);
        await DragAsync(visit, (45, 0), (45, -20));
        await Assertions.Expect(visit.Undo).ToHaveAccessibleNameAsync("Undo: insert a corner");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheKeyboardGoesFromPostToPost()
    {
        await using Visit visit = await YardAsync();
        await Sheet(visit).FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(visit.Page.Locator(".plan .plan-map [role=status]")).ToContainTextAsync("A2, line post");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(visit.Details).ToContainTextAsync("A2");
        await visit.Page.Keyboard.PressAsync("v");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await visit.Page.Keyboard.PressAsync("Enter");
        await visit.Page.Keyboard.PressAsync("Alt+ArrowUp");
        await TotalAsync(visit, "301'");
        Assert.Empty(visit.Troubles);
    }
}
