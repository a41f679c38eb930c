using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>Nothing is lost: reload, offline, two tabs, deleted jobs, versions.</summary>
[Trait("Category", "Slow")]
public sealed class KeepingTests(BrowserSite site)
{
    [Fact]
    public async Task AReloadGoesOnWhereItWas()
    {
        await using Visit visit = await EditedAsync();
        await visit.Page.ReloadAsync();

        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        Assert.Empty(visit.Troubles);
    }

    /// <summary>The browser is given no room; what was edited stays on the page, is said not to be kept, and is kept once there is room again.</summary>
    [Fact]
    public async Task WithoutRoomTheEditStaysOnThePageAndIsKeptLater()
    {
        await using Visit visit = await EditedAsync();
        // A browser whose profile lies in memory does not heed a quota: what it would throw is thrown in its place.
        await visit.Page.EvaluateAsync(
            "() => { window.wasPut = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }; }");
        await visit.Page.GetByLabel("Length 3").FillAsync("97'");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");
        await Assertions.Expect(visit.Page.GetByText("Not kept: no room left")).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.GetByText("Save the job as a file").First).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("97' 0\"");
        await visit.Page.EvaluateAsync("() => { IDBObjectStore.prototype.put = window.wasPut; }");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Try again" }).First.ClickAsync();
        await visit.KeptAsync();
        await visit.Page.ReloadAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("97' 0\"");
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    /// <summary>A length is being typed, not yet taken: after a reload the job is as it was, and says so in no error.</summary>
    [Fact]
    public async Task AReloadInMidEditKeepsTheJobAsItWas()
    {
        await using Visit visit = await EditedAsync();
        await visit.Page.GetByLabel("Length 3").FillAsync("12");
        await visit.Page.ReloadAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AfterTheFirstVisitThePageOpensWithoutAConnection()
    {
        await using Visit visit = await EditedAsync();
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.ReloadAsync();

        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        await visit.GoAsync("Take-off");
        await Assertions.Expect(visit.Page.Locator("table.takeoff tbody tr").First).ToBeVisibleAsync();
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    [Fact]
    public async Task ASecondTabReadsOnlyAndCanTakeTheJobOver()
    {
        await using Visit visit = await EditedAsync();
        IPage other = await visit.OtherTabAsync();
        await other.Locator(".kept-jobs button").First.ClickAsync();
        await Assertions.Expect(other.GetByText("This job is open in another tab.")).ToBeVisibleAsync();
        await Assertions.Expect(other.GetByRole(AriaRole.Button, new() { Name = "Add a leg" })).ToBeDisabledAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Edit it here" }).ClickAsync();
        await Assertions.Expect(other.GetByRole(AriaRole.Button, new() { Name = "Add a leg" })).ToBeEnabledAsync();

        await Assertions.Expect(visit.Page.GetByText("Another tab has taken this job over.")).ToBeVisibleAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add a leg" })).ToBeDisabledAsync();
        await Assertions.Expect(other.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ADeletedJobIsTakenBack()
    {
        await using Visit visit = await EditedAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Jobs", Exact = true }).ClickAsync();
        ILocator dialog = visit.Page.GetByRole(AriaRole.Dialog);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Delete Thistle Hill lot" }).ClickAsync();
        await Assertions.Expect(dialog.GetByText("No job is kept yet.")).ToBeVisibleAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Take back Thistle Hill lot" }).ClickAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Open Thistle Hill lot", Exact = true }).ClickAsync();

        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AVersionIsGoneBackToAndThatIsUndone()
    {
        await using Visit visit = await EditedAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save & print" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Versions" }).ClickAsync();
        ILocator dialog = visit.Page.GetByRole(AriaRole.Dialog);
        await dialog.GetByLabel("Name of this version").FillAsync("as walked");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Keep a version" }).ClickAsync();
        await Assertions.Expect(dialog.GetByText("as walked")).ToBeVisibleAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await visit.Page.GetByLabel("Length 3").FillAsync("60'");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");
        await visit.KeptAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Save & print" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Versions" }).ClickAsync();
        await dialog.Locator("li", new() { HasText = "as walked" }).GetByRole(AriaRole.Button, new() { Name = "Go back to it" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("94' 0\"");
        await visit.Undo.ClickAsync();

        await Assertions.Expect(visit.Page.GetByLabel("Length 3")).ToHaveValueAsync("60' 0\"");
        Assert.Empty(visit.Troubles);
    }

    private async Task<Visit> EditedAsync()
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("sloped lot");
        await visit.Page.GetByLabel("Length 3").FillAsync("94'");
        await visit.Page.GetByLabel("Length 3").PressAsync("Enter");
        await Assertions.Expect(visit.Undo).ToBeEnabledAsync();
        await visit.KeptAsync();
        return visit;
    }
}
