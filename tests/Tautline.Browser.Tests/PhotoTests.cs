using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>Photos of the field: taken without signal, kept at once, made smaller, handed over with the log. And the rest of the day's book.</summary>
[Trait("Category", "Slow")]
public sealed class PhotoTests(BrowserSite site)
{
    /// <summary>Puts a picture into the file field as a camera would: noise, so that a JPEG of it is large; with the camera's note that it is to be turned.</summary>
    private const string Camera = """
        async (input, [width, height, turned]) => {
          const canvas = Object.assign(document.createElement("canvas"), { width, height });
          const pen = canvas.getContext("2d");
          const row = pen.createImageData(width, 250);
          for (let y = 0; y < height; y += 250) {
            for (let i = 0; i < row.data.length; i += 65536) crypto.getRandomValues(new Uint8Array(row.data.buffer, i, Math.min(65536, row.data.length - i)));
            for (let i = 3; i < row.data.length; i += 4) row.data[i] = 255;
            pen.putImageData(row, 0, y);
          }
          let picture = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 1));
          if (turned) {
            const exif = [0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0, 0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0];
            picture = new Blob([picture.slice(0, 2), new Uint8Array(exif), picture.slice(2)], { type: "image/jpeg" });
          }
          const chosen = new DataTransfer();
          chosen.items.add(new File([picture], "camera.jpg", { type: "image/jpeg" }));
          input.files = chosen.files;
          input.dispatchEvent(new Event("change", { bubbles: true }));
          return picture.size;
        }
        """;

    private static ILocator Take(IPage page) => page.GetByLabel("Take a photo…");

    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    private static async Task<Visit> StartAsync(BrowserSite site, string language = "en-GB")
    {
        Visit visit = await site.VisitAsync(360, 740, "sunlight", language);
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync(language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field");
        await KeptAsync(visit.Page, 0);
        await visit.SheetAsync("book");
        return visit;
    }

    private static Task<int[]> SizeAsync(IPage page) => page.EvaluateAsync<int[]>("""
        () => new Promise((done) => {
          const opening = indexedDB.open("tautline");
          opening.onsuccess = () => {
            const rows = opening.result.transaction("photos").objectStore("photos").getAll();
            rows.onsuccess = () => { opening.result.close(); const last = rows.result.sort((a, b) => a.at - b.at).at(-1); done([rows.result.length, last.width, last.height, last.data.length]); };
          };
        })
        """);

    [Fact]
    public async Task APhotoOfFortyMegabytesIsMadeSmallerAndKeptWithoutSignal()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("book");
        await page.GetByLabel("What it shows").First.FillAsync("rock in the third hole");
        await page.GetByLabel("What it shows").First.BlurAsync();
        await page.GetByRole(AriaRole.Combobox, new() { Name = "Where", Exact = true }).SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("Tape from the first post", new() { Exact = true }).FillAsync("20'");
        await page.GetByLabel("Tape from the first post", new() { Exact = true }).BlurAsync();
        int bytes = await Take(page).EvaluateAsync<int>(Camera, new object[] { 5600, 5200, false });
        Assert.InRange(bytes, 40 << 20, 120 << 20);
        await KeptAsync(page, 1);
        int[] size = await SizeAsync(page);
        Assert.Equal("1 2048 1902", string.Join(" ", size.Take(3)));
        Assert.InRange(size[3], 1, 8 << 20);

        // The camera held upright: what it notes beside the picture is followed.
        await Take(page).EvaluateAsync<int>(Camera, new object[] { 1200, 800, true });
        await KeptAsync(page, 2);
        Assert.Equal("2 800 1200", string.Join(" ", (await SizeAsync(page)).Take(3)));
        await Assertions.Expect(page.Locator(".field-kept")).ToContainTextAsync("2 photos are kept on this device");
        await Assertions.Expect(page.Locator(".field-kept .waiting")).ToContainTextAsync("2 of this device have not been handed over. 2 photos are among them.");

        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("book");
        await KeptAsync(page, 2);
        ILocator first = page.Locator(".photo-list li", new() { HasText = "A" }).Last;
        await Assertions.Expect(first.GetByLabel("What it shows")).ToHaveValueAsync("rock in the third hole");
        await first.GetByRole(AriaRole.Button, new() { Name = "Show large: rock in the third hole" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Dialog)).ToBeVisibleAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('dialog[open] img').naturalWidth === 2048");
        await visit.ShootAsync("field-photo-large");
        await page.GetByRole(AriaRole.Button, new() { Name = "Close", Exact = true }).ClickAsync();
        await page.WaitForFunctionAsync("() => [...document.querySelectorAll('button.photo img')].every(i => i.naturalWidth > 0 && i.naturalWidth <= 256)");
        ILocator nameless = page.Locator(".photo-list li").First.GetByLabel("What it shows");
        await nameless.FillAsync("post 3, plumb");
        await nameless.BlurAsync();
        await KeptAsync(page, 3);
        await Assertions.Expect(page.Locator(".photo-list > li")).ToHaveCountAsync(2);
        Assert.True(await visit.OverflowAsync() <= 0);
        AxeResult found = await page.RunAxe();
        Assert.Empty(found.Violations.Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        await page.Locator("section[aria-label='Photos']").ScrollIntoViewIfNeededAsync();
        await visit.ShootAsync("field-photos");
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    [Fact]
    public async Task WhatIsNoPictureIsToldAndAPlaceThatIsNotOnTheRunLosesNoPhoto()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await Take(page).SetInputFilesAsync([
            new FilePayload { Name = "plan.txt", MimeType = "text/plain", Buffer = "no picture"u8.ToArray() },
            new FilePayload { Name = "cut-off.jpg", MimeType = "image/jpeg", Buffer = [0xff, 0xd8, 0xff, 0xe0, 0, 16] },
        ]);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("plan.txt: this browser cannot read it as a picture");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("cut-off.jpg");
        await KeptAsync(page, 0);

        await page.GetByRole(AriaRole.Combobox, new() { Name = "Where", Exact = true }).SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("Tape from the first post", new() { Exact = true }).FillAsync("9000'");
        await page.GetByLabel("Tape from the first post", new() { Exact = true }).BlurAsync();
        await Take(page).EvaluateAsync<int>(Camera, new object[] { 300, 250, false });
        await KeptAsync(page, 1);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("The photo is kept, for the whole run");
        Assert.Empty(visit.Troubles);
    }

    /// <summary>Photos go with the job's file, each once, and only as what its name says.</summary>
    [Fact]
    public async Task PhotosGoToTheOfficeWithTheFile()
    {
        await using Visit phone = await StartAsync(site);
        await using Visit office = await site.VisitAsync();
        await office.OpenAsync();
        await office.OpenSampleAsync("level yard");
        await office.GoAsync("Field", "Photos and log");
        await phone.Page.GetByLabel("What it shows").First.FillAsync("the corner");
        await phone.Page.GetByLabel("What it shows").First.BlurAsync();
        await Take(phone.Page).EvaluateAsync<int>(Camera, new object[] { 640, 500, false });
        await KeptAsync(phone.Page, 1);
        await phone.SheetAsync("share");
        (string name, byte[] file) = await phone.SavedAsync(() => phone.Page.GetByRole(AriaRole.Button, new() { Name = "Make the file", Exact = true }).ClickAsync());
        Assert.Equal("level-yard-field.zip", name);
        await Assertions.Expect(phone.Page.Locator(".field-kept .waiting")).ToHaveCountAsync(0);
        using (ZipArchive zip = new(new MemoryStream(file)))
        {
            Assert.Equal(2, zip.Entries.Count);
            using JsonDocument job = JsonDocument.Parse(zip.GetEntry("field.json")!.Open());
            Assert.Contains("the corner", job.RootElement.GetRawText(), StringComparison.Ordinal);
            ZipArchiveEntry photo = zip.Entries.Single(e => e.FullName.StartsWith("photos/", StringComparison.Ordinal));
            await using Stream bytes = photo.Open();
            Assert.Equal(Convert.ToHexStringLower(await SHA256.HashDataAsync(bytes)), Path.GetFileNameWithoutExtension(photo.Name));
        }

        // Damaged on its way: the entry comes, its photo does not.
        byte[] damaged = Changed(file);
        await office.SheetAsync("share");
        await TakeInAsync(office, name, damaged);
        await Assertions.Expect(Status(office, "1 entry was new")).ToBeVisibleAsync();
        await Assertions.Expect(office.Page.Locator(".photo-away")).ToHaveCountAsync(1);
        for (int time = 0; time < 2; time++)
        {
            await TakeInAsync(office, name, file);
            await Assertions.Expect(Status(office, time == 0 ? "0 entries were new here. 1 photo came with it" : "0 entries were new here.")).ToBeVisibleAsync();
            await Assertions.Expect(office.Page.Locator("button.photo")).ToHaveCountAsync(1);
        }
        await office.Page.WaitForFunctionAsync("() => document.querySelector('button.photo img').naturalWidth > 0");
        await office.Page.ReloadAsync();
        await office.GoAsync("Field");
        await office.SheetAsync("book");
        await office.Page.WaitForFunctionAsync("() => document.querySelector('button.photo img')?.naturalWidth > 0");
        await office.SheetAsync("share");
        await TakeInAsync(office, name, file[..(file.Length / 2)]);
        await Assertions.Expect(office.Page.Locator("section[aria-label='Hand over']").GetByRole(AriaRole.Status)).Not.ToContainTextAsync("photo came");
        await office.ShootAsync("field-office-photo");
        Assert.Empty(office.Troubles.Concat(phone.Troubles));
    }

    /// <summary>A photo that lay on the device before its entry did, as after a battery died between the two.</summary>
    [Fact]
    public async Task APhotoWithoutAnEntryIsOfferedAgain()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await Take(page).EvaluateAsync<int>(Camera, new object[] { 300, 250, false });
        await KeptAsync(page, 1);
        await page.EvaluateAsync("""
            () => new Promise((done) => {
              const opening = indexedDB.open("tautline");
              opening.onsuccess = () => {
                const work = opening.result.transaction("entries", "readwrite");
                work.objectStore("entries").clear();
                work.oncomplete = () => { opening.result.close(); done(true); };
              };
            })
            """);
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.SheetAsync("book");
        await KeptAsync(page, 0);
        await Assertions.Expect(page.Locator("section[aria-label='Photos']")).ToContainTextAsync("1 photo was taken and not written down");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put into the log" }).ClickAsync();
        await KeptAsync(page, 1);
        await Assertions.Expect(page.Locator("button.photo")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("section[aria-label='Photos']")).Not.ToContainTextAsync("not written down");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task WeatherMaterialAndTalksAreInTheLog()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        ILocator day = page.Locator("section[aria-label='The day']"), log = page.Locator("section[aria-label='Log']");
        await day.GetByLabel("Sky").SelectOptionAsync("rain");
        await day.GetByLabel("Wind").SelectOptionAsync("strong");
        await Assertions.Expect(day).ToContainTextAsync("do not belong in strong wind");
        await day.GetByLabel("Air, °F").FillAsync("hot");
        await day.GetByRole(AriaRole.Button, new() { Name = "Keep the weather" }).ClickAsync();
        await Assertions.Expect(day.GetByRole(AriaRole.Alert)).ToContainTextAsync("no temperature");
        await day.GetByLabel("Air, °F").FillAsync("-4");
        await day.GetByRole(AriaRole.Button, new() { Name = "Keep the weather" }).ClickAsync();
        await KeptAsync(page, 1);
        await Assertions.Expect(log).ToContainTextAsync("rain, strong, -4 °F");
        await day.GetByLabel("What", new() { Exact = true }).FillAsync("gravel");
        await day.GetByLabel("Quantity").FillAsync("0");
        await day.GetByRole(AriaRole.Button, new() { Name = "Keep the material" }).ClickAsync();
        await Assertions.Expect(day.GetByRole(AriaRole.Alert)).ToContainTextAsync("above zero");
        await day.GetByLabel("Quantity").FillAsync("2,5");
        await day.GetByLabel("Of what").FillAsync("ton");
        await day.GetByRole(AriaRole.Button, new() { Name = "Keep the material" }).ClickAsync();
        await KeptAsync(page, 2);
        await Assertions.Expect(log).ToContainTextAsync("2.5 ton gravel");
        await day.GetByLabel("Safety talk about").FillAsync("Auger");
        await day.GetByLabel("Who was there").FillAsync("Ines, Tom");
        await day.GetByRole(AriaRole.Button, new() { Name = "Keep the talk" }).ClickAsync();
        await KeptAsync(page, 3);
        await Assertions.Expect(log).ToContainTextAsync("Talk about Auger: Ines, Tom");
        await day.ScrollIntoViewIfNeededAsync();
        await visit.ShootAsync("field-day-book");
        Assert.True(await visit.OverflowAsync() <= 0);
        Assert.Empty(visit.Troubles);
    }

    private static ILocator Status(Visit visit, string text) => visit.Page.GetByRole(AriaRole.Status).Filter(new() { HasText = text });

    private static Task TakeInAsync(Visit visit, string name, byte[] file)
        => visit.Page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/zip", Buffer = file });

    /// <summary>One byte of the photo is another; the file around it is whole.</summary>
    private static byte[] Changed(byte[] file)
    {
        using MemoryStream copy = new();
        using (ZipArchive from = new(new MemoryStream(file)))
        using (ZipArchive to = new(copy, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in from.Entries)
            {
                using MemoryStream bytes = new();
                using (Stream part = entry.Open()) part.CopyTo(bytes);
                byte[] content = bytes.ToArray();
                if (entry.FullName.StartsWith("photos/", StringComparison.Ordinal)) content[^3] ^= 1;
                using Stream into = to.CreateEntry(entry.FullName).Open();
                into.Write(content);
            }
        }

        return copy.ToArray();
    }
}
