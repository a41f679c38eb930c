using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>The program as a shop of one starts it.</summary>
public sealed partial class OwnMachineTests(Sites sites)
{
    [Fact]
    public async Task WithoutAccountsWhoeverSitsHereIsTheOwnerAndKeepsJobsAcrossStarts()
    {
        var store = sites.NewFile();
        await using (var server = await RunningServer.StartAsync(store))
        {
            using var browser = new Browser(server.Address);
            Assert.Equal("own owner", $"{(await browser.GetAsync("api/me"))["mode"]} {(await browser.GetAsync("api/me"))["person"]["role"]}");
            await Yards.SendAsync(browser, Yards.Job());
            Assert.Equal("own", (await browser.PostAsync("api/account/sign-in", new { email = "a@example.com", password = "x" })).Code);
            await server.KillAsync();
        }
        await using var again = await RunningServer.StartAsync(store);
        using var later = new Browser(again.Address);
        Assert.Equal("harrow", (string?)(await later.GetAsync("api/jobs")).Json[0]!["id"]);
    }

    [Fact]
    public async Task OnlyItsOwnPageMayAsk()
    {
        await using var server = await RunningServer.StartAsync(sites.NewFile());
        using var browser = new Browser(server.Address);
        Assert.Equal("host", (await browser.GetAsync("api/me", ("Host", "fence.example"))).Code);
        Assert.Equal("site", (await browser.GetAsync("api/me", ("Sec-Fetch-Site", "cross-site"))).Code);
        Assert.Equal("header", (await browser.SendAsync(HttpMethod.Post, "api/invitations", new StringContent("{}", Encoding.UTF8, "application/json"), ("Tautline", ""))).Code);
        // No answer lets another site's page send the header.
        var asked = await browser.SendAsync(HttpMethod.Options, "api/jobs", null, ("Origin", "https://fence.example"), ("Access-Control-Request-Method", "POST"));
        Assert.False(asked.Response.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task ThePageSaysWhatItsScriptsAre()
    {
        using var browser = sites.Open(Sites.One);
        var page = await browser.GetAsync("");
        var policy = page.Response.Headers.GetValues("Content-Security-Policy").Single();
        var inline = Inline().Matches(page.Text).Select(m => m.Groups[1].Value).ToList();
        Assert.NotEmpty(inline);
        Assert.All(inline, script => Assert.Contains(Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script))), policy, StringComparison.Ordinal));
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("Server", page.Response.Headers.Select(h => h.Key));
    }

    [Theory]
    [InlineData("Without accounts the program only listens on this machine, and 'http://0.0.0.0:5999' can be reached from others", "--urls", "http://0.0.0.0:5999")]
    [InlineData("--sign-up cannot be 'maybe'", "--accounts", "true", "--sign-up", "maybe")]
    [InlineData("--accounts cannot be 'yes'", "--accounts", "yes")]
    [InlineData("Tautline cannot open its store, '/proc/nothing/a.db'", "--store", "/proc/nothing/a.db")]
    [InlineData("Tautline cannot open its store, the PostgreSQL database", "--store", "Host=127.0.0.1;Port=1;Database=x;Username=y;Timeout=2")]
    [InlineData("'backup' needs a file", "backup")]
    [InlineData("this is no backup of Tautline", "restore", "/etc/hostname", "--store", "/tmp/tautline-never.db")]
    [InlineData("there is no store at", "backup", "/tmp/x.zip", "--store", "/tmp/tautline-not-there.db")]
    public async Task WhatCannotBeStartedIsToldInOneSentence(string words, params string[] arguments)
    {
        var (code, _, error) = await RunningServer.RunAsync(arguments);
        Assert.NotEqual(0, code);
        Assert.Contains(words, error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ABackupWhileItRunsIsRestoredByOneCommand(string site)
    {
        var store = await sites.NewStoreAsync(site);
        var (file, other) = (sites.NewFile() + ".zip", sites.NewFile());
        await using (var server = await RunningServer.StartAsync(store))
        {
            using var browser = new Browser(server.Address);
            await Yards.SendAsync(browser, Yards.Job());
            var (code, output, error) = await RunningServer.RunAsync("backup", file, "--store", store);
            Assert.True(code == 0, error);
            Assert.StartsWith("Backed up 1 jobs with 1 items and 0 photos to ", output, StringComparison.Ordinal);
        }
        Assert.Equal("Restored 1 jobs with 1 items and 0 photos. Everybody signs in once more.\n", (await RunningServer.RunAsync("restore", file, "--store", other)).Output);
        await using var restored = await RunningServer.StartAsync(other);
        using var later = new Browser(restored.Address);
        Assert.Equal("Harrow yard", (string?)(await later.GetAsync("api/jobs")).Json[0]!["name"]);
    }

    [Fact]
    public async Task TheFirstWhoComesMakesTheCompanyAndThenItIsClosed()
    {
        await using var server = await RunningServer.StartAsync(sites.NewFile(), "--accounts", "true");
        using var first = new Browser(server.Address);
        Assert.Equal("first", (string?)(await first.GetAsync("api/me"))["signUp"]);
        await first.SignUpAsync();
        using var second = new Browser(server.Address);
        Assert.Equal("closed", (string?)(await second.GetAsync("api/me"))["signUp"]);
        var answer = await second.PostAsync("api/account/sign-up", new { company = "B", name = "B", email = Browser.NewEmail(), password = Browser.Password });
        Assert.Equal((HttpStatusCode.Forbidden, "closed"), (answer.Status, answer.Code));
        Assert.Contains("only over HTTPS", server.Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TooManyTriesToSignInAreRefusedForAWhile()
    {
        await using var server = await RunningServer.StartAsync(sites.NewFile(), "--accounts", "true", "--sign-ins", "3");
        using var browser = new Browser(server.Address);
        List<HttpStatusCode> answers = [];
        Answer last = null!;
        for (var i = 0; i < 4; i++) answers.Add((last = await browser.PostAsync("api/account/sign-in", new { email = "a@example.com", password = "x" })).Status);
        Assert.Equal([HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized, HttpStatusCode.Unauthorized, HttpStatusCode.TooManyRequests], answers);
        Assert.Equal("too-many", last.Code);
        Assert.True(last.Response.Headers.RetryAfter!.Delta > TimeSpan.Zero);
    }

    [GeneratedRegex("<script(?![^>]*\\ssrc=)[^>]*>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Inline();
}
