using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;
using Tautline.Field.Merging;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>
/// Phones and offices on one job with the real server between them: answers are lost, requests go twice and late, people are offline most of the time. In the end all have the same, and the office's
/// list too. For a longer run by hand set TAUTLINE_SIM to a number of operations.
/// </summary>
[Trait("Category", "Slow")]
public sealed class SimulationTests(Sites sites, ITestOutputHelper output)
{
    private static readonly int operations = int.TryParse(Environment.GetEnvironmentVariable("TAUTLINE_SIM"), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 1200;

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task OverTheServerAllHaveTheSameInTheEnd(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var random = new Random(7);
        List<Person> people = [];
        for (var i = 0; i < 7; i++) people.Add(new(i, i == 0 ? owner : await owner.InviteAsync(i < 5 ? "foreman" : "estimator"), random.Next(-3_600_000, 3_600_001)));
        var (written, settled) = (0, 0);
        for (var step = 0; step < operations; step++)
        {
            var who = people[random.Next(people.Count)];
            switch (random.Next(100))
            {
                case < 50: who.Write(step); written++; break;
                case < 78: who.Edit(random); break;
                case < 82: settled += who.Settle(random) ? 1 : 0; break;
                default: await who.ExchangeAsync(random, lossy: true); break;
            }
        }
        for (var round = 0; round < 2; round++) foreach (var who in people) await who.ExchangeAsync(random, lossy: false);
        var first = people[0];
        Assert.All(people, p =>
        {
            Assert.Equal(first.Shared.Revision, p.Shared.Revision);
            Assert.Equal(first.Shared.Conflicts.Select(c => c.Path), p.Shared.Conflicts.Select(c => c.Path));
            Assert.Equal(first.Log.Keys, p.Log.Keys);
        });
        Assert.Equal(written, first.Log.Count);
        Assert.True(settled > 0 && first.Shared.Conflicts.Count > 0, "nobody ever disagreed, or nobody settled it");
        var row = await Yards.ReadyAsync(owner, "harrow");
        Assert.Equal(first.Shared.Conflicts.Count, (int)row["conflicts"]!);
        Assert.Equal($"\"{first.Shared.Revision}\"", (await owner.GetAsync("api/jobs/harrow")).Response.Headers.ETag!.Tag);
        output.WriteLine($"{operations} operations on {site}: {written} entries, {first.Shared.Count} changes, {settled} settled, {first.Shared.Conflicts.Count} open, {people.Sum(p => p.Lost)} answers lost, {people.Sum(p => p.Doubled)} requests doubled");
        foreach (var who in people.Skip(1)) who.Dispose();
    }

    private sealed class Person(int number, Browser browser, long skew) : IDisposable
    {
        private readonly HashSet<string> known = [];
        private long cursor;
        private long numbers;
        private long clock = 1_790_000_000_000;

        private string Name { get; } = $"device {number}";

        public SharedJob Shared { get; private set; } = SharedJob.Begin(Yards.Job());

        public SortedDictionary<LogKey, LogEntry> Log { get; } = [];

        public int Lost { get; private set; }

        public int Doubled { get; private set; }

        public void Dispose() => browser.Dispose();

        public void Write(int step)
        {
            clock += 1000;
            var entry = Yards.Note(Name, ++numbers, $"{step}") with { Tick = Stamp.Next(clock + skew, Log.Count == 0 ? 0 : Log.Values.Max(e => e.Tick)) };
            Log.Add(entry.Key, entry);
        }

        public void Edit(Random random)
        {
            clock += 1000;
            var job = Shared.Head.Job!;
            var now = random.Next(3) switch
            {
                0 => job with { Name = $"name {random.Next(50)}" },
                1 => job with { Specs = [job.Specs[0] with { Height = Length.FromFeet(random.Next(4, 13)) }] },
                _ => job with { Lines = [.. job.Lines.Select(l => l with { Vertices = [.. l.Vertices.Select((v, i) => i == 2 ? v with { East = Length.FromFeet(80 + random.Next(20)) } : v)] })] },
            };
            Shared = Shared.Record(now, new(Name, ++numbers), clock + skew, Name);
        }

        public bool Settle(Random random)
        {
            if (Shared.Conflicts is not { Count: > 0 } open) return false;
            var one = open[random.Next(open.Count)];
            Shared = Shared.Record(Shared.Head.Job!, new(Name, ++numbers), clock + skew, Name, one.Settle(random.Next(2) == 0 ? one.Stands : one.Others[0]));
            return true;
        }

        /// <summary>What a page does: fetch what came after, take it in, send what the server is not known to have. An answer may be lost, a request go twice.</summary>
        public async Task ExchangeAsync(Random random, bool lossy)
        {
            await PullAsync(lossy ? random : null);
            List<(string Kind, string Body, string Hash)> waiting =
            [
                .. Shared.Roots.Select(r => ("root", Canonical.Text(JsonDocument.Parse(JobFile.Write(r)).RootElement))).Concat(Shared.Changes.Select(c => ("change", ExchangeText.Of(c))))
                    .Concat(Log.Values.Select(e => ("entry", Encoding.UTF8.GetString(LogJson.Write(e))))).Select(i => (i.Item1, i.Item2, Hash: Digest(i.Item2))).Where(i => !known.Contains(i.Hash)),
            ];
            foreach (var batch in waiting.Chunk(60))
            {
                var body = new { items = batch.Select(i => new { kind = i.Kind, body = JsonNode.Parse(i.Body) }) };
                var again = lossy && random.Next(4) == 0;
                var answer = Browser.Must(await browser.PostAsync("api/jobs/harrow/items", body)).Json;
                if (again) answer = Browser.Must(await browser.PostAsync("api/jobs/harrow/items", body)).Json;
                Doubled += again ? 1 : 0;
                Assert.Empty(answer["refused"]!.AsArray());
                if (lossy && random.Next(4) == 0)
                {
                    Lost++;
                    return;
                }
                known.UnionWith(batch.Select(i => i.Hash));
            }
        }

        private async Task PullAsync(Random? random)
        {
            for (var more = true; more;)
            {
                var answer = await browser.GetAsync($"api/jobs/harrow/items?after={cursor}&limit=200");
                if (answer.Status == System.Net.HttpStatusCode.NotFound) return;
                if (random?.Next(5) == 0)
                {
                    Lost++;
                    return;
                }
                foreach (var item in Browser.Must(answer).Json["items"]!.AsArray()) Take((string)item!["kind"]!, item["body"]!.ToJsonString(), (string)item["hash"]!);
                (cursor, more) = ((long)answer["cursor"], (bool)answer["more"]);
            }
        }

        private void Take(string kind, string body, string hash)
        {
            known.Add(hash);
            if (kind == "entry" && LogJson.Read(Encoding.UTF8.GetBytes(body), out _) is { } entry) Log.TryAdd(entry.Key, entry);
            else if (kind == "root") Shared = Shared.With([JobFile.Read(Encoding.UTF8.GetBytes(body)).Job!], []);
            else if (kind == "change") Shared = Shared.With([], [ExchangeText.Read(JsonDocument.Parse(body).RootElement)]);
        }

        private static string Digest(string text) => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }
}
