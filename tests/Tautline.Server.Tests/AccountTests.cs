using System.Net;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

public sealed class AccountTests(Sites sites)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhoSignsUpIsOwnerOfANewCompany(string site)
    {
        using var browser = sites.Open(site);
        var email = Browser.NewEmail();
        var nobody = (await browser.GetAsync("api/me")).Json;
        Assert.Equal("accounts open 1", $"{nobody["mode"]} {nobody["signUp"]} {nobody["protocol"]}");
        Assert.Null(nobody["person"]);
        await browser.SignUpAsync("Harrow Fence", email);
        var me = (await browser.GetAsync("api/me")).Json;
        Assert.Equal($"Ona Harrow {email} owner, Harrow Fence, desk", $"{me["person"]!["name"]} {me["person"]!["email"]} {me["person"]!["role"]}, {me["company"]!["name"]}, {me["device"]!["name"]}");
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task TheCookieIsForThisAddressOverASafeLineAndForNoScript(string site)
    {
        using var browser = sites.Open(site);
        var answer = await browser.SignUpAsync();
        var cookie = answer.Response.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("__Host-tautline=", StringComparison.Ordinal));
        Assert.Matches("; path=/; secure; samesite=strict; httponly$", cookie);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task SigningInTakesTheRightPasswordOnly(string site)
    {
        using var first = sites.Open(site);
        var email = Browser.NewEmail();
        await first.SignUpAsync(email: email);
        using var other = sites.Open(site);
        foreach (var (name, password) in new[] { (email, "slow copper gate 42"), ("nobody@example.com", Browser.Password), (email, ""), ("", "") })
        {
            var wrong = await other.PostAsync("api/account/sign-in", new { email = name, password });
            Assert.Equal((HttpStatusCode.Unauthorized, "The e-mail address or the password is wrong."), (wrong.Status, (string?)wrong["detail"]));
        }
        Assert.Equal(HttpStatusCode.OK, (await other.PostAsync("api/account/sign-in", new { email = email.ToUpperInvariant(), password = Browser.Password, device = "truck" })).Status);
        Assert.Equal("truck", (string?)(await other.GetAsync("api/me"))["device"]["name"]);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AfterTenWrongPasswordsTheRightOneIsRefusedTooForAWhile(string site)
    {
        using var first = sites.Open(site);
        var email = Browser.NewEmail();
        await first.SignUpAsync(email: email);
        using var other = sites.Open(site);
        for (var i = 0; i < 10; i++) await other.PostAsync("api/account/sign-in", new { email, password = "wrong wrong wrong" });
        var answer = await other.PostAsync("api/account/sign-in", new { email, password = Browser.Password });
        Assert.Equal(((HttpStatusCode)429, "locked"), (answer.Status, answer.Code));
        // Who is signed in already stays so.
        Assert.Equal(HttpStatusCode.OK, (await first.GetAsync("api/jobs")).Status);
    }

    [Theory]
    [InlineData("short", "password")]
    [InlineData("aaaaaaaaaaaaaaaa", "password")]
    [InlineData("password1234", "password")]
    public async Task EasyPasswordsAreRefusedWithWords(string password, string field)
    {
        using var browser = sites.Open(Sites.One);
        var answer = await browser.PostAsync("api/account/sign-up", new { company = "A", name = "B", email = Browser.NewEmail(), password });
        Assert.Equal((HttpStatusCode.BadRequest, field), (answer.Status, (string?)answer["field"]));
    }

    [Theory]
    [InlineData("", "Ona", "ona@example.com", "company")]
    [InlineData("Harrow", " ", "ona@example.com", "name")]
    [InlineData("Harrow", "Ona", "ona at example", "email")]
    [InlineData("Harrow", "Ona", "Ona <ona@example.com>", "email")]
    [InlineData("Harrow", "O\u0000na", "ona@example.com", "name")]
    public async Task WhatIsMissingIsNamed(string company, string name, string email, string field)
    {
        using var browser = sites.Open(Sites.One);
        var answer = await browser.PostAsync("api/account/sign-up", new { company, name, email, password = Browser.Password });
        Assert.Equal((HttpStatusCode.BadRequest, field), (answer.Status, (string?)answer["field"]));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AnAccountThatCouldNotBeMadeLeavesNothing(string site)
    {
        using var first = sites.Open(site);
        var email = Browser.NewEmail();
        await first.SignUpAsync(email: email);
        using var other = sites.Open(site);
        var twice = await other.PostAsync("api/account/sign-up", new { company = "Other", name = "Ona", email, password = Browser.Password });
        Assert.Equal((HttpStatusCode.Conflict, "email"), (twice.Status, twice.Code));
        Assert.Equal(HttpStatusCode.Unauthorized, (await other.GetAsync("api/jobs")).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AnInvitationIsGoodOnce(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var token = (string)Browser.Must(await owner.PostAsync("api/invitations", new { role = "foreman", email = "sam@example.com", days = 3 }))["token"]!;
        using var phone = sites.Open(site);
        var seen = (await phone.PostAsync("api/invitations/look", new { token })).Json;
        Assert.Equal("Harrow Fence foreman sam@example.com", $"{seen["company"]} {seen["role"]} {seen["email"]}");
        Browser.Must(await phone.PostAsync("api/invitations/accept", new { token, name = "Sam", email = Browser.NewEmail(), password = Browser.Password }));
        Assert.Equal("foreman", (string?)(await phone.GetAsync("api/me"))["person"]["role"]);
        using var late = sites.Open(site);
        var used = await late.PostAsync("api/invitations/accept", new { token, name = "Sam", email = Browser.NewEmail(), password = Browser.Password });
        Assert.Equal((HttpStatusCode.NotFound, "invitation"), (used.Status, used.Code));
        var withdrawn = Browser.Must(await owner.PostAsync("api/invitations", new { role = "crew" }));
        Browser.Must(await owner.DeleteAsync($"api/invitations/{withdrawn["id"]}"));
        Assert.Equal(HttpStatusCode.NotFound, (await late.PostAsync("api/invitations/look", new { token = (string)withdrawn["token"]! })).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task OfManyWhoAcceptOneInvitationAtOnceOneIsIn(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var token = (string)Browser.Must(await owner.PostAsync("api/invitations", new { role = "crew" }))["token"]!;
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(async _ =>
        {
            using var phone = sites.Open(site);
            return (await phone.PostAsync("api/invitations/accept", new { token, name = "Sam", email = Browser.NewEmail(), password = Browser.Password })).Status;
        }));
        Assert.Single(answers, s => s == HttpStatusCode.OK);
        Assert.Equal(2, (await owner.GetAsync("api/people")).Json.AsArray().Count);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhoBelongsToTwoCompaniesIsAskedWhichAndSeesThatOneOnly(string site)
    {
        using var first = sites.Open(site);
        using var second = sites.Open(site);
        var email = Browser.NewEmail();
        await first.SignUpAsync("North", email);
        await second.SignUpAsync("South");
        await Yards.SendAsync(second, Yards.Job("south-job"));
        var token = (string)Browser.Must(await second.PostAsync("api/invitations", new { role = "estimator" }))["token"]!;
        Browser.Must(await first.PostAsync("api/invitations/accept", new { token, device = "desk" }));
        // The browser is in the company it joined last.
        Assert.Equal("South", (string?)(await first.GetAsync("api/me"))["company"]["name"]);
        using var other = sites.Open(site);
        var which = await other.PostAsync("api/account/sign-in", new { email, password = Browser.Password });
        Assert.Equal((HttpStatusCode.Conflict, "which"), (which.Status, which.Code));
        var north = which["companies"].AsArray().Single(c => (string)c!["name"]! == "North")!["id"]!;
        Browser.Must(await other.PostAsync("api/account/sign-in", new { email, password = Browser.Password, company = (string)north! }));
        Assert.Empty((await other.GetAsync("api/jobs")).Json.AsArray());
        Assert.Equal(HttpStatusCode.NotFound, (await other.GetAsync("api/jobs/south-job")).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ADeviceIsShutOutAndARoleChangesWithTheNextRequest(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        using var foreman = await owner.InviteAsync("foreman");
        var me = (await foreman.GetAsync("api/me")).Json;
        Assert.Equal(HttpStatusCode.Forbidden, (await foreman.PutAsync("api/jobs/harrow/state", new { state = "won" })).Status);
        Browser.Must(await owner.PutAsync($"api/people/{me["person"]!["id"]}", new { role = "estimator" }));
        for (var i = 0; i < 2; i++) Assert.Equal(HttpStatusCode.NoContent, (await foreman.PutAsync("api/jobs/harrow/state", new { state = "won" })).Status);
        Browser.Must(await owner.DeleteAsync($"api/devices/{me["device"]!["id"]}"));
        for (var i = 0; i < 2; i++)
        {
            var answer = await foreman.GetAsync("api/jobs");
            Assert.Equal((HttpStatusCode.Unauthorized, "signed-out"), (answer.Status, answer.Code));
        }
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ACompanyAlwaysHasAnOwner(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var me = (string)(await owner.GetAsync("api/me"))["person"]["id"]!;
        foreach (var answer in new[] { await owner.PutAsync($"api/people/{me}", new { role = "crew" }), await owner.DeleteAsync($"api/people/{me}") })
            Assert.Equal((HttpStatusCode.Conflict, "last-owner"), (answer.Status, answer.Code));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ANewPasswordShutsOutTheOtherDevices(string site)
    {
        using var desk = sites.Open(site);
        var email = Browser.NewEmail();
        await desk.SignUpAsync(email: email);
        using var phone = sites.Open(site);
        Browser.Must(await phone.PostAsync("api/account/sign-in", new { email, password = Browser.Password }));
        Assert.Equal(HttpStatusCode.BadRequest, (await desk.PostAsync("api/account/password", new { old = "not this one 12", @new = "seven blue rollers 9" })).Status);
        Browser.Must(await desk.PostAsync("api/account/password", new { old = Browser.Password, @new = "seven blue rollers 9" }));
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("api/jobs")).Status);
        Assert.Equal(HttpStatusCode.OK, (await desk.GetAsync("api/jobs")).Status);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.PostAsync("api/account/sign-in", new { email, password = Browser.Password })).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AfterSigningOutTheOldCookieIsWorthNothing(string site)
    {
        using var browser = sites.Open(site);
        await browser.SignUpAsync();
        var old = browser.Cookies["__Host-tautline"];
        Browser.Must(await browser.PostAsync("api/account/sign-out", new { }));
        Assert.Empty(browser.Cookies);
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.GetAsync("api/jobs", ("Cookie", $"__Host-tautline={old}"))).Status);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task ATokenDoesWhatItsRoleMayUntilItIsWithdrawn(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var made = Browser.Must(await owner.PostAsync("api/tokens", new { name = "books", role = "crew", days = 1 }));
        using var program = new Browser(owner.Address) { Token = (string)made["token"]! };
        Assert.Equal(HttpStatusCode.OK, (await program.GetAsync("api/jobs", ("Tautline", ""))).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await program.GetAsync("api/people")).Status);
        Browser.Must(await owner.DeleteAsync($"api/tokens/{made["id"]}"));
        var answer = await program.GetAsync("api/jobs");
        Assert.Equal((HttpStatusCode.Unauthorized, "token"), (answer.Status, answer.Code));
    }

    [Fact]
    public async Task PasswordsAreNotTakenWhereSomebodyBetweenCouldReadAlong()
    {
        using var browser = sites.Open(Sites.One);
        var answer = await browser.SendAsync(HttpMethod.Post, "api/account/sign-in", System.Net.Http.Json.JsonContent.Create(new { email = "a@example.com", password = "x" }), ("Host", "fence.example"));
        Assert.Equal((HttpStatusCode.Forbidden, "https"), (answer.Status, answer.Code));
        Assert.False((bool)(await browser.GetAsync("api/me", ("Host", "fence.example"))).Json["https"]!);
        // Behind a proxy on this machine that speaks HTTPS.
        Assert.True((bool)(await browser.GetAsync("api/me", ("Host", "fence.example"), ("X-Forwarded-Proto", "https"), ("X-Forwarded-For", "203.0.113.7"), ("X-Forwarded-Host", "fence.example"))).Json["https"]!);
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhatIsDoneIsWrittenDown(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job());
        Browser.Must(await owner.PutAsync("api/jobs/harrow/state", new { state = "won" }));
        var last = (await owner.GetAsync("api/audit")).Json.AsArray()[0]!;
        Assert.Equal("Ona Harrow job.state harrow lead to won", $"{last["person"]} {last["act"]} {last["subject"]} {last["detail"]}");
    }
}
