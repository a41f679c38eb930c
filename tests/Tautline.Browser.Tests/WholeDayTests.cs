using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>The foreman's whole day on a sloped lot without signal, from the truck in the morning to the office in the evening.</summary>
[Trait("Category", "Slow")]
public sealed class WholeDayTests(BrowserSite site)
{
    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Region(IPage page, string name) => page.GetByRole(AriaRole.Region, new() { Name = name });

    private static ILocator FirstRun(IPage page) => page.Locator("section.field-run").First;

    [Fact]
    public async Task ADayWithoutSignalComesToTheOfficeWhole()
    {
        await using Visit phone = await site.VisitAsync(360, 740, "sunlight");
        IPage page = phone.Page;

        // In the yard, with signal: the job is opened once, and the program says it is all here.
        await phone.OpenAsync();
        await phone.OpenSampleAsync("sloped lot");
        await phone.GoAsync("Field", "Hand over");
        await Assertions.Expect(Region(page, "On this device")).ToContainTextAsync("it opens without signal", new() { Timeout = 60_000 });
        await phone.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await phone.GoAsync("Field");

        // Who is there, and may we dig.
        await page.GetByLabel("Who enters").FillAsync("Ines");
        await page.GetByLabel("Who enters").BlurAsync();
        await phone.SheetAsync("book");
        await page.GetByLabel("Locate ticket").FillAsync("B-204");
        await Button(page, "Keep the ticket").ClickAsync();
        await KeptAsync(page, 1);
        await Assertions.Expect(page.Locator(".dig.may")).ToContainTextAsync("B-204");
        await page.GetByLabel("Safety talk about").FillAsync("Fabric under tension");
        await page.GetByLabel("Who was there").FillAsync("Ines, Tom");
        await Button(page, "Keep the talk").ClickAsync();
        await KeptAsync(page, 2);

        // Three posts as planned, the fourth had to move: the rest of the run is divided anew.
        await phone.SheetAsync("today");
        await FirstRun(page).GetByLabel("Set posts: how many posts").FillAsync("3");
        await FirstRun(page).GetByLabel("Set posts: how many posts").BlurAsync();
        await FirstRun(page).GetByRole(AriaRole.Button, new() { Name = "Done: Set posts" }).ClickAsync();
        await KeptAsync(page, 3);
        if (await FirstRun(page).Locator("summary").CountAsync() > 0) await FirstRun(page).Locator("summary").First.ClickAsync();
        ILocator free = FirstRun(page).Locator("tbody tr", new() { Has = page.Locator("input") }).Filter(new() { HasNotText = "✓" }).First;
        string tape = (await free.Locator("td").First.InnerTextAsync()).Trim();
        string drawn = tape.Split('\'')[0];
        await free.Locator("input").FillAsync($"{int.Parse(drawn, System.Globalization.CultureInfo.InvariantCulture) + 1}'");
        await free.Locator("input").BlurAsync();
        await KeptAsync(page, 4);

        // The cut at the terminal from two readings, step by step; then the run is hung.
        await phone.SheetAsync("cards");
        await page.Locator("#card-cut").ClickAsync();
        ILocator cards = page.Locator("section.field-cards");
        foreach ((int field, string text) in new[] { (0, "30 in"), (1, "22 in"), (2, "14 in") }) await cards.Locator("input:not([type=date])").Nth(field).FillAsync(text);
        for (int step = 1; step < 7; step++)
        {
            await Assertions.Expect(cards).ToContainTextAsync($"{step} / 7");
            await cards.GetByRole(AriaRole.Button, new() { Name = "Next ›" }).ClickAsync();
        }

        await Assertions.Expect(cards).ToContainTextAsync("7 / 7");
        await phone.SheetAsync("today");
        await FirstRun(page).GetByRole(AriaRole.Button, new() { Name = "Done: Hang" }).ClickAsync();
        await KeptAsync(page, 5);

        // What else the day leaves: hours, a note, a photo.
        await phone.SheetAsync("book");
        await page.GetByLabel("Hours", new() { Exact = true }).FillAsync("8.5");
        await Button(page, "Keep the hours").ClickAsync();
        await KeptAsync(page, 6);
        await page.GetByLabel("What it shows").First.FillAsync("cut end at the corner");
        await page.GetByLabel("What it shows").First.BlurAsync();
        await page.GetByLabel("Take a photo…").EvaluateAsync("""
            async (input) => {
              const canvas = Object.assign(document.createElement("canvas"), { width: 3000, height: 2000 }), pen = canvas.getContext("2d");
              for (let i = 0; i < 400; i++) { pen.fillStyle = `hsl(${i * 37 % 360} 60% 50%)`; pen.fillRect(i * 97 % 3000, i * 61 % 2000, 200, 150); }
              const chosen = new DataTransfer();
              chosen.items.add(new File([await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.95))], "corner.jpg", { type: "image/jpeg" }));
              input.files = chosen.files;
              input.dispatchEvent(new Event("change", { bubbles: true }));
            }
            """);
        await KeptAsync(page, 7);

        // Looked at before going home.
        await phone.SheetAsync("checks");
        await page.Locator("button.check-head", new() { HasText = "Posts out of plumb" }).ClickAsync();
        await page.Locator(".check-form").GetByLabel("Measured").FillAsync("2.5");
        await page.Locator(".check-form").GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
        await KeptAsync(page, 8);
        await Assertions.Expect(Region(page, "Punch list")).ToContainTextAsync("Posts out of plumb: 2.5°");

        // In the truck the phone is loaded again, still without signal, and the day becomes a file.
        await page.ReloadAsync();
        await phone.GoAsync("Field", "Hand over");
        await KeptAsync(page, 8);
        (string name, byte[] file) = await phone.SavedAsync(() => Button(page, "Make the file").ClickAsync());
        Assert.Equal("thistle-hill-lot-field.zip", name);
        await Assertions.Expect(Region(page, "On this device")).ToContainTextAsync("All that was entered on this device is handed over.");

        // The office, with a job it has edited meanwhile, takes it in twice.
        await using Visit office = await site.VisitAsync();
        await office.OpenAsync();
        await office.OpenSampleAsync("sloped lot");
        await office.GoAsync("Field", "Hand over");
        for (int time = 0; time < 2; time++)
        {
            await office.Page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/zip", Buffer = file });
            await Assertions.Expect(office.Page.GetByRole(AriaRole.Status).Filter(new() { HasText = time == 0 ? "8 entries were new here. 1 photo came with it" : "0 entries were new here." })).ToBeVisibleAsync();
            await KeptAsync(office.Page, 8);
        }

        await office.GoAsync("Field", "Photos and log");
        ILocator log = Region(office.Page, "Log");
        foreach (string told in new[] { "B-204", "Talk about Fabric under tension: Ines, Tom", "Set posts, 3 posts", "Set posts, 1 post", "Hang", "8.5 hours", "cut end at the corner", "Posts out of plumb: not as it should be" })
            await Assertions.Expect(log).ToContainTextAsync(told);
        await office.Page.WaitForFunctionAsync("() => document.querySelector('button.photo img')?.naturalWidth > 0");
        await office.GoAsync("Field", "Checks");
        await Assertions.Expect(Region(office.Page, "Punch list")).ToContainTextAsync("Posts out of plumb: 2.5°");
        await office.GoAsync("Field", "As-built");
        await Assertions.Expect(office.Page.Locator("#as-built .built-differ li").First).ToContainTextAsync("Ines");
        await office.ShootAsync("whole-day-office");
        Assert.Empty(office.Troubles);
        Assert.DoesNotContain(phone.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }
}
