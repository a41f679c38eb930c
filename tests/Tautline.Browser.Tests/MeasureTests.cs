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
public sealed class MeasureTests(BrowserSite site, ITestOutputHelper output)
{
    // From the edit of a field to the next frame after the page shows the new plan, and how long planning alone took.
    private const string EditToRedraw = """
        async length => {
          const field = document.querySelector('input[aria-label="Length 1"]'), bench = document.querySelector('.bench');
          const before = bench.dataset.revision, start = performance.now();
          field.value = length;
          field.dispatchEvent(new Event('change', { bubbles: true }));
          await new Promise(done => new MutationObserver((_, watch) => { if (bench.dataset.revision !== before) { watch.disconnect(); done(); } }).observe(bench, { attributes: true }));
          await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
          return performance.now() - start;
        }
        """;

    [Fact(Explicit = true)]
    public async Task FirstLoadAndReload()
    {
        for (int visitNumber = 0; visitNumber < 5; visitNumber++)
        {
            await using Visit visit = await site.VisitAsync();
            long start = Stopwatch.GetTimestamp();
            await visit.OpenAsync();
            double first = Stopwatch.GetElapsedTime(start).TotalSeconds;
            IReadOnlyList<Answer> answers = await visit.AnswersAsync();
            start = Stopwatch.GetTimestamp();
            await visit.Page.ReloadAsync();
            await visit.Page.Locator(".start").WaitForAsync();
            double again = Stopwatch.GetElapsedTime(start).TotalSeconds;
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{answers.Sum(a => a.Bytes)} bytes in {answers.Count} files; usable {first:0.00} s, reload {again:0.00} s"));
        }
    }

    [Theory(Explicit = true)]
    [InlineData(50)]
    [InlineData(500)]
    [InlineData(5000)]
    public async Task EditToRedrawAtSoManyPosts(int posts)
    {
        await using Visit visit = await site.VisitAsync();
        await visit.OpenAsync();
        await visit.OpenFileAsync("long.json", Encoding.UTF8.GetString(JobFile.Write(Straight(posts))));
        await visit.KeptAsync();
        List<double> took = [];
        for (int i = 0; i < 8; i++) took.Add(await visit.Page.EvaluateAsync<double>(EditToRedraw, $"{60 + i}'"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{posts} posts: {string.Join(", ", took.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))} ms"));
    }

    /// <summary>Legs of 100 ft with a turn at each corner, until there are about so many posts.</summary>
    private static Job Straight(int posts)
    {
        int corners = posts / 10 + 1;
        IReadOnlyList<OrderKey> keys = OrderKey.Spread(corners);
        return new Job
        {
            Id = new("long"),
            Specs = [new Spec { Id = new("fence"), Height = Length.FromFeet(6), Brace = "no" }],
            Lines =
            [
                new Line
                {
                    Id = new("line"),
                    Spec = new("fence"),
                    Vertices = [.. Enumerable.Range(0, corners).Select(i => new Vertex
                    {
                        Id = new($"v{i}"),
                        Order = keys[i],
                        East = Length.FromFeet(100 * ((i + 1) / 2)),
                        North = Length.FromFeet(100 * (i / 2)),
                        Leg = i < corners - 1 ? new Leg { Id = new($"leg{i}") } : null,
                    })],
                },
            ],
        };
    }
}
