using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Engine.Plans;

namespace Tautline.Browser.Tests;

/// <summary>Files that are opened, good and bad.</summary>
[Trait("Category", "Slow")]
public sealed class FileTests(BrowserSite site)
{
    [Fact]
    public async Task AFileThatIsNoJobIsRefusedInWordsAndTheJobStays()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        string totals = await visit.Totals.InnerTextAsync();
        await visit.OpenFileAsync("notes.json", "{ \"format\": \"tautline-job\", ");
        ILocator alert = visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "notes.json was not opened" });
        await alert.WaitForAsync();

        string said = await alert.InnerTextAsync();
        Assert.Contains("The file stops being JSON", said, StringComparison.Ordinal);
        Assert.Contains("The job on the desk is as it was.", said, StringComparison.Ordinal);
        Assert.DoesNotContain(" at Tautline.", said, StringComparison.Ordinal);
        Assert.Equal(totals, await visit.Totals.InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AnUnknownKindOfFileIsRefusedInWords()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("survey.dwg", "x");

        await Assertions.Expect(visit.Page.GetByText("A file ending in '.dwg' cannot be opened here.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task ATapeBookIsOpenedAndPlanned()
    {
        const string book = "job \"Orchard lane\"\nspec yard height 6' brace no\nline yard\nleg 60'\ngate walk 4' from 20'\nR 90\nleg 90'\n";
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("orchard.tape", book);
        await visit.KeptAsync();

        await Assertions.Expect(visit.Page.Locator(".job-name")).ToHaveTextAsync("Orchard lane");
        Assert.Equal(PlanFile.Hash(OnTheServer.PlanOfTapeBook(book)), await visit.HashAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ASlipInATapeBookIsToldByLine()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("walk.tape", "spec yard height 6'\nline yard\nleg 132\n");

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "walk.tape was not opened" })).ToContainTextAsync("walk.tape, line 3, column 5");
    }

    [Fact]
    public async Task APlanWithAnErrorSaysSoAndShowsNoTakeOff()
    {
        string job = await File.ReadAllTextAsync(Checkout.PathOf("samples", "level-yard.json"));
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("wide.json", job.Replace("\"opening\": 1.2192", "\"opening\": 90", StringComparison.Ordinal));
        await visit.KeptAsync();
        await visit.GoAsync("Take-off");

        await Assertions.Expect(visit.Page.GetByText("There is no take-off until the errors are put right.")).ToBeVisibleAsync();
        Assert.Equal(0, await visit.Page.Locator("table.takeoff").CountAsync());
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Button, new() { Name = "Make PDF" })).ToBeDisabledAsync();
    }

    [Fact]
    public async Task EveryMalformedFileIsToldInWordsAsAJobAndAsGround()
    {
        string shared = Environment.GetEnvironmentVariable("TAUTLINE_SHARED") is { Length: > 0 } told ? told : Path.Combine(Checkout.Root, "..", "shared");
        string folder = Path.Combine(shared, "data", "malformed");
        if (!Directory.Exists(folder)) Assert.Skip("The shared files data/malformed are not here.");
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        string totals = await visit.Totals.InnerTextAsync();
        foreach (string file in Directory.GetFiles(folder).Where(f => !f.EndsWith(".md", StringComparison.Ordinal)))
        {
            await visit.OpenFileAsync(Path.GetFileName(file), await File.ReadAllBytesAsync(file));
            ILocator alert = visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = Path.GetFileName(file) + " was not opened" });
            await alert.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
            await visit.GoAsync("Ground", "Attach a file");
            await visit.Page.Locator("#ground-file").SetInputFilesAsync(file);
            await Assertions.Expect(visit.Page.Locator(".worksheet .findings li, fieldset.question").First).ToBeVisibleAsync();
            Assert.DoesNotContain("   at ", await visit.Page.Locator("body").InnerTextAsync(), StringComparison.Ordinal);
            await visit.GoAsync("Site");
        }

        Assert.Equal(totals, await visit.Totals.InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Theory]
    [InlineData("yard.json", 65)]
    [InlineData("site.xyz", 129)]
    [InlineData("aerial.png", 81)]
    public async Task AFileThatIsTooLargeIsToldInWordsAndNothingIsLost(string name, int megabytes)
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory().FullName, name);
        await using (FileStream file = File.Create(path)) file.SetLength((long)megabytes << 20);
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        string totals = await visit.Totals.InnerTextAsync();
        switch (Path.GetExtension(name))
        {
            case ".json":
                await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Jobs", Exact = true }).ClickAsync();
                await visit.Page.Locator("dialog[open]").GetByLabel("Open a file…").SetInputFilesAsync(path);
                await Assertions.Expect(visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "yard.json was not opened" })).ToContainTextAsync("A job file has at most 64 MB.");
                break;
            case ".xyz":
                await visit.GoAsync("Ground", "Attach a file");
                await visit.Page.Locator("#ground-file").SetInputFilesAsync(path);
                await Assertions.Expect(visit.Page.Locator(".worksheet .findings li")).ToContainTextAsync("128 MB");
                break;
            default:
                await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Underlay", Exact = true }).ClickAsync();
                await visit.Page.Locator("#underlay-menu input[type=file]").SetInputFilesAsync(path);
                await Assertions.Expect(visit.Page.Locator("#underlay-menu [role=alert]")).ToHaveTextAsync("The picture is larger than 80 MB. Make it smaller first.");
                break;
        }

        Assert.Equal(totals, await visit.Totals.InnerTextAsync());
        Assert.Empty(visit.Troubles);
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
    }
}
