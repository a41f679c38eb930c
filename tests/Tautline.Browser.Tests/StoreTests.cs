using System.Text.Json;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>What a phone keeps, and what it says when it cannot.</summary>
[Trait("Category", "Slow")]
public sealed class StoreTests(BrowserSite site)
{
    private static ILocator Store(IPage page) => page.GetByRole(AriaRole.Region, new() { Name = "On this device" });

    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    private static async Task<Visit> StartAsync(BrowserSite site)
    {
        Visit visit = await site.VisitAsync(360, 740, "sunlight");
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Field");
        await KeptAsync(visit.Page, 0);
        return visit;
    }

    /// <summary>The browser itself finds nothing that keeps the page from being installed.</summary>
    [Fact]
    public async Task ThePageCanBeInstalled()
    {
        await using Visit visit = await StartAsync(site);
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Page.ReloadAsync();
        await visit.Page.Locator(".bench").WaitForAsync();
        ICDPSession browser = await visit.Context.NewCDPSessionAsync(visit.Page);
        JsonElement manifest = (await browser.SendAsync("Page.getAppManifest"))!.Value;
        Assert.Equal(0, manifest.GetProperty("errors").GetArrayLength());
        JsonElement found = (await browser.SendAsync("Page.getInstallabilityErrors"))!.Value;
        string[] errors = [.. found.GetProperty("installabilityErrors").EnumerateArray().Select(e => e.GetProperty("errorId").GetString()!)];
        // A context of a test is like a private window, where no browser installs anything; nothing else is amiss.
        Assert.DoesNotContain(errors, e => e != "in-incognito");
    }

    [Fact]
    public async Task WhatIsHereAndWhatWaitsIsSaid()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await visit.SheetAsync("share");
        await Assertions.Expect(Store(page)).ToContainTextAsync("The program is here: it opens without signal.", new() { Timeout = 60_000 });
        await Assertions.Expect(Store(page)).ToContainTextAsync("All that was entered on this device is handed over.");
        await visit.SheetAsync("book");
        await page.GetByLabel("Note").FillAsync("gate moved");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the note" }).ClickAsync();
        await KeptAsync(page, 1);
        await visit.SheetAsync("share");
        await Assertions.Expect(Store(page)).ToContainTextAsync("1 of this device has not been handed over.");
        await visit.SavedAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Make the file", Exact = true }).ClickAsync());
        await Assertions.Expect(Store(page)).ToContainTextAsync("All that was entered on this device is handed over.");
        await page.ReloadAsync();
        await visit.GoAsync("Field", "Hand over");
        await Assertions.Expect(Store(page)).ToContainTextAsync("All that was entered on this device is handed over.");
        await visit.ShootAsync("field-store");
        Assert.Empty(visit.Troubles);
    }

    /// <summary>No room: what was typed stays, what was kept stays, and once there is room the same press keeps it.</summary>
    [Fact]
    public async Task AFullPhoneLosesNothing()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await visit.SheetAsync("book");
        ILocator keep = page.GetByRole(AriaRole.Button, new() { Name = "Keep the note" });
        await page.GetByLabel("Note").FillAsync("before");
        await keep.ClickAsync();
        await KeptAsync(page, 1);
        // A browser looks at its quota only now and then: what it would throw is thrown in its place.
        await page.EvaluateAsync("""
            () => {
              window.was = { add: IDBObjectStore.prototype.add, put: IDBObjectStore.prototype.put };
              IDBObjectStore.prototype.add = () => { throw new DOMException('full', 'QuotaExceededError'); };
              IDBObjectStore.prototype.put = function (value, ...more) { if (this.name === 'photos') throw new DOMException('full', 'QuotaExceededError'); return window.was.put.call(this, value, ...more); };
            }
            """);
        string much = new('x', 2000);
        await page.GetByLabel("Note").FillAsync(much);
        await keep.ClickAsync();
        await Assertions.Expect(page.Locator(".field-day > .fault")).ToContainTextAsync("Not kept: there is no room left on this device");
        await Assertions.Expect(page.GetByLabel("Note")).ToHaveValueAsync(much);
        await KeptAsync(page, 1);
        await page.GetByLabel("Take a photo…").EvaluateAsync("""
            async (input) => {
              const canvas = Object.assign(document.createElement("canvas"), { width: 900, height: 700 }), pen = canvas.getContext("2d"), noise = pen.createImageData(900, 700);
              for (let i = 0; i < noise.data.length; i += 40000) crypto.getRandomValues(new Uint8Array(noise.data.buffer, i, Math.min(40000, noise.data.length - i)));
              pen.putImageData(noise, 0, 0);
              const chosen = new DataTransfer();
              chosen.items.add(new File([await new Promise((done) => canvas.toBlob(done, "image/jpeg", 1))], "full.jpg", { type: "image/jpeg" }));
              input.files = chosen.files;
              input.dispatchEvent(new Event("change", { bubbles: true }));
            }
            """);
        await Assertions.Expect(page.Locator(".photo-field .fault")).ToContainTextAsync("full.jpg: not kept, there is no room left on this device");
        await page.EvaluateAsync("() => Object.assign(IDBObjectStore.prototype, window.was)");
        await keep.ClickAsync();
        await KeptAsync(page, 2);
        await Assertions.Expect(page.Locator(".field-day > .fault")).ToHaveCountAsync(0);
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    /// <summary>Who takes the phone over is spoken to in the language they chose last.</summary>
    [Fact]
    public async Task EachPersonIsSpokenToInTheirLanguage()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        ILocator who = page.Locator("input[list=field-people]");
        async Task NameAsync(string name)
        {
            await who.FillAsync(name);
            await who.BlurAsync();
        }

        await NameAsync("Tom");
        await page.Locator(".field-day .switch button[lang=en]").ClickAsync();
        await NameAsync("Ines");
        await page.Locator(".field-day .switch button[lang=es]").ClickAsync();
        await Assertions.Expect(page.Locator(".dig")).ToContainTextAsync("No excave");
        await NameAsync("Tom");
        await Assertions.Expect(page.Locator(".dig")).ToContainTextAsync("Do not dig");
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await Assertions.Expect(who).ToHaveValueAsync("Tom");
        await NameAsync("Ines");
        await Assertions.Expect(page.Locator(".dig")).ToContainTextAsync("No excave");
        Assert.Empty(visit.Troubles);
    }
}
