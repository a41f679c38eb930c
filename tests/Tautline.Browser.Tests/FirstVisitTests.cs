using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;

namespace Tautline.Browser.Tests;

[Trait("Category", "Slow")]
public sealed class FirstVisitTests(BrowserSite site, ITestOutputHelper output)
{
    // design: the first visit at most 3.0 MB compressed.
    private const long FirstVisitBudget = 3_000_000;

    [Fact]
    public async Task TheFirstVisitLoadsWithoutTroubleAndWithinItsBudget()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        IReadOnlyList<Answer> answers = await visit.AnswersAsync();
        long bytes = answers.Sum(a => a.Bytes);
        output.WriteLine($"{answers.Count} files, {bytes:#,0} bytes");
        foreach (Answer answer in answers.OrderByDescending(a => a.Bytes)) output.WriteLine($"{answer.Bytes,9:#,0} {answer.Encoding,2} {answer.Path}");

        Assert.Empty(visit.Troubles);
        Assert.All(answers.Where(a => a.Bytes > 1000 && !a.Path.EndsWith(".png", StringComparison.Ordinal)), a => Assert.Equal("br", a.Encoding));
        Assert.InRange(bytes, 100_000, FirstVisitBudget);
    }

    [Fact]
    public async Task TheStartTeachesFourWays()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();

        Assert.Equal(
            ["From a drawing", "From a tape book", "From a file", "Samples"],
            await visit.Page.Locator(".ways h3").AllInnerTextsAsync());
    }

    [Fact]
    public async Task AnEmptyJobSaysHowToBeginAndOneLegMakesAFence()
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.Page.GetByLabel("Name of the job").FillAsync("North yard");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Begin with one leg" }).ClickAsync();

        // 100 ft at bays of at most 10 ft: ten bays, eleven posts.
        await Assertions.Expect(visit.Totals).ToContainTextAsync("11");
        await Assertions.Expect(visit.Page.Locator(".job-name")).ToHaveTextAsync("North yard");
        Assert.Empty(visit.Troubles);
    }
}
