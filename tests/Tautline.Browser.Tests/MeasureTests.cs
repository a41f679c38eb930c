using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using Tautline.Browser.Tests.Site;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Browser.Tests;

/// <summary>
/// Prints the figures of docs/performance.md; asserts none of them. Run by hand on a quiet machine:
/// the test executable with -explicit only.
/// </summary>
[Trait("Category", "Slow")]
public sealed class MeasureTests(BrowserSite site, ITestOutputHelper output) : IClassFixture<BrowserSite>
{
    [Fact(Explicit = true)]
    public async Task FirstLoadPlanAndPdf()
    {
        for (int visitNumber = 0; visitNumber < 5; visitNumber++)
        {
            await using Visit visit = await site.VisitAsync();
            long start = Stopwatch.GetTimestamp();
            IReadOnlyList<Answer> answers = await visit.OpenAsync();
            double first = Stopwatch.GetElapsedTime(start).TotalSeconds;
            start = Stopwatch.GetTimestamp();
            await visit.Page.ReloadAsync();
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Open sample" }).WaitForAsync();
            double again = Stopwatch.GetElapsedTime(start).TotalSeconds;
            await visit.OpenSampleAsync("level yard");
            string yard = await TimesAsync(visit);
            await visit.MakePdfAsync();
            string pdf = await visit.Page.Locator("#pdf-time").InnerTextAsync();
            await visit.OpenFileAsync("half-mile.json", Encoding.UTF8.GetString(JobFile.Write(HalfMile())));
            string mile = await TimesAsync(visit);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{answers.Sum(a => a.Bytes)} bytes in {answers.Count} files; usable {first:0.00} s, reload {again:0.00} s; yard {yard}; PDF {pdf}; half a mile {mile}"));
        }
    }

    private static async Task<string> TimesAsync(Visit visit)
    {
        await visit.PlanAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Time it" }).ClickAsync();
        await visit.Page.Locator("#again-time").WaitForAsync();
        return $"{await visit.Page.Locator("#first-time").InnerTextAsync()}, again {await visit.Page.Locator("#again-time").InnerTextAsync()}";
    }

    /// <summary>Six legs of 440 ft with turns, one of them on a grade.</summary>
    private static Job HalfMile()
    {
        IReadOnlyList<OrderKey> keys = OrderKey.Spread(7);
        return new Job
        {
            Id = new("half-mile"),
            Specs = [new Spec { Id = new("fence"), Height = Length.FromFeet(6), Brace = "no" }],
            Lines =
            [
                new Line
                {
                    Id = new("line"),
                    Spec = new("fence"),
                    Vertices = [.. Enumerable.Range(0, 7).Select(i => new Vertex
                    {
                        Id = new($"v{i}"),
                        Order = keys[i],
                        East = Length.FromFeet(440 * ((i + 1) / 2)),
                        North = Length.FromFeet(440 * (i / 2)),
                        Leg = i < 6 ? new Leg { Id = new($"leg{i}"), Grade = new Slope(i == 2 ? 0.05 : 0) } : null,
                    })],
                },
            ],
        };
    }
}
