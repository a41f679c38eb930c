using System.Globalization;
using System.Net;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>Processes and databases that go away in the middle. What was answered must be there; what was not may be sent again.</summary>
[Trait("Category", "Slow")]
public sealed class FaultTests(Sites sites, ITestOutputHelper output)
{
    /// <summary>By hand 200: TAUTLINE_KILLS=200.</summary>
    private static readonly int kills = int.TryParse(Environment.GetEnvironmentVariable("TAUTLINE_KILLS"), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 12;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AfterAKillEveryAcknowledgedEntryIsThere(string site)
    {
        var store = await sites.NewStoreAsync(site);
        var random = new Random(20261127);
        HashSet<string> acknowledged = [];
        long numbers = 0;
        var midway = 0;
        for (var kill = 0; kill < kills; kill++)
        {
            await using var server = await RunningServer.StartAsync(store);
            using var browser = new Browser(server.Address);
            if (kill == 0) await Yards.SendAsync(browser, Yards.Job());
            else await AllThereAsync(browser, acknowledged);
            // Three phones write until the power goes, somewhere within a write after the first that was answered.
            var answered = new TaskCompletionSource();
            var wait = random.Next(0, 80);
            var end = Task.Run(async () =>
            {
                await answered.Task.WaitAsync(TimeSpan.FromSeconds(30), Cancel);
                await Task.Delay(wait, Cancel);
                await server.KillAsync();
            }, Cancel);
            var writing = await Task.WhenAll(Enumerable.Range(0, 3).Select(phone => WriteAsync(browser, phone, () => Interlocked.Increment(ref numbers), answered)));
            await end;
            foreach (var (taken, broken) in writing)
            {
                acknowledged.UnionWith(taken);
                midway += broken ? 1 : 0;
            }
        }
        await using var last = await RunningServer.StartAsync(store);
        using var reader = new Browser(last.Address);
        await AllThereAsync(reader, acknowledged);
        await Yards.ReadyAsync(reader, "harrow");
        output.WriteLine($"{kills} kills on {site}: {acknowledged.Count} acknowledged entries, {midway} requests cut off");
        Assert.True(acknowledged.Count >= kills && midway >= kills, $"the test does too little: {acknowledged.Count} acknowledged, {midway} cut off");
    }

    [Fact]
    public async Task ADatabaseThatGoesAwayIsToldAndComesBack()
    {
        Assert.SkipUnless(Postgres.IsHere, "no PostgreSQL: Debian's package 'postgresql' has it");
        await using var own = await Postgres.StartAsync();
        var database = await own!.NewDatabaseAsync();
        await using var server = await RunningServer.StartAsync(database);
        using var browser = new Browser(server.Address);
        await Yards.SendAsync(browser, Yards.Job());
        await own.DownAsync("immediate");
        for (var i = 0; i < 3; i++)
        {
            var answer = await browser.PostAsync("api/jobs/harrow/items", new { items = new[] { Yards.Entry(Yards.Note("phone", 1)) } });
            Assert.Equal((HttpStatusCode.ServiceUnavailable, "store"), (answer.Status, answer.Code));
            Assert.DoesNotContain("Npgsql", answer.Text, StringComparison.Ordinal);
        }
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await browser.GetAsync("health/ready")).Status);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("health/live")).Status);
        await own.UpAsync();
        for (var i = 0; i < 2; i++) Browser.Must(await browser.PostAsync("api/jobs/harrow/items", new { items = new[] { Yards.Entry(Yards.Note("phone", 1)) } }));
        Assert.Equal(2, (await browser.GetAsync("api/jobs/harrow/items")).Json["items"]!.AsArray().Count);
        await Yards.ReadyAsync(browser, "harrow");
    }

    [Fact]
    public async Task AFullDiskIsToldAndNothingAcknowledgedIsLost()
    {
        if (OperatingSystem.IsWindows()) return;
        var store = sites.NewFile();
        HashSet<string> acknowledged = [];
        var full = 0;
        await using (var server = await RunningServer.StartCrampedAsync(store, 6000))
        {
            using var browser = new Browser(server.Address);
            await Yards.SendAsync(browser, Yards.Job());
            for (var i = 1; i <= 60 && full < 3; i++)
            {
                var text = string.Create(CultureInfo.InvariantCulture, $"{i} {new string('x', 200_000)}");
                var answer = await browser.PostAsync("api/jobs/harrow/items", new { items = new[] { Yards.Entry(Yards.Note("phone", i, text)) } });
                if (answer.Status == HttpStatusCode.OK)
                {
                    acknowledged.Add(text);
                    continue;
                }
                full++;
                Assert.Equal(((HttpStatusCode)507, "full"), (answer.Status, answer.Code));
                Assert.DoesNotContain("SQLite", answer.Text, StringComparison.Ordinal);
            }
            Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("api/jobs")).Status);
        }
        Assert.Equal(3, full);
        Assert.NotEmpty(acknowledged);
        await using var roomy = await RunningServer.StartAsync(store);
        using var reader = new Browser(roomy.Address);
        await AllThereAsync(reader, acknowledged);
        Browser.Must(await reader.PostAsync("api/jobs/harrow/items", new { items = new[] { Yards.Entry(Yards.Note("phone", 99, "room again")) } }));
    }

    private static async Task AllThereAsync(Browser browser, HashSet<string> acknowledged)
    {
        HashSet<string> there = [];
        for (var (cursor, more) = (0L, true); more;)
        {
            var page = Browser.Must(await browser.GetAsync($"api/jobs/harrow/items?after={cursor}&limit=1000")).Json;
            foreach (var item in page["items"]!.AsArray())
            {
                Assert.Equal(++cursor, (long)item!["number"]!);
                there.Add((string?)item["body"]!["text"] ?? "");
            }
            more = (bool)page["more"]!;
        }
        Assert.Superset(acknowledged, there);
    }

    private static async Task<(List<string> Taken, bool Broken)> WriteAsync(Browser browser, int phone, Func<long> next, TaskCompletionSource answered)
    {
        List<string> taken = [];
        while (true)
        {
            var number = next();
            var text = string.Create(CultureInfo.InvariantCulture, $"{phone} wrote {number}");
            try
            {
                var answer = await browser.PostAsync("api/jobs/harrow/items", new { items = new[] { Yards.Entry(Yards.Note($"phone {phone}", number, text)) } });
                if (answer.Status != HttpStatusCode.OK) return (taken, true);
                taken.Add(text);
                answered.TrySetResult();
            }
            catch (HttpRequestException)
            {
                return (taken, true);
            }
        }
    }
}
