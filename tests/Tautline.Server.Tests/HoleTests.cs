using System.Net;
using System.Text.Json.Nodes;
using Tautline.Engine.Jobs;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>Holes that somebody found by reading: each stays shut.</summary>
public sealed class HoleTests(Sites sites)
{
    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatIsMeantForOneCompanyNeverGoesToAnother(string site)
    {
        using var ours = sites.Open(site);
        using var theirs = sites.Open(site);
        await ours.SignUpAsync();
        await theirs.SignUpAsync("Briar Fence");
        var (mine, other) = (await CompanyAsync(ours), await CompanyAsync(theirs));
        var body = new { items = new[] { Yards.Root(Yards.Job()) } };
        var refused = await SendForAsync(ours, other, body);
        Assert.Equal("company", refused.Code);
        Assert.Equal("not-there", (await ours.GetAsync("api/jobs/harrow/items")).Code);
        Browser.Must(await SendForAsync(ours, mine, body));
        Assert.Equal("company", (await ours.GetAsync("api/jobs/harrow/items", ("Tautline-Company", other))).Code);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AJobIsFoundByCustomersWithAccentsAndApostrophes(string site)
    {
        using var browser = sites.Open(site);
        await browser.SignUpAsync();
        var job = (JsonObject)JsonNode.Parse(JobFile.Write(Yards.Job()))!;
        job["imported"] = new JsonObject { ["customer"] = "Íñigo O'Dell", ["phones"] = new JsonArray("555-0134") };
        Browser.Must(await browser.PostAsync("api/jobs/harrow/items", new { items = new[] { new { kind = "root", body = job } } }));
        await Yards.ReadyAsync(browser, "harrow");
        foreach (var find in new[] { "íñigo", "O'Dell", "555-0134" }) Assert.Single((await browser.GetAsync($"api/jobs?find={Uri.EscapeDataString(find)}")).Json.AsArray());
        foreach (var find in new[] { "phones", "{", "u00" }) Assert.Empty((await browser.GetAsync($"api/jobs?find={Uri.EscapeDataString(find)}")).Json.AsArray());
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task OwnersWhoEndEachOtherAtOnceLeaveOne(string site)
    {
        for (var round = 0; round < 5; round++)
        {
            using var one = sites.Open(site);
            await one.SignUpAsync();
            using var two = await one.InviteAsync("owner");
            var (first, second) = (await PersonAsync(one), await PersonAsync(two));
            var done = await Task.WhenAll(one.PutAsync($"api/people/{second}", new { role = "crew" }), two.PutAsync($"api/people/{first}", new { role = "crew" }));
            Assert.Single(done, a => a.Status == HttpStatusCode.NoContent);
        }
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ANewPasswordEndsSessionsInEveryCompany(string site)
    {
        using var one = sites.Open(site);
        var email = Browser.NewEmail();
        await one.SignUpAsync(email: email);
        using var other = sites.Open(site);
        await other.SignUpAsync("Briar Fence");
        var token = (string)Browser.Must(await other.PostAsync("api/invitations", new { role = "crew" }))["token"]!;
        using var away = sites.Open(site);
        Browser.Must(await away.PostAsync("api/account/sign-in", new { email, password = Browser.Password, device = "away" }));
        Browser.Must(await away.PostAsync("api/invitations/accept", new { token, device = "away" }));
        Assert.Equal(HttpStatusCode.OK, (await away.GetAsync("api/jobs")).Status);
        Browser.Must(await one.PostAsync("api/account/password", new { old = Browser.Password, @new = "nine quiet augers turn" }));
        Assert.Equal("signed-out", (await away.GetAsync("api/jobs")).Code);
        Assert.Equal(HttpStatusCode.OK, (await one.GetAsync("api/jobs")).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task SigningInAgainEndsTheSessionBefore(string site)
    {
        using var browser = sites.Open(site);
        var email = Browser.NewEmail();
        await browser.SignUpAsync(email: email);
        var before = string.Join("; ", browser.Cookies.Select(c => $"{c.Key}={c.Value}"));
        using var copy = sites.Open(site);
        Assert.Equal(HttpStatusCode.OK, (await copy.GetAsync("api/jobs", ("Cookie", before))).Status);
        Browser.Must(await browser.PostAsync("api/account/sign-in", new { email, password = Browser.Password, device = "desk" }));
        Assert.Equal("signed-out", (await copy.GetAsync("api/jobs", ("Cookie", before))).Code);
    }

    [Fact]
    public async Task SecretsAreNotTakenWhereOthersCanReadAlong()
    {
        using var owner = sites.Open(Sites.One);
        await owner.SignUpAsync();
        var token = (string)Browser.Must(await owner.PostAsync("api/tokens", new { name = "till", role = "crew" }))["token"]!;
        using var program = new Browser(owner.Address) { Token = token };
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("api/jobs")).Status);
        Assert.Equal("https", (await program.GetAsync("api/jobs", ("Host", "fence.example"))).Code);
        using var nobody = sites.Open(Sites.One);
        Assert.Equal("https", (await nobody.GetAsync("s/whatever", ("Host", "fence.example"))).Code);
        Assert.Equal("link", (await nobody.GetAsync("s/whatever")).Code);
    }

    [Fact]
    public async Task RefusalsOfFaultsHaveTheSamePolicyAsPages()
    {
        using var browser = sites.Open(Sites.One);
        await browser.SignUpAsync();
        var slip = await browser.SendAsync(HttpMethod.Post, "api/invitations", new StringContent("{", System.Text.Encoding.UTF8, "application/json"));
        Assert.Equal("malformed", slip.Code);
        Assert.Contains("default-src 'self'", Assert.Single(slip.Response.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(slip.Response.Headers.GetValues("X-Content-Type-Options")));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatWasKeptWithoutAccountsGoesOnUnderTheFirst(string site)
    {
        var store = await sites.NewStoreAsync(site);
        await using (var own = await RunningServer.StartAsync(store))
        {
            using var here = new Browser(own.Address);
            await Yards.SendAsync(here, Yards.Job());
        }
        await using var server = await RunningServer.StartAsync(store, "--accounts", "true");
        using var owner = new Browser(server.Address);
        Assert.Equal("first", (string?)(await owner.GetAsync("api/me"))["signUp"]);
        await owner.SignUpAsync();
        Assert.Equal("harrow", (string?)(await owner.GetAsync("api/jobs")).Json[0]!["id"]);
        Assert.Single((await owner.GetAsync("api/people")).Json.AsArray());
        using var late = new Browser(server.Address);
        Assert.Equal("closed", (await late.PostAsync("api/account/sign-up", new { company = "Late", name = "Lee", email = Browser.NewEmail(), password = Browser.Password })).Code);
    }

    [Fact]
    public async Task TheStoreAndItsBackupAreForItsOwnerOnlyAndFailedSignInsAreWrittenDown()
    {
        if (OperatingSystem.IsWindows()) return;
        var store = sites.NewFile();
        await using (var server = await RunningServer.StartAsync(store, "--accounts", "true"))
        {
            using var owner = new Browser(server.Address);
            await owner.SignUpAsync();
            Assert.Equal("wrong", (await owner.PostAsync("api/account/sign-in", new { email = "nobody@example.com", password = Browser.Password })).Code);
            foreach (var file in new[] { store, store + "-wal" }) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            for (var i = 0; i < 50 && !server.Said.Contains("A sign-in by password failed", StringComparison.Ordinal); i++) await Task.Delay(100, TestContext.Current.CancellationToken);
            Assert.Contains("A sign-in by password failed: person unknown", server.Said, StringComparison.Ordinal);
            Assert.DoesNotContain("nobody@example.com", server.Said, StringComparison.Ordinal);
        }
        var (code, _, _) = await RunningServer.RunAsync("backup", store + ".zip", "--store", store);
        Assert.Equal((0, UnixFileMode.UserRead | UnixFileMode.UserWrite), (code, File.GetUnixFileMode(store + ".zip")));
    }

    private static async Task<string> CompanyAsync(Browser browser) => (string)(await browser.GetAsync("api/me"))["company"]["id"]!;

    private static async Task<string> PersonAsync(Browser browser) => (string)(await browser.GetAsync("api/me"))["person"]["id"]!;

    private static Task<Answer> SendForAsync(Browser browser, string company, object body)
        => browser.SendAsync(HttpMethod.Post, "api/jobs/harrow/items", System.Net.Http.Json.JsonContent.Create(body), ("Tautline-Company", company));
}
