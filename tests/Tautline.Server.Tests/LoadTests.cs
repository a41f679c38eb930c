using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using Tautline.Field.Merging;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>
/// The figures of docs/performance.md, by hand on a quiet machine: <c>-explicit only -showLiveOutput -method "*LoadTests*"</c>. A hundred crews and twenty editors for twenty seconds on loopback,
/// then it stops by itself.
/// </summary>
public sealed class LoadTests(Sites sites, ITestOutputHelper output)
{
    private const int Crews = 100;
    private const int Editors = 20;
    private const int Jobs = 20;
    private static readonly TimeSpan lasting = TimeSpan.FromSeconds(20);

    [Theory(Explicit = true), MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AHundredCrewsAndTwentyEditors(string site)
    {
        await using var server = await RunningServer.StartAsync(await sites.NewStoreAsync(site), "--accounts", "true");
        using var owner = new Browser(server.Address);
        await owner.SignUpAsync();
        for (var j = 0; j < Jobs; j++) await Yards.SendAsync(owner, Yards.Job($"job-{j}"));
        var people = await Task.WhenAll(Enumerable.Range(0, Crews + Editors).Select(async i =>
        {
            // One after the other would take a minute: hashing passwords is meant to be slow.
            await Task.Yield();
            return await owner.InviteAsync(i < Crews ? "crew" : "foreman");
        }));
        ConcurrentBag<double> crews = [], editors = [];
        ConcurrentBag<string> refused = [];
        var watch = Stopwatch.StartNew();
        await Task.WhenAll(people.Select((who, i) => i < Crews ? CrewAsync(who, i, crews, refused, watch) : EditAsync(who, i, editors, refused, watch)));
        var seconds = watch.Elapsed.TotalSeconds;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{site}: {(crews.Count + editors.Count) / seconds:0} requests/s, {refused.Count} refused {refused.FirstOrDefault()}"));
        output.WriteLine($"  crews {Figures(crews)}\n  editors {Figures(editors)}\n  {Memory(server.Id)}");
        foreach (var who in people) who.Dispose();
        Assert.Empty(refused);
    }

    /// <summary>Sends three entries, fetches what came, rests for a second.</summary>
    private static async Task CrewAsync(Browser who, int i, ConcurrentBag<double> times, ConcurrentBag<string> refused, Stopwatch watch)
    {
        var (job, cursor, number) = ($"job-{i % Jobs}", 0L, 0L);
        await Task.Delay(i * 10, TestContext.Current.CancellationToken);
        while (watch.Elapsed < lasting)
        {
            await TimedAsync(times, refused, () => who.PostAsync($"api/jobs/{job}/items", new { items = Enumerable.Range(0, 3).Select(_ => Yards.Entry(Yards.Note($"phone {i}", ++number))) }));
            if (await TimedAsync(times, refused, () => who.GetAsync($"api/jobs/{job}/items?after={cursor}")) is { } page) cursor = (long)page["cursor"];
            await Task.Delay(1000, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Looks at the list, changes a job, rests for a second.</summary>
    private static async Task EditAsync(Browser who, int i, ConcurrentBag<double> times, ConcurrentBag<string> refused, Stopwatch watch)
    {
        var job = Yards.Job($"job-{i % Jobs}");
        var shared = SharedJob.Begin(job);
        for (var edit = 1; watch.Elapsed < lasting; edit++)
        {
            await TimedAsync(times, refused, () => who.GetAsync("api/jobs"));
            shared = shared.Record(job with { Name = $"as of {edit} by {i}" }, new($"desk {i}", edit), 1_790_000_000_000 + edit, "");
            await TimedAsync(times, refused, () => who.PostAsync($"api/jobs/{job.Id.Value}/items", new { items = new[] { new { kind = "change", body = JsonNode.Parse(ExchangeText.Of(shared.Changes.Last())) } } }));
            await Task.Delay(1000, TestContext.Current.CancellationToken);
        }
    }

    private static async Task<Answer?> TimedAsync(ConcurrentBag<double> times, ConcurrentBag<string> refused, Func<Task<Answer>> ask)
    {
        var watch = Stopwatch.StartNew();
        var answer = await ask();
        times.Add(watch.Elapsed.TotalMilliseconds);
        if ((int)answer.Status < 300) return answer;
        refused.Add($"{answer.Status} {answer.Text}");
        return null;
    }

    private static string Figures(ConcurrentBag<double> times)
    {
        double[] sorted = [.. times.Order()];
        double At(double part) => sorted[(int)Math.Min(sorted.Length - 1, part * sorted.Length)];
        return string.Create(CultureInfo.InvariantCulture, $"{sorted.Length} requests, p50 {At(0.5):0.0} ms, p95 {At(0.95):0.0} ms, p99 {At(0.99):0.0} ms, most {sorted[^1]:0.0} ms");
    }

    private static string Memory(int process) => string.Join(", ", File.ReadLines($"/proc/{process}/status").Where(l => l.StartsWith("VmHWM", StringComparison.Ordinal) || l.StartsWith("VmRSS", StringComparison.Ordinal)).Select(l => l.Replace('\t', ' ')));
}
