using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>
/// docs/office-guide.md, replayed: from an empty browser to a hillside job with gates, ground, fabric and a take-off. Where TAUTLINE_PICTURES names a
/// folder the guide's pictures are made on the way.
/// </summary>
[Trait("Category", "Slow")]
public sealed class GuideTests(BrowserSite site)
{
    private static readonly string? pictures = Environment.GetEnvironmentVariable("TAUTLINE_PICTURES");

    private Visit visit = null!;
    private int actions;

    private IPage Page => visit.Page;

    [Fact]
    public async Task TheGuideIsReplayedInAtMostSixtyActions()
    {
        await using (visit = await site.VisitAsync(1200, 800))
        {
            await visit.OpenAsync();
            await ShootAsync("start");
            await DrawAsync();
            await ThingsAsync();
            await SpecAsync();
            await GroundAsync();
            await FabricAsync();
            await TakeoffAsync();
            await PapersAsync();
            Assert.Empty(visit.Troubles);
        }

        Assert.InRange(actions, 40, 60);
    }

    private async Task DrawAsync()
    {
        await FillAsync(Page.Locator("main.start input[maxlength]"), "Larkspur pasture");
        await ClickAsync(Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }));
        await ToolAsync("Draw a line");
        await Assertions.Expect(PlanHand.Sheet(visit)).ToHaveAttributeAsync("data-view", new System.Text.RegularExpressions.Regex(@"^\S+ \S+ \S+$"));
        actions++;
        await PlanHand.ClickAsync(visit, 20, 20);
        foreach ((string length, string way) in new[] { ("220", "N 70 E"), ("160", "R 20"), ("120", "L 90") })
        {
            await TypeAsync(length);
            await KeyAsync("Tab");
            await TypeAsync(way);
            await KeyAsync("Enter");
            await Assertions.Expect(PlanHand.Sheet(visit)).ToBeFocusedAsync();
        }

        await ShootAsync("draw");
        await KeyAsync("Enter");
        await Assertions.Expect(visit.Totals).ToContainTextAsync("500' 0\"");
    }

    private async Task ThingsAsync()
    {
        await ToolAsync("Gate");
        await ChooseAsync(Page.Locator(".map-options select"), "double");
        await FillAsync(Page.Locator(".map-options input"), "12'");
        await OnPlanAsync(120, 56.4);
        await Assertions.Expect(visit.Totals).ToContainTextAsync("Gates1");
        await ToolAsync("Gate");
        await ChooseAsync(Page.Locator(".map-options select"), "walk");
        await OnPlanAsync(300, 95.2);
        await Assertions.Expect(visit.Totals).ToContainTextAsync("Gates2");
        await ToolAsync("Obstacle");
        actions++;
        await PlanHand.DragAsync(visit, (386.7, 150), (386.7, 156));
        await Assertions.Expect(visit.Undo).ToHaveAccessibleNameAsync("Undo: add an obstacle");
        await ShootAsync("gates");
    }

    private async Task SpecAsync()
    {
        await StepAsync("Spec & rules");
        await FillAsync(Page.GetByLabel("Height of the fabric").First, "5'");
        await KeyAsync("Enter");
        await Assertions.Expect(Page.Locator(".spec .hint").First).ToContainTextAsync("5' 0\" fabric");
        await ShootAsync("spec");
    }

    private async Task GroundAsync()
    {
        await StepAsync("Ground");
        await ClickAsync(Page.GetByRole(AriaRole.Tab, new() { Name = "Attach a file" }));
        actions++;
        await Page.Locator("#ground-file").SetInputFilesAsync(Checkout.PathOf("samples", "larkspur.asc"));
        await ClickAsync(Page.GetByLabel("local:metre"));
        await ClickAsync(Page.GetByRole(AriaRole.Radio, new() { NameRegex = new("^metre") }));
        await ClickAsync(Page.GetByRole(AriaRole.Button, new() { Name = "Lay it under the lines" }));
        await Assertions.Expect(Page.GetByText("The ground lies under the lines.")).ToBeVisibleAsync();
        await ClickAsync(Page.GetByRole(AriaRole.Tab, new() { Name = "Heights and fit" }));
        await Assertions.Expect(Page.GetByText("Ground of larkspur.asc is kept")).ToBeVisibleAsync();
        await ShootAsync("ground");
        await ClickAsync(Page.Locator("details.problems summary"));
        await ShootAsync("problems");
        await ClickAsync(Page.Locator("details.problems summary"));
    }

    private async Task FabricAsync()
    {
        await StepAsync("Fabric");
        await ClickAsync(Page.Locator("details.hang summary").First);
        await ClickAsync(Page.Locator("details.hang button.quiet").First);
        await Assertions.Expect(Page.Locator(".card-drawing svg").First).ToBeVisibleAsync();
        await ShootAsync("fabric");
    }

    private async Task TakeoffAsync()
    {
        await StepAsync("Take-off");
        await ClickAsync(Page.GetByRole(AriaRole.Button, new() { Name = "chain-link fabric" }).First);
        await ClickAsync(visit.Details.GetByRole(AriaRole.Button, new() { NameRegex = new("^why") }).First);
        await Assertions.Expect(visit.Details.Locator(".why-box")).ToBeVisibleAsync();
        await ShootAsync("takeoff");
        actions++;
        (string name, byte[] bytes) = await visit.SavedAsync(() => Page.GetByRole(AriaRole.Button, new() { Name = "Take-off as CSV" }).ClickAsync());
        Assert.EndsWith(".csv", name, StringComparison.Ordinal);
        Assert.InRange(bytes.Length, 500, 50_000);
    }

    private async Task PapersAsync()
    {
        await StepAsync("Papers");
        actions++;
        (string name, byte[] bytes) = await visit.SavedAsync(() => Page.GetByRole(AriaRole.Button, new() { Name = "Crew packet as PDF" }).ClickAsync());
        Assert.EndsWith("-packet.pdf", name, StringComparison.Ordinal);
        Assert.InRange(bytes.Length, 300_000, 5_000_000);
        await Assertions.Expect(Page.Locator(".papers-status")).ToContainTextAsync("was made");
        await ShootAsync("papers");
    }

    private Task ToolAsync(string tool)
    {
        actions++;
        return PlanHand.UseAsync(visit, tool);
    }

    private async Task OnPlanAsync(double eastFeet, double northFeet)
    {
        actions++;
        await PlanHand.ClickAsync(visit, eastFeet, northFeet);
    }

    private Task StepAsync(string step)
    {
        actions++;
        return visit.GoAsync(step);
    }

    private Task ClickAsync(ILocator what)
    {
        actions++;
        return what.ClickAsync();
    }

    private Task FillAsync(ILocator what, string text)
    {
        actions++;
        return what.FillAsync(text);
    }

    private async Task ChooseAsync(ILocator what, string value)
    {
        actions++;
        await what.SelectOptionAsync(value);
    }

    private Task TypeAsync(string text)
    {
        actions++;
        return Page.Keyboard.TypeAsync(text);
    }

    private Task KeyAsync(string key)
    {
        actions++;
        return Page.Keyboard.PressAsync(key);
    }

    private async Task ShootAsync(string name)
    {
        await Page.WaitForTimeoutAsync(pictures is null ? 0 : 700);
        if (pictures is null) await visit.ShootAsync("guide-" + name);
        else await Page.ScreenshotAsync(new() { Path = Path.Combine(pictures, name + ".png") });
    }
}
