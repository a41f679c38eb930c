using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>What an estimator does with a job on the desk.</summary>
[Trait("Category", "Slow")]
public sealed class DeskTests(BrowserSite site)
{
    [Fact]
    public async Task ATakeOffLineSaysWhyAndItsReasonsCanBeFollowed()
    {
        await using Visit visit = await OpenedAsync("level yard");
        await visit.GoAsync("Take-off");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "concrete, 80-lb bag" }).ClickAsync();
        await visit.Details.GetByRole(AriaRole.Button, new() { Name = "why? purchase" }).ClickAsync();
        ILocator why = visit.Details.Locator(".why-box");
        await Assertions.Expect(why).ToContainTextAsync("purchase of take-off line");
        await why.Locator("button.link").First.ClickAsync();
        await Assertions.Expect(why.Locator("h3")).ToContainTextAsync("of post");
        await why.GetByRole(AriaRole.Button, new() { Name = "Back" }).ClickAsync();
        await Assertions.Expect(why.Locator("h3")).ToContainTextAsync("purchase of take-off line");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AProblemJumpsToItsPlace()
    {
        await using Visit visit = await OpenedAsync("larkspur ground");
        await visit.Page.Locator(".problems summary").ClickAsync();
        ILocator first = visit.Page.Locator(".problems .findings button.link").First;
        string message = await first.InnerTextAsync();
        await first.ClickAsync();

        await Assertions.Expect(visit.Page.Locator("#details-title")).Not.ToHaveTextAsync("This job");
        await Assertions.Expect(visit.Details.Locator(".findings").First).ToContainTextAsync(message);
    }

    [Fact]
    public async Task APostOfTheTableShowsItsNumbers()
    {
        await using Visit visit = await OpenedAsync("level yard");
        await visit.GoAsync("Site", "Posts");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "A2", Exact = true }).ClickAsync();

        await Assertions.Expect(visit.Page.Locator("#details-title")).ToHaveTextAsync("Post A2");
        await Assertions.Expect(visit.Details).ToContainTextAsync("hole depth");
    }

    [Fact]
    public async Task ALegIsMadeLongerTakenBackAndDoneAgain()
    {
        await using Visit visit = await OpenedAsync("sloped lot");
        string before = await visit.Totals.InnerTextAsync();
        await visit.Page.GetByLabel("Length 3").FillAsync("94'");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");
        await Assertions.Expect(visit.Totals).Not.ToHaveTextAsync(before);
        string after = await visit.Totals.InnerTextAsync();
        await Assertions.Expect(visit.Undo).ToHaveAccessibleNameAsync("Undo: length of a leg");
        await visit.Page.Locator("#sheet").ClickAsync(new() { Position = new() { X = 5, Y = 5 } });
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("74' 0\"");
        Assert.Equal(before, await visit.Totals.InnerTextAsync());
        await visit.Redo.ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        Assert.Equal(after, await visit.Totals.InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ALengthThatCannotBeReadIsToldAndChangesNothing()
    {
        await using Visit visit = await OpenedAsync("sloped lot");
        string before = await visit.Totals.InnerTextAsync();
        await visit.Page.GetByLabel("Length 3").FillAsync("ninety");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("ninety");
        Assert.Equal(before, await visit.Totals.InnerTextAsync());
    }

    [Fact]
    public async Task AnotherRuleSetAndAnotherHeightChangeTheJob()
    {
        await using Visit visit = await OpenedAsync("level yard");
        string before = await visit.Totals.InnerTextAsync();
        await visit.GoAsync("Spec & rules");
        await visit.Page.GetByLabel("Height of the fabric").First.FillAsync("8'");
        await visit.Page.GetByLabel("Height of the fabric").First.PressAsync("Enter");
        await Assertions.Expect(visit.Totals).Not.ToHaveTextAsync(before);
        await visit.GoAsync("Spec & rules", "Rules");
        await visit.Page.GetByLabel("Rule set").SelectOptionAsync("usace");
        await Assertions.Expect(visit.Page.Locator(".rules tbody tr", new() { HasText = "usace" }).First).ToBeVisibleAsync();
        await visit.Undo.ClickAsync();
        await visit.Undo.ClickAsync();
        await Assertions.Expect(visit.Totals).ToHaveTextAsync(before, new() { UseInnerText = true });
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheTapeBookGoesBothWays()
    {
        await using Visit visit = await OpenedAsync("sloped lot");
        await visit.GoAsync("Site", "Tape book");
        ILocator text = visit.Page.Locator("#tape-text");
        string written = await text.InputValueAsync();
        Assert.Contains("leg 74'", written, StringComparison.Ordinal);
        await text.FillAsync(written.Replace("leg 74'", "leg 74", StringComparison.Ordinal));
        await Assertions.Expect(visit.Page.Locator(".tape .findings")).ToContainTextAsync("column");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make the job from it" })).ToBeDisabledAsync();
        await text.FillAsync(written.Replace("leg 74'", "leg 94'", StringComparison.Ordinal));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make the job from it" }).ClickAsync();
        await visit.GoAsync("Site", "Legs");
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        await visit.Page.GetByLabel("Length 3").FillAsync("99'");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");
        await visit.GoAsync("Site", "Tape book");
        Assert.Contains("leg 99'", await visit.Page.Locator("#tape-text").InputValueAsync(), StringComparison.Ordinal);
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AGroundFileIsAskedAboutAndLaidUnderTheLines()
    {
        await using Visit visit = await OpenedAsync("larkspur");
        await visit.GoAsync("Ground", "Attach a file");
        await visit.Page.Locator("#ground-file").SetInputFilesAsync(Checkout.PathOf("samples", "larkspur.asc"));
        // docs/guide.md: 'attach ... --crs local-m --height-unit metre'.
        await visit.Page.GetByLabel("local:metre").ClickAsync();
        await visit.Page.GetByRole(AriaRole.Radio, new() { NameRegex = new("^metre") }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Lay it under the lines" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByText("The ground lies under the lines.")).ToBeVisibleAsync();
        await visit.GoAsync("Ground", "Heights and fit");
        await Assertions.Expect(visit.Page.GetByText("Ground of larkspur.asc is kept")).ToBeVisibleAsync();
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheFabricStepSaysHowEachRunIsHung()
    {
        await using Visit visit = await OpenedAsync("level yard");
        await visit.GoAsync("Fabric");
        await visit.Page.Locator(".hang summary").First.ClickAsync();

        await Assertions.Expect(visit.Page.Locator(".hang").First).ToContainTextAsync("tie off at");
    }

    private async Task<Visit> OpenedAsync(string sampleTitle)
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync(sampleTitle);
        return visit;
    }

    /// <summary>A figure that was taken over belongs to the job: taking it back is the job's affair though the field still has the keys.</summary>
    [Fact]
    public async Task TakingBackFromAFieldThatWasTakenOverTakesBackTheEdit()
    {
        await using Visit visit = await OpenedAsync("level yard");
        ILocator length = visit.Page.GetByLabel("Length 1");
        await length.FillAsync("72'");
        await length.PressAsync("Enter");
        await Assertions.Expect(visit.Undo).ToBeEnabledAsync();
        await length.PressAsync("Control+z");

        await Assertions.Expect(length).ToHaveValueAsync("60' 0\"");
        await Assertions.Expect(visit.Redo).ToBeEnabledAsync();
        Assert.Empty(visit.Troubles);
    }
}
