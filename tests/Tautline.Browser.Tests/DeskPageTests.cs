using System.Security.Cryptography;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Engine.Plans;

namespace Tautline.Browser.Tests;

[Trait("Category", "Slow")]
public sealed class DeskPageTests(BrowserSite site, ITestOutputHelper output) : IClassFixture<BrowserSite>
{
    // design: the first visit at most 3.0 MB compressed.
    private const long FirstVisitBudget = 3_000_000;

    [Fact]
    public async Task TheFirstVisitLoadsWithoutTroubleAndWithinItsBudget()
    {
        await using Visit visit = await site.VisitAsync();
        IReadOnlyList<Answer> answers = await visit.OpenAsync();
        long bytes = answers.Sum(a => a.Bytes);
        output.WriteLine($"{answers.Count} files, {bytes:#,0} bytes");
        foreach (Answer answer in answers.OrderByDescending(a => a.Bytes)) output.WriteLine($"{answer.Bytes,9:#,0} {answer.Encoding,2} {answer.Path}");

        Assert.Empty(visit.Troubles);
        Assert.All(answers.Where(a => a.Bytes > 1000), a => Assert.Equal("br", a.Encoding));
        Assert.InRange(bytes, 100_000, FirstVisitBudget);
    }

    /// <summary>Every job file of samples/, with the title its list entry has.</summary>
    public static TheoryData<string, string> Samples
    {
        get
        {
            var samples = new TheoryData<string, string>();
            foreach (string name in Directory.GetFiles(Path.Combine(Checkout.Root, "samples"), "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal))
                samples.Add(name, Path.GetFileNameWithoutExtension(name).Replace('-', ' '));
            return samples;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task ASamplePlansToTheSameHashAsOnTheServer(string file, string title)
    {
        await using Visit visit = await PlannedAsync(title);

        await visit.ShootAsync($"sample-{Path.GetFileNameWithoutExtension(file)}"); // for people to look at
        Assert.Equal(PlanFile.Hash(OnTheServer.Plan(file)), await visit.PlanHash.InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task TheTakeOffHasEveryLineOfThePlan()
    {
        Plan plan = OnTheServer.Plan("level-yard.json");
        await using Visit visit = await PlannedAsync("level yard");
        ILocator table = visit.Page.GetByRole(AriaRole.Table, new() { Name = "Take-off of Juniper Flat equipment yard" });
        IReadOnlyList<string> parts = await table.GetByRole(AriaRole.Rowheader).AllInnerTextsAsync();

        Assert.Equal(plan.Takeoff.Select(t => t.Name), parts);
        Assert.True(parts.Count > 10);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task ThePdfMadeInTheBrowserHasTheSameBytesAsTheServers(string file, string title)
    {
        await using Visit visit = await PlannedAsync(title);
        (string name, byte[] pdf) = await visit.MakePdfAsync();
        await File.WriteAllBytesAsync(Path.Combine(Checkout.Artifacts, name), pdf);

        Assert.Equal(Path.GetFileNameWithoutExtension(file) + "-takeoff.pdf", name);
        Assert.True(pdf.AsSpan().StartsWith("%PDF-"u8));
        Assert.Equal(1, Pages(pdf));
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(pdf)), await visit.Page.Locator("#pdf-hash").InnerTextAsync());
        Assert.Equal(OnTheServer.Pdf(OnTheServer.Plan(file)), pdf);
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task AFileThatIsNoJobIsRefusedInWordsAndThePlanStays()
    {
        await using Visit visit = await PlannedAsync("level yard");
        string hash = await visit.PlanHash.InnerTextAsync();
        await visit.OpenFileAsync("notes.json", "{ \"format\": \"tautline-job\", ");
        ILocator alert = visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "notes.json was not opened" });
        await alert.WaitForAsync();

        string said = await alert.InnerTextAsync();
        Assert.Contains("The file stops being JSON", said, StringComparison.Ordinal);
        Assert.Contains("level-yard.json is still open.", said, StringComparison.Ordinal);
        Assert.DoesNotContain(" at Tautline.", said, StringComparison.Ordinal);
        Assert.Equal(hash, await visit.PlanHash.InnerTextAsync());
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
        await visit.PlanAsync();

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Orchard lane" })).ToBeVisibleAsync();
        Assert.Equal(PlanFile.Hash(OnTheServer.PlanOfTapeBook(book)), await visit.PlanHash.InnerTextAsync());
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task ASlipInATapeBookIsToldByLineAndThePlanStays()
    {
        await using Visit visit = await PlannedAsync("level yard");
        await visit.OpenFileAsync("walk.tape", "spec yard height 6'\nline yard\nleg 132\n");
        ILocator alert = visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "walk.tape was not opened" });
        await alert.WaitForAsync();

        Assert.Contains("walk.tape, line 3, column 5", await alert.InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await visit.PlanHash.IsVisibleAsync());
    }

    [Fact]
    public async Task APlanWithAnErrorSaysSoAndShowsNoTakeOff()
    {
        string job = await File.ReadAllTextAsync(Checkout.PathOf("samples", "level-yard.json"));
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("wide.json", job.Replace("\"opening\": 1.2192", "\"opening\": 90", StringComparison.Ordinal));
        await visit.PlanAsync();

        await Assertions.Expect(visit.Page.GetByText("There is no take-off until the errors are put right.")).ToBeVisibleAsync();
        Assert.Equal(0, await visit.Page.GetByRole(AriaRole.Table).CountAsync());
        Assert.Equal(0, await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Make PDF" }).CountAsync());
    }

    [Fact]
    public async Task ThePlanIsTimedAgainWhenAsked()
    {
        await using Visit visit = await PlannedAsync("level yard");
        string first = await visit.Page.Locator("#first-time").InnerTextAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Time it" }).ClickAsync();
        ILocator again = visit.Page.Locator("#again-time").Filter(new() { HasText = "median of 20" });
        await again.WaitForAsync();
        output.WriteLine($"first {first}; again {await again.InnerTextAsync()}");

        Assert.Matches(@"^\d+\.\d ms$", first);
    }

    [Theory]
    [InlineData(1440, 900, ColorScheme.Light)]
    [InlineData(1440, 900, ColorScheme.Dark)]
    [InlineData(390, 844, ColorScheme.Light)]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(320, 568, ColorScheme.Light)]
    public async Task ThePageFitsItsWindowAndAReadingAidFindsNothingAmiss(int width, int height, ColorScheme colours)
    {
        await using Visit visit = await site.VisitAsync(width, height, colours);
        await visit.OpenAsync();
        await NothingAmissAsync(visit, $"empty-{width}-{colours}");
        await visit.OpenSampleAsync("sloped lot");
        await visit.PlanAsync();
        await visit.MakePdfAsync();
        await visit.OpenFileAsync("notes.json", "[]");
        await visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "was not opened" }).WaitForAsync();
        await NothingAmissAsync(visit, $"planned-{width}-{colours}");
        Assert.Empty(visit.Troubles);
    }

    private static async Task NothingAmissAsync(Visit visit, string name)
    {
        await visit.ShootAsync(name);
        Assert.Equal(0, await visit.OverflowAsync());
        AxeResult found = await visit.Page.RunAxe();
        Assert.Empty(found.Violations.Select(v => $"{v.Impact} {v.Id}: {v.Help}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}"));
        Assert.NotEmpty(found.Passes);
    }

    private async Task<Visit> PlannedAsync(string sampleTitle)
    {
        Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenSampleAsync(sampleTitle);
        await visit.PlanAsync();
        return visit;
    }

    // The page tree of a file of one page is written plainly: '/Count 1'.
    private static int Pages(byte[] pdf) =>
        int.Parse(System.Text.RegularExpressions.Regex.Match(System.Text.Encoding.Latin1.GetString(pdf), @"/Count (\d+)").Groups[1].Value, null);
}
