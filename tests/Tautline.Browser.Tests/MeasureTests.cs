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
          const seen = new Promise(done => new MutationObserver((_, watch) => { if (bench.dataset.revision !== before) { watch.disconnect(); done(); } }).observe(bench, { attributes: true }));
          const late = new Promise(done => setTimeout(done, 60000));
          await Promise.race([seen, late]);
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

    /// <summary>A line of 10 Mbit/s that answers in 40 ms, and a processor a quarter as fast.</summary>
    [Fact(Explicit = true)]
    public async Task FirstLoadAndReloadOnASlowMachine()
    {
        for (int visitNumber = 0; visitNumber < 3; visitNumber++)
        {
            await using Visit visit = await site.VisitAsync();
            ICDPSession device = await visit.Context.NewCDPSessionAsync(visit.Page);
            await device.SendAsync("Network.enable");
            await device.SendAsync("Network.emulateNetworkConditions", new() { ["offline"] = false, ["latency"] = 40, ["downloadThroughput"] = 1_250_000, ["uploadThroughput"] = 1_250_000 });
            await device.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });
            long start = Stopwatch.GetTimestamp();
            await visit.OpenAsync();
            double first = Stopwatch.GetElapsedTime(start).TotalSeconds;
            start = Stopwatch.GetTimestamp();
            await visit.Page.ReloadAsync();
            await visit.Page.Locator(".start").WaitForAsync();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"slow: usable {first:0.00} s, reload {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s"));
        }
    }

    /// <summary>The whole plan over ground measured at every foot, with the drawings: what fit and hanging cost where the runtime is interpreted.</summary>
    [Theory(Explicit = true)]
    [InlineData(50)]
    [InlineData(270)]
    [InlineData(500)]
    public async Task EditToRedrawOverGroundAtSoManyPosts(int posts)
    {
        await using Visit visit = await site.VisitAsync();
        visit.Page.SetDefaultTimeout(180_000);
        await visit.OpenAsync();
        await visit.OpenFileAsync("ground.json", Encoding.UTF8.GetString(JobFile.Write(OverGround(Straight(posts)))));
        await visit.Page.Locator(".profile-sheet svg").WaitForAsync();
        List<double> took = [];
        for (int i = 0; i < 5; i++) took.Add(await visit.Page.EvaluateAsync<double>(EditToRedraw, $"{110 + i}'"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ground, {posts} posts: {string.Join(", ", took.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))} ms"));
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
        await visit.Page.Locator(".profile-sheet svg").WaitForAsync();
        List<double> took = [];
        for (int i = 0; i < 8; i++) took.Add(await visit.Page.EvaluateAsync<double>(EditToRedraw, $"{60 + i}'"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{posts} posts: {string.Join(", ", took.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))} ms"));
        double runtime = await visit.Page.EvaluateAsync<double>("() => globalThis.getDotnetRuntime ? getDotnetRuntime(0).localHeapViewU8().byteLength / 1e6 : -1");
        double script = await visit.Page.EvaluateAsync<double>("() => performance.memory ? performance.memory.usedJSHeapSize / 1e6 : -1");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{posts} posts: {runtime:0} MB of the runtime, {script:0} MB of scripts"));
    }

    /// <summary>The crew's packet of about half a mile, from the press of the button to the file; and the longest time the page was held meanwhile.</summary>
    [Fact(Explicit = true)]
    public async Task PacketOfHalfAMile()
    {
        await using Visit visit = await site.VisitAsync();
        visit.Page.SetDefaultTimeout(180_000);
        await visit.OpenAsync();
        await visit.OpenFileAsync("half.json", Encoding.UTF8.GetString(JobFile.Write(Straight(270))));
        await visit.Page.Locator(".profile-sheet svg").WaitForAsync();
        await visit.GoAsync("Papers");
        await visit.Page.EvaluateAsync("() => { globalThis.held = 0; let last = performance.now(); setInterval(() => { const now = performance.now(); globalThis.held = Math.max(globalThis.held, now - last); last = now; }, 10); }");
        for (int i = 0; i < 3; i++)
        {
            await visit.Page.EvaluateAsync("() => { globalThis.held = 0; }");
            long start = Stopwatch.GetTimestamp();
            (_, byte[] bytes) = await visit.SavedAsync(() => visit.Page.GetByRole(AriaRole.Button, new() { Name = "Crew packet as PDF" }).ClickAsync());
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            double held = await visit.Page.EvaluateAsync<double>("() => globalThis.held");
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"half a mile: packet of {bytes.Length} bytes in {seconds:0.0} s, page held for {held:0} ms at most"));
        }
    }

    /// <summary>A shot at every foot: waves of 4 ft in 500 and of 10 in in 65, half an inch of roughness. Invented.</summary>
    private static Job OverGround(Job job)
    {
        Line line = job.Lines[0];
        List<GroundShot> shots = [];
        int feet = 0;
        foreach (Leg leg in line.Vertices.Select(v => v.Leg).OfType<Leg>())
        {
            for (int at = 0; at < 100; at++, feet++)
            {
                double height = (4 * Math.Sin(feet / 80.0)) + (0.42 * Math.Sin(feet / 10.3)) + (0.04 * ((feet * 7919) % 13 - 6) / 6);
                shots.Add(new() { Leg = leg.Id, At = Length.FromFeet(at), Height = Length.FromFeet(100 + height) });
            }
        }

        return job with { Lines = [line with { Ground = new() { Shots = shots } }] };
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
