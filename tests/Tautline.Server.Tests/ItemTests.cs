using System.Globalization;
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Tautline.Field.Log;
using Tautline.Field.Merging;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

public sealed class ItemTests(Sites sites)
{
    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatOneSendsAnotherReadsFromWhereItStopped(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        using var crew = await owner.InviteAsync("crew");
        await Yards.SendAsync(owner, Yards.Job());
        var sent = Browser.Must(await crew.PostAsync("api/jobs/harrow/items", new { items = Enumerable.Range(1, 5).Select(i => Yards.Entry(Yards.Note("phone", i))) })).Json;
        Assert.Equal([2, 3, 4, 5, 6], sent["taken"]!.AsArray().Select(t => (int)t!["number"]!));
        List<long> numbers = [];
        for (var (cursor, more) = (0L, true); more;)
        {
            var page = Browser.Must(await owner.GetAsync($"api/jobs/harrow/items?after={cursor}&limit=4")).Json;
            numbers.AddRange(page["items"]!.AsArray().Select(i => (long)i!["number"]!));
            (cursor, more) = ((long)page["cursor"]!, (bool)page["more"]!);
        }
        Assert.Equal([1, 2, 3, 4, 5, 6], numbers);
        var last = Browser.Must(await owner.GetAsync("api/jobs/harrow/items?after=5")).Json["items"]!.AsArray().Single()!;
        Assert.Equal("entry, A crew, looked at it", $"{last["kind"]}, {last["person"]}, {last["body"]!["text"]}");
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task RepliesThatWereLostAndRequestsOutOfOrderChangeNothing(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        object Batch(int from) => new { items = Enumerable.Range(from, 3).Select(i => Yards.Entry(Yards.Note("phone", i))) };
        foreach (var from in new[] { 4, 1, 4, 2, 1, 4 }) Browser.Must(await owner.PostAsync("api/jobs/harrow/items", Batch(from)));
        var items = (await owner.GetAsync("api/jobs/harrow/items")).Json["items"]!.AsArray();
        Assert.Equal([4, 5, 6, 1, 2, 3], items.Skip(1).Select(i => (int)i!["body"]!["sequence"]!));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatALaterProgramWroteGoesThroughUnchanged(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        const string entry = """{ "device": "d", "sequence": 1, "tick": 5, "at": 6, "kind": "hologram", "spin":  [1.50, {"ü":null}] }""";
        Browser.Must(await owner.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", new StringContent($$"""{"items":[{"kind":"entry","body":{{entry}}}]}""", Encoding.UTF8, "application/json")));
        Assert.Contains(entry, (await owner.GetAsync("api/jobs/harrow/items")).Text, StringComparison.Ordinal);
        var refused = Browser.Must(await owner.PostAsync("api/jobs/harrow/items", new { items = new[] { new { kind = "hologram", body = new { } } } })).Json["refused"]!.AsArray().Single()!;
        Assert.Equal("kind", (string?)refused["code"]);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task TheCrewsChangeOfAJobIsRefusedAndItsEntryBesideItTaken(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        using var crew = await owner.InviteAsync("crew");
        var change = SharedJob.Begin(Yards.Job()).Record(Yards.Job() with { Name = "Another" }, new("phone", 1), 1_790_000_000_000, "Sam").Changes.Single();
        var items = new[] { new { kind = "change", body = JsonNode.Parse(ExchangeText.Of(change)) }, new { kind = "entry", body = JsonNode.Parse(LogJson.Write(Yards.Note("phone", 2))) } };
        var answer = Browser.Must(await crew.PostAsync("api/jobs/harrow/items", new { items })).Json;
        Assert.Equal("0 role", $"{answer["refused"]![0]!["index"]} {answer["refused"]![0]!["code"]}");
        Assert.Equal(1, (int)answer["taken"]!.AsArray().Single()!["index"]!);
        using var foreman = await owner.InviteAsync("foreman");
        Assert.Empty(Browser.Must(await foreman.PostAsync("api/jobs/harrow/items", new { items })).Json["refused"]!.AsArray());
        Assert.Equal("Another", (string?)(await Yards.ReadyAsync(owner, "harrow"))["name"]);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task TheOfficeSeesWhatStandsAndWhatWaits(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        // Two who gave the job two names without knowing of each other.
        var begin = SharedJob.Begin(Yards.Job());
        var changes = new[] { "North yard", "South yard" }.Select((name, i) => begin.Record(Yards.Job() with { Name = name }, new($"desk {i}", 1), 1_790_000_000_000 + i, "").Changes.Single());
        var ends = new DateTimeOffset(2027, 5, 6, 0, 0, 0, TimeSpan.Zero);
        var ticket = Yards.Note("phone", 1) with { Kind = LogEntry.Ticket, Locate = new() { Number = "T-77", From = 0, To = ends.ToUnixTimeMilliseconds() } };
        Browser.Must(await owner.PostAsync("api/jobs/harrow/items", new { items = changes.Select(c => (object)new { kind = "change", body = JsonNode.Parse(ExchangeText.Of(c)) }).Append(Yards.Entry(ticket)) }));
        var row = await Yards.ReadyAsync(owner, "harrow");
        Assert.Equal("North yard, 1 conflict, 0 of 32 posts, T-77", $"{row["name"]}, {row["conflicts"]} conflict, {row["postsSet"]} of {row["posts"]} posts, {row["ticket"]}");
        Assert.Equal(ends, DateTimeOffset.Parse((string)row["ticketEnds"]!, CultureInfo.InvariantCulture));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AListThatHasNotChangedIsNotSentAgain(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        foreach (var path in new[] { "api/jobs", "api/jobs/harrow" })
        {
            var tag = Browser.Must(await owner.GetAsync(path)).Response.Headers.ETag!.ToString();
            Assert.Equal(HttpStatusCode.NotModified, (await owner.GetAsync(path, ("If-None-Match", tag))).Status);
            Browser.Must(await owner.PutAsync("api/jobs/harrow/state", new { state = path.Length > 9 ? "won" : "quoted" }));
        }
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task JobsAreFoundByTheirWordsAndByNothingElse(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job("a", "Ridge road, north side"));
        await Yards.SendAsync(owner, Yards.Job("b", "Ball field 50% done_"));
        async Task<string> FindAsync(string words) => string.Join(' ', (await owner.GetAsync($"api/jobs?find={Uri.EscapeDataString(words)}")).Json.AsArray().Select(j => (string)j!["id"]!).Order(StringComparer.Ordinal));
        Assert.Equal("a", await FindAsync("NORTH ridge"));
        Assert.Equal("b", await FindAsync("50%"));
        Assert.Equal("b", await FindAsync("_"));
        Assert.Equal("", await FindAsync("' OR 1=1 --"));
        Assert.Equal("", await FindAsync("\"; DROP TABLE \"Jobs\"; --"));
        Assert.Equal("a b", await FindAsync(""));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task JobsWithOddNamesAreJobsAndNoPaths(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        string[] names = ["../../etc/passwd", "a/b", "c:\\d", "'; DELETE FROM \"Items\"; --", "<script>", "nul\u0001", "ünïcode 🚧"];
        foreach (var name in names)
            Browser.Must(await owner.PostAsync($"api/jobs/{Uri.EscapeDataString(name)}/items", new { items = new[] { Yards.Root(Yards.Job(name)) } }));
        Assert.Equal(names.Order(StringComparer.Ordinal), (await owner.GetAsync("api/jobs")).Json.AsArray().Select(j => (string)j!["id"]!).Order(StringComparer.Ordinal));
        var export = await owner.SendAsync(HttpMethod.Get, "api/export", null);
        using var zip = new ZipArchive(await export.Response.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        Assert.Equal(3 + (names.Length * 1), zip.Entries.Count(e => e.Name != "job.json"));
        Assert.All(zip.Entries, e => Assert.Matches(@"^(jobs/[A-Za-z0-9_-]+/)?[a-z]+\.jsonl?$", e.FullName));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task MalformedBodiesAreRefusedInWordsWithoutAStackTrace(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        string[] bodies =
        [
            "", "{", "[]", "null", "{\"items\":null}", "{\"items\":[]}", "{\"items\":[null]}", "{\"items\":{}}", "{\"items\":[{\"kind\":5,\"body\":{}}]}", "{\"items\":[{\"kind\":\"entry\"}]}", "\u0000\u0001", "{\"items\":[{\"kind\":\"root\",\"body\":\"x\"}]}",
            "{\"items\":[{\"kind\":\"change\",\"body\":[]}]}", "{\"items\":[{\"kind\":\"entry\",\"body\":{\"device\":\"d\",\"sequence\":\"x\"}}]}", $"{{\"items\":[{{\"kind\":\"entry\",\"body\":{new string('[', 500)}{new string(']', 500)}}}]}}",
        ];
        foreach (var body in bodies)
        {
            var answer = await owner.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", new StringContent(body, Encoding.UTF8, "application/json"));
            Assert.True((int)answer.Status is 400 || (answer.Status == HttpStatusCode.OK && answer["refused"].AsArray().Count == 1 && answer["taken"].AsArray().Count == 0), $"{body}: {answer.Status} {answer.Text}");
            Assert.DoesNotContain("   at ", answer.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", answer.Text, StringComparison.Ordinal);
        }
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await owner.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", new StringContent("{}", Encoding.UTF8, "text/plain"))).Status);
        Assert.Single((await owner.GetAsync("api/jobs/harrow/items")).Json["items"]!.AsArray());
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatIsTooLargeIsRefusedAlsoWhenItIsPackedSmall(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var large = new string(' ', (32 << 20) + 1);
        // Refused by its length, before it is sent; a balancer would have to take it all.
        if (site == Sites.One)
        {
            var plain = await owner.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", new StringContent(large, Encoding.UTF8, "application/json"), ("Expect", "100-continue"));
            Assert.Equal((HttpStatusCode.RequestEntityTooLarge, "too-large"), (plain.Status, plain.Code));
        }
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true)) gzip.Write(Encoding.UTF8.GetBytes(large));
        var content = new ByteArrayContent(packed.ToArray());
        content.Headers.ContentType = new("application/json");
        content.Headers.ContentEncoding.Add("gzip");
        var small = await owner.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", content);
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, "too-large"), (small.Status, small.Code));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task APhotoIsWhatItsNameSays(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        byte[] jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 1, 2, 3];
        var name = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(jpeg));
        async Task<Answer> PutAsync(string path, byte[] bytes)
        {
            var content = new ByteArrayContent(bytes);
            content.Headers.ContentType = new("image/jpeg");
            return await owner.SendAsync(HttpMethod.Put, path, content);
        }
        Assert.Equal("digest", (await PutAsync($"api/jobs/harrow/photos/{new string('0', 64)}", jpeg)).Code);
        Assert.Equal("picture", (await PutAsync($"api/jobs/harrow/photos/{name}", Encoding.UTF8.GetBytes("<svg onload=alert(1)>"))).Code);
        for (var i = 0; i < 2; i++) Assert.Equal(HttpStatusCode.NoContent, (await PutAsync($"api/jobs/harrow/photos/{name}", jpeg)).Status);
        Assert.Equal(name, (string?)(await owner.GetAsync("api/jobs/harrow/photos")).Json.AsArray().Single()!["sha256"]);
        var read = await owner.GetAsync($"api/jobs/harrow/photos/{name}");
        Assert.Equal("image/jpeg attachment default-src 'none'; sandbox", $"{read.Response.Content.Headers.ContentType} {read.Response.Content.Headers.ContentDisposition!.DispositionType} {read.Response.Headers.GetValues("Content-Security-Policy").Single()}");
        Assert.Equal(jpeg, await read.Response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ALinkShowsItsOnePaperUntilItEnds(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        var link = Browser.Must(await owner.PostAsync("api/jobs/harrow/links", new { paper = "site", language = "es", days = 1 }));
        using var customer = sites.Open(site);
        var paper = Browser.Must(await customer.GetAsync($"s/{link["token"]}"));
        Assert.Equal("application/pdf no-store", $"{paper.Response.Content.Headers.ContentType} {paper.Response.Headers.CacheControl}");
        Assert.StartsWith("%PDF-", paper.Text, StringComparison.Ordinal);
        Assert.Equal(1, (int)(await owner.GetAsync("api/jobs/harrow/links")).Json[0]!["opened"]!);
        Assert.Equal(HttpStatusCode.NotFound, (await customer.GetAsync("s/" + new string('A', 43))).Status);
        Browser.Must(await owner.DeleteAsync($"api/jobs/harrow/links/{link["id"]}"));
        var ended = await customer.GetAsync($"s/{link["token"]}");
        Assert.Equal((HttpStatusCode.NotFound, "link"), (ended.Status, ended.Code));
        Assert.Equal(HttpStatusCode.BadRequest, (await owner.PostAsync("api/jobs/harrow/links", new { paper = "../../x" })).Status);
    }
}
