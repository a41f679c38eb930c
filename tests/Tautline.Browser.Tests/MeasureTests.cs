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

    /// <summary>A phone without signal: from opening the page to the job's field sheet, program and job from the device; and with a processor a quarter as fast.</summary>
    [Theory(Explicit = true)]
    [InlineData(1)]
    [InlineData(4)]
    public async Task ColdStartOffline(int slower)
    {
        await using Visit visit = await site.VisitAsync(360, 740, "sunlight");
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Field");
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        await visit.Page.ReloadAsync();
        await visit.GoAsync("Field");
        await visit.Page.Locator(".field-kept").WaitForAsync();
        await visit.Context.SetOfflineAsync(true);
        for (int i = 0; i < 5; i++)
        {
            string address = visit.Page.Url;
            await visit.Page.GotoAsync("about:blank");
            ICDPSession device = await visit.Context.NewCDPSessionAsync(visit.Page);
            await device.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = slower });
            long start = Stopwatch.GetTimestamp();
            await visit.Page.GotoAsync(address);
            await visit.Page.Locator(".bench").WaitForAsync();
            double usable = Stopwatch.GetElapsedTime(start).TotalSeconds;
            await visit.GoAsync("Field");
            await visit.Page.Locator(".field-kept").WaitForAsync();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"offline, {slower} times slower: job open {usable:0.00} s, field open {Stopwatch.GetElapsedTime(start).TotalSeconds:0.00} s"));
        }
    }

    /// <summary>From the press to the entry on disk and said so, with a log of so many entries.</summary>
    [Fact(Explicit = true)]
    public async Task EntryToSaved()
    {
        await using Visit visit = await site.VisitAsync(360, 740, "sunlight");
        await visit.OpenAsync();
        await visit.OpenSampleAsync("level yard");
        await visit.GoAsync("Field", "Photos and log");
        for (int hundred = 0; hundred < 3; hundred++)
        {
            List<double> took = [];
            for (int i = 0; i < 100; i++)
            {
                await visit.Page.GetByLabel("Note", new() { Exact = true }).FillAsync($"note {hundred}.{i}");
                took.Add(await visit.Page.EvaluateAsync<double>("""
                    async () => {
                      const kept = document.querySelector('.field-kept'), before = kept.dataset.kept, start = performance.now();
                      [...document.querySelectorAll('button')].find(b => b.textContent === 'Keep the note').click();
                      while (document.querySelector('.field-kept').dataset.kept === before) await new Promise(done => setTimeout(done, 1));
                      return performance.now() - start;
                    }
                    """));
            }

            took.Sort();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"entry to saved, entries {hundred * 100 + 1} to {hundred * 100 + 100}: median {took[50]:0} ms, 95th {took[95]:0} ms, most {took[99]:0} ms"));
        }
    }

    /// <summary>The browser's own count after twenty jobs of half a mile over measured ground were opened, each with a hundred entries and ten photos of a phone's size.</summary>
    [Fact(Explicit = true)]
    public async Task StorageForTwentyJobs()
    {
        await using Visit visit = await site.VisitAsync(360, 740, "sunlight");
        visit.Page.SetDefaultTimeout(180_000);
        await visit.OpenAsync();
        await visit.Page.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
        double program = await UsedAsync(visit.Page);
        for (int job = 0; job < 20; job++)
        {
            await visit.OpenFileAsync($"job{job}.json", Encoding.UTF8.GetString(JobFile.Write(OverGround(Straight(270)) with { Id = new($"job-{job}"), Name = $"job {job}" })));
            await visit.KeptAsync();
        }

        double jobs = await UsedAsync(visit.Page);
        await visit.Page.EvaluateAsync("""
            () => new Promise((done) => {
              const opening = indexedDB.open("tautline");
              opening.onsuccess = () => {
                const work = opening.result.transaction(["entries", "photos"], "readwrite");
                for (let job = 0; job < 20; job++) {
                  for (let n = 1; n <= 100; n++)
                    work.objectStore("entries").add({ job: `job-${job}`, device: "measured", sequence: n, json: new TextEncoder().encode(JSON.stringify({ device: "measured", sequence: n, tick: n, at: n, person: "Ines", kind: "note", text: "a note of the usual length, about what was found" })) });
                  for (let n = 0; n < 10; n++) {
                    const data = new Uint8Array(600000);
                    for (let i = 0; i < data.length; i += 60000) crypto.getRandomValues(data.subarray(i, i + 60000));
                    work.objectStore("photos").add({ job: `job-${job}`, sha256: `${n}`, width: 2048, height: 1536, at: n, data, small: data.slice(0, 12000) });
                  }
                }
                work.oncomplete = () => { opening.result.close(); done(true); };
              };
            })
            """);
        double all = await UsedAsync(visit.Page);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"program {program:0.0} MB; 20 jobs {jobs - program:0.0} MB; with 100 entries and 10 photos of 600 kB each {all - program:0.0} MB"));
    }

    private static Task<double> UsedAsync(IPage page) => page.EvaluateAsync<double>("() => navigator.storage.estimate().then(e => e.usage / 1e6)");

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
