using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

/// <summary>A phone in a glove with no signal.</summary>
[Trait("Category", "Slow")]
public sealed class FieldTests(BrowserSite site)
{
    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static Task KeptAsync(IPage page, int entries) => Assertions.Expect(page.Locator(".field-kept")).ToHaveAttributeAsync("data-kept", $"{entries}");

    /// <summary>Ninety feet in ten bays; its first post belongs to the run before.</summary>
    private static ILocator Run(IPage page) => page.Locator("section.field-run").Nth(2);

    private static async Task<Visit> StartAsync(BrowserSite site, string language = "en-GB", string theme = "sunlight")
    {
        Visit visit = await site.VisitAsync(360, 740, theme, language);
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync(language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field");
        await KeptAsync(visit.Page, 0);
        return visit;
    }

    private static async Task<int> PostsAsync(IPage page) => await Run(page).Locator("tbody tr").CountAsync();

    [Fact]
    public async Task ADayOfWorkWithoutSignalIsThereAfterEveryReload()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await visit.GoAsync("Field");

        await Assertions.Expect(page.Locator(".dig.not")).ToContainTextAsync("Do not dig");
        await visit.SheetAsync("book");
        await page.GetByLabel("Locate ticket").FillAsync("A-117");
        await Button(page, "Keep the ticket").ClickAsync();
        await KeptAsync(page, 1);
        await Assertions.Expect(page.Locator(".dig.may")).ToContainTextAsync("A-117");
        await visit.SheetAsync("today");
        await page.GetByLabel("Who enters").FillAsync("Ines");
        await page.GetByLabel("Who enters").BlurAsync();
        await Run(page).GetByLabel("Set posts: how many posts").FillAsync("3");
        await Run(page).GetByLabel("Set posts: how many posts").BlurAsync();
        await Run(page).GetByRole(AriaRole.Button, new() { Name = "Done: Set posts" }).ClickAsync();
        await KeptAsync(page, 2);
        await Assertions.Expect(Run(page).Locator("li", new() { HasText = "Drill" })).ToContainTextAsync("3 /");

        await Run(page).Locator("summary").ClickAsync();
        int before = await PostsAsync(page);
        ILocator moved = Run(page).Locator("tbody tr").Nth(3).Locator("input");
        await moved.FillAsync("31' 6\"");
        await moved.BlurAsync();
        await KeptAsync(page, 3);
        await Assertions.Expect(Run(page).Locator("tbody tr", new() { HasText = "31' 6\"" })).ToContainTextAsync("✓");
        await Run(page).GetByRole(AriaRole.Button, new() { Name = "Done: Hang" }).ClickAsync();
        await KeptAsync(page, 4);
        await visit.SheetAsync("book");
        await page.GetByLabel("Note").FillAsync("rock at thirty feet");
        await Button(page, "Keep the note").ClickAsync();
        await page.GetByLabel("Hours", new() { Exact = true }).FillAsync("7.5");
        await Button(page, "Keep the hours").ClickAsync();
        await KeptAsync(page, 6);

        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await KeptAsync(page, 6);
        await Run(page).Locator("summary").ClickAsync();
        await Assertions.Expect(Run(page).Locator("tbody tr", new() { HasText = "31' 6\"" })).ToContainTextAsync("✓");
        await visit.SheetAsync("book");
        await Assertions.Expect(page.Locator("section[aria-label='Log'] .field-list")).ToContainTextAsync("Ines: rock at thirty feet");
        Assert.True(await PostsAsync(page) >= before);

        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take back: Set posts, 1 post") }).ClickAsync();
        await KeptAsync(page, 7);
        await visit.SheetAsync("today");
        await Assertions.Expect(Run(page).Locator("tbody tr", new() { HasText = "31' 6\"" })).ToHaveCountAsync(0);
        Assert.Equal(before, await PostsAsync(page));
        Assert.DoesNotContain(visit.Troubles, t => t.StartsWith("uncaught", StringComparison.Ordinal));
    }

    /// <summary>The phone and the office both have the job; the phone's day comes to the office as a file, twice, and the office's own edit stays.</summary>
    [Fact]
    public async Task TheOfficeTakesThePhonesDayInFromAFile()
    {
        await using Visit phone = await StartAsync(site);
        await using Visit office = await site.VisitAsync();
        await office.OpenAsync();
        await office.OpenSampleAsync("level yard");
        await office.GoAsync("Site");
        await office.Page.GetByLabel("Length 1", new() { Exact = true }).FillAsync("91'");
        await office.Page.GetByLabel("Length 1", new() { Exact = true }).BlurAsync();
        await Assertions.Expect(office.Undo).ToBeEnabledAsync();
        await office.GoAsync("Field");
        await Run(phone.Page).GetByRole(AriaRole.Button, new() { Name = "Done: Set posts" }).ClickAsync();
        await KeptAsync(phone.Page, 1);
        await phone.SheetAsync("share");
        (string name, byte[] file) = await phone.SavedAsync(() => Button(phone.Page, "Make the file").ClickAsync());
        Assert.Equal("level-yard-field.json", name);

        await office.SheetAsync("share");
        for (int time = 0; time < 2; time++)
        {
            await office.Page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/json", Buffer = file });
            await Assertions.Expect(office.Page.GetByRole(AriaRole.Status).Filter(new() { HasText = time == 0 ? "1 entry was new" : "0 entries were new" })).ToBeVisibleAsync();
            await KeptAsync(office.Page, 1);
        }
        await office.SheetAsync("today");
        // The posts stand where they were set: the office's edit took the line away from them, and that is told.
        await Assertions.Expect(office.Page.GetByRole(AriaRole.Region, new() { Name = "What stands and the job differ" })).ToContainTextAsync("Post 9 was set where no line of the job runs any more");
        await office.GoAsync("Site");
        await Assertions.Expect(office.Page.GetByLabel("Length 1", new() { Exact = true })).ToHaveValueAsync("91' 0\"");
        await office.Page.ReloadAsync();
        await office.GoAsync("Field");
        await KeptAsync(office.Page, 1);
        await office.SheetAsync("share");
        await office.Page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = "x.json", MimeType = "application/json", Buffer = file[..^40] });
        await Assertions.Expect(office.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("cut off");
        await office.ShootAsync("field-office");
        Assert.Empty(office.Troubles.Concat(phone.Troubles));
    }

    /// <summary>A phone set back to yesterday's backup writes under numbers it has used already: both entries are kept and that is told, and from then on it goes by another name.</summary>
    [Fact]
    public async Task ARestoredBackupLosesNothing()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        async Task NoteAsync(string text, int kept)
        {
            await visit.SheetAsync("book");
            await page.GetByLabel("Note").FillAsync(text);
            await Button(page, "Keep the note").ClickAsync();
            await KeptAsync(page, kept);
        }

        await NoteAsync("before the backup", 1);
        await visit.SheetAsync("share");
        (string name, byte[] file) = await visit.SavedAsync(() => Button(page, "Make the file").ClickAsync());
        await page.EvaluateAsync("""
            () => new Promise((done) => {
              const opening = indexedDB.open("tautline");
              opening.onsuccess = () => {
                const work = opening.result.transaction(["entries", "device"], "readwrite");
                work.objectStore("entries").clear();
                const row = work.objectStore("device").get(1);
                row.onsuccess = () => work.objectStore("device").put({ ...row.result, last: 0 });
                work.oncomplete = () => { opening.result.close(); done(true); };
              };
            })
            """);
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await NoteAsync("after it", 1);
        await visit.SheetAsync("share");
        await page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/json", Buffer = file });
        await KeptAsync(page, 2);
        await visit.SheetAsync("book");
        ILocator log = page.Locator("section[aria-label='Log']");
        await Assertions.Expect(log).ToContainTextAsync("1 number of a device is carried by two different entries, as after a restored backup");
        await page.ReloadAsync();
        await visit.GoAsync("Field");
        await NoteAsync("a third", 3);
        Assert.All(["before the backup", "after it", "a third"], async text => await Assertions.Expect(log).ToContainTextAsync(text));
        string[] devices = await page.EvaluateAsync<string[]>("""
            () => new Promise((done) => {
              const opening = indexedDB.open("tautline");
              opening.onsuccess = () => {
                const rows = opening.result.transaction("entries").objectStore("entries").getAll();
                rows.onsuccess = () => { opening.result.close(); done(rows.result.map((row) => row.device)); };
              };
            })
            """);
        Assert.Equal(2, devices.Distinct().Count());
        Assert.Empty(visit.Troubles);
    }

    /// <summary>Phone and office change one thing and a third: each is asked what shall stand, and the answer goes back.</summary>
    [Fact]
    public async Task WhatTwoChangedIsAskedAndSettled()
    {
        await using Visit phone = await StartAsync(site);
        await using Visit office = await site.VisitAsync();
        await office.OpenAsync();
        await office.OpenSampleAsync("level yard");
        foreach ((Visit who, string length) in new[] { (phone, "92'"), (office, "93'") })
        {
            await who.GoAsync("Site");
            await who.Page.GetByLabel("Length 1", new() { Exact = true }).FillAsync(length);
            await who.Page.GetByLabel("Length 1", new() { Exact = true }).BlurAsync();
            await Assertions.Expect(who.Undo).ToBeEnabledAsync();
            await who.KeptAsync();
            await who.GoAsync("Field", "Hand over");
        }

        await GiveAsync(phone, office);
        ILocator asked = office.Page.Locator(".field-conflict").First;
        await Assertions.Expect(asked).ToContainTextAsync("Two people changed this");
        await Assertions.Expect(office.Page.Locator("[data-path='gates/@id=truck-gate/leg+nearFace']")).ToContainTextAsync("Gate truck-gate: its leg, tape from the leg's start");
        await office.ShootAsync("field-conflict");
        while (await asked.CountAsync() > 0)
        {
            int open = await office.Page.Locator(".field-conflict").CountAsync();
            await asked.GetByRole(AriaRole.Button).Nth(0).ClickAsync();
            await Assertions.Expect(office.Page.Locator(".field-conflict")).ToHaveCountAsync(open - 1);
        }

        await GiveAsync(office, phone);
        await Assertions.Expect(phone.Page.Locator(".field-conflict")).ToHaveCountAsync(0);
        foreach (Visit who in new[] { phone, office }) await who.GoAsync("Site");
        string settled = await office.Page.GetByLabel("Length 1", new() { Exact = true }).InputValueAsync();
        Assert.Contains(settled, new[] { "92' 0\"", "93' 0\"" });
        await Assertions.Expect(phone.Page.GetByLabel("Length 1", new() { Exact = true })).ToHaveValueAsync(settled);
        Assert.Empty(office.Troubles.Concat(phone.Troubles));
    }

    private static async Task GiveAsync(Visit from, Visit to)
    {
        (string name, byte[] file) = await from.SavedAsync(() => Button(from.Page, "Make the file").ClickAsync());
        await to.Page.GetByLabel("Take a file in…").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/json", Buffer = file });
        await Assertions.Expect(to.Page.GetByRole(AriaRole.Status).Filter(new() { HasText = "Taken in" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task TheBenchAnswersWhileItIsTyped()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await visit.SheetAsync("cards");
        await page.GetByLabel("Which sum").SelectOptionAsync("cut");
        await Assertions.Expect(page.Locator(".bench-answer")).ToContainTextAsync("8, 16");
        await page.GetByLabel("Bottom, same picket to bar").FillAsync("nonsense");
        await Assertions.Expect(page.Locator(".bench-answer div")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
        foreach (string sum in await page.GetByLabel("Which sum").Locator("option").EvaluateAllAsync<string[]>("all => all.map(o => o.value)"))
        {
            await page.GetByLabel("Which sum").SelectOptionAsync(sum);
            await Assertions.Expect(page.Locator(".bench-answer div").First).ToBeVisibleAsync();
        }
        await page.GetByLabel("Which sum").SelectOptionAsync("bias");
        await visit.ShootAsync("field-bench");
        Assert.True(await visit.OverflowAsync() <= 0);
        Assert.Empty(visit.Troubles);
    }

    /// <summary>A phone lying at 7 degrees, whose tangent is 0.1228, turned about its long side besides: that changes nothing.</summary>
    [Fact]
    public async Task ThePhoneItselfIsALevel()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await visit.SheetAsync("cards");
        await page.GetByLabel("Which sum").SelectOptionAsync("slope");
        ILocator lay = Button(page, "Lay the phone on the rail");
        await lay.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "says nothing of how it lies" })).ToBeVisibleAsync(new() { Timeout = 10_000 });
        ICDPSession sensor = await visit.Context.NewCDPSessionAsync(page);
        await sensor.SendAsync("DeviceOrientation.setDeviceOrientationOverride", new() { ["alpha"] = 0, ["beta"] = 7, ["gamma"] = 20 });
        await lay.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "lies at 7.0°, 12.3 %" })).ToBeVisibleAsync(new() { Timeout = 10_000 });
        await Assertions.Expect(page.GetByLabel("Rise", new() { Exact = true })).ToHaveValueAsync("1.2278'");
        await page.GetByLabel("Which sum").SelectOptionAsync("bias");
        await lay.ClickAsync();
        await Assertions.Expect(page.GetByLabel("Slope toward the terminal, + uphill")).ToHaveValueAsync("7.00 deg", new() { Timeout = 10_000 });
        Assert.Empty(visit.Troubles);
    }

    /// <summary>Each operation of each run opens what it needs, without signal, as wide as a phone.</summary>
    [Theory]
    [InlineData("en-GB")]
    [InlineData("es-MX")]
    public async Task EveryOperationOpensItsSheet(string language)
    {
        await using Visit visit = await site.VisitAsync(360, 740, "sunlight", language);
        IPage page = visit.Page;
        await visit.OpenAsync();
        await visit.OpenSampleAsync("sloped lot");
        await visit.GoAsync(language.StartsWith("es", StringComparison.Ordinal) ? "Campo" : "Field");
        await KeptAsync(page, 0);
        ILocator run = page.Locator("section.field-run").First;
        foreach (int operation in Enumerable.Range(0, 6))
        {
            ILocator name = run.Locator("button.field-name").Nth(operation);
            await name.ClickAsync();
            await Assertions.Expect(name).ToHaveAttributeAsync("aria-expanded", "true");
            if (operation < 3) await Assertions.Expect(run.Locator("details").Last.Locator("tbody tr").First).ToBeVisibleAsync();
            else Assert.True((await run.Locator(".run-work").InnerTextAsync()).Length > 20);
            Assert.True(await visit.OverflowAsync() <= 0, $"operation {operation} is wider than the phone");
            if (operation == 4)
            {
                // This lot is cut on a bias: the plan's cut is shown large, a step at a time.
                await Assertions.Expect(run.Locator(".card-step svg").First).ToBeVisibleAsync();
                await run.Locator(".card-turn button").Nth(1).ClickAsync();
                await Assertions.Expect(run.Locator(".card-step").First).ToContainTextAsync("2 / ");
                if (language == "en-GB") await Assertions.Expect(run.Locator(".run-work")).ToContainTextAsync("Tie off at");
                AxeResult found = await page.RunAxe();
                Assert.Empty(found.Violations.Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
                await page.SetViewportSizeAsync(360, 3600);
                await run.ScreenshotAsync(new() { Path = Path.Combine(Checkout.Artifacts, $"field-hang-{language}.png") });
                await page.SetViewportSizeAsync(360, 740);
            }

            Assert.DoesNotContain("field.", await run.InnerTextAsync(), StringComparison.Ordinal);
        }

        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task WhatIsWrongIsToldAndNotKept()
    {
        await using Visit visit = await StartAsync(site);
        IPage page = visit.Page;
        await visit.SheetAsync("book");
        await page.GetByLabel("Hours", new() { Exact = true }).FillAsync("forty");
        await Button(page, "Keep the hours").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("at most 24");
        await Button(page, "Keep the ticket").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("A ticket has a number");
        await visit.SheetAsync("today");
        await Run(page).Locator("summary").ClickAsync();
        await Run(page).Locator("tbody input").First.FillAsync("far");
        await Run(page).Locator("tbody input").First.BlurAsync();
        await Assertions.Expect(Run(page).Locator("tbody .fault")).ToBeVisibleAsync();
        await KeptAsync(page, 0);
        Assert.Empty(visit.Troubles);
    }

    [Theory]
    [InlineData("en-GB", "sunlight")]
    [InlineData("es-MX", "sunlight")]
    [InlineData("en-GB", "dark")]
    public async Task ItFitsAPhoneAndAReadingAidFindsNothingAmiss(string language, string theme)
    {
        await using Visit visit = await StartAsync(site, language, theme);
        await Run(visit.Page).Locator("button.done").First.ClickAsync();
        await KeptAsync(visit.Page, 1);
        foreach (string sheet in await visit.Page.Locator(".field-day [role=tab]").EvaluateAllAsync<string[]>("all => all.map(t => t.id.slice(4))"))
        {
            await visit.SheetAsync(sheet);
            AxeResult found = await visit.Page.RunAxe();
            await visit.ShootAsync($"field-{sheet}-{language}-{theme}");
            Assert.Empty(found.Violations.Select(v => $"{sheet} {v.Id}: {v.Nodes[0].Html}"));
            string wide = await visit.Page.EvaluateAsync<string>(
                "() => innerWidth >= document.documentElement.scrollWidth ? '' : [...document.querySelectorAll('.field-day *')].filter(e => e.offsetParent && e.getBoundingClientRect().right > 361).map(e => e.outerHTML.slice(0, 120)).slice(-3).join(' | ')");
            Assert.True(wide.Length == 0, $"{sheet} is wider than the phone: {wide}");
            string small = await visit.Page.EvaluateAsync<string>(
                "() => [...document.querySelectorAll('.field-day button, .field-day input, .field-day select')].filter(e => e.offsetParent && !e.closest('.file-button') && e.getBoundingClientRect().height < 47.5).map(e => e.outerHTML.slice(0, 120)).join(' | ')");
            Assert.True(small.Length == 0, $"{sheet} has what a glove misses: {small}");
        }
    }

    /// <summary>The browser's processes are killed at seeded moments (by hand fifty: TAUTLINE_KILLS=50) while notes are written as fast as they go: every note the page called kept is there afterwards.</summary>
    [Fact]
    public async Task NothingThePageCalledKeptIsLostWhenTheBatteryDies()
    {
        string profile = Path.Combine(Checkout.Artifacts, "mortal");
        if (Directory.Exists(profile)) Directory.Delete(profile, recursive: true);
        var random = new Random(20261126);
        int kills = int.TryParse(Environment.GetEnvironmentVariable("TAUTLINE_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out int asked) ? asked : 16;
        HashSet<string> acknowledged = [];
        for (int round = 0; round < kills; round++)
        {
            await using MortalBrowser mortal = await site.MortalAsync(profile);
            await mortal.OpenAsync();
            if (round == 0) await mortal.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "level yard", Exact = true }).ClickAsync();
            else await mortal.Page.Locator(".kept-jobs button").First.ClickAsync();
            await mortal.Page.Locator(".kept.kept").WaitForAsync();
            await mortal.Page.GetByRole(AriaRole.Navigation).GetByRole(AriaRole.Button, new() { Name = "Field" }).ClickAsync();
            await mortal.Page.Locator(".field-kept").WaitForAsync();
            await mortal.Page.Locator("#tab-book").ClickAsync();
            HashSet<string> there = [.. await mortal.Page.EvaluateAsync<string[]>(NotesOnDisk)];
            Assert.Superset(acknowledged, there);
            acknowledged = there;
            Task writing = WriteAsync(mortal.Page, round, there.Count, acknowledged);
            await Task.Delay(random.Next(150, 1200));
            await mortal.KillAsync();
            await Assert.ThrowsAnyAsync<Exception>(() => writing);
        }
        Assert.True(acknowledged.Count > kills, $"only {acknowledged.Count} notes were kept: the test does not try what it says");
    }

    private static async Task WriteAsync(IPage page, int round, int kept, HashSet<string> acknowledged)
    {
        for (int n = 0; ; n++)
        {
            await page.GetByLabel("Note").FillAsync($"{round}.{n}");
            await Button(page, "Keep the note").ClickAsync();
            await KeptAsync(page, kept + n + 1);
            acknowledged.Add($"{round}.{n}");
        }
    }

    private const string NotesOnDisk = """
        () => new Promise((done, failed) => {
          const opening = indexedDB.open("tautline");
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {
            const rows = opening.result.transaction("entries").objectStore("entries").getAll();
            rows.onsuccess = () => { opening.result.close(); done(rows.result.map((row) => JSON.parse(new TextDecoder().decode(row.json)).text)); };
          };
        })
        """;
}
