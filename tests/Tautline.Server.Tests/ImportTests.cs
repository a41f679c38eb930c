using System.Text;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

public sealed class ImportTests(Sites sites)
{
    private const string Good = "Job name;No.;Client;Status;Units;Fence height;Length;Color of gate\r\n\"Ridge; north\";17;O. Harrow;won;us;5';102' 6\";green\r\nMeadow;18;'=Peter;;metric;1.8;40;\r\n";

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AListOfJobsIsTriedThenTakenAndTakenAgainChangesNothing(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var tried = await SendAsync(owner, "jobs?dry=true", Good);
        Assert.Equal("2 0 0", $"{tried["taken"]} {tried["already"]} {tried["lines"].AsArray().Count}");
        Assert.Empty((await owner.GetAsync("api/jobs")).Json.AsArray());
        await SendAsync(owner, "jobs", Good);
        var again = await SendAsync(owner, "jobs", Good);
        Assert.Equal("0 2 0", $"{again["taken"]} {again["already"]} {again["lines"].AsArray().Count}");
        var rows = (await owner.GetAsync("api/jobs")).Json.AsArray();
        var ridge = await Yards.ReadyAsync(owner, (string)rows.Single(r => (string)r!["state"]! == "won")!["id"]!);
        // 102' 6" of fence: eleven bays of at most 10 ft, twelve posts.
        Assert.Equal("Ridge; north, 12 posts", $"{ridge["name"]}, {ridge["posts"]} posts");
        var job = (await owner.GetAsync($"api/jobs/{ridge["id"]}")).Json;
        Assert.Equal("O. Harrow green 17", $"{job["imported"]!["customer"]} {job["imported"]!["Color of gate"]} {job["imported"]!["number"]}");
        Assert.Single((await owner.GetAsync("api/jobs?find=harrow")).Json.AsArray());
    }

    [Fact]
    public async Task EverythingWrongIsToldWithLineAndColumnAndTheRestIsTaken()
    {
        using var owner = sites.Open(Sites.One);
        await owner.SignUpAsync();
        var answer = await SendAsync(owner, "jobs", "name,number,state,height,length,tape\n,1,,,,\nA,2,maybe,6',10',\nB,3,,90',10',\nC,4,,6',ten,\nD,5,,,,leg leg\nE,6,,6',50',\nF,6,,6',60',\n");
        Assert.Equal(
            [
                "2 name: A job needs a name of 1 to 200 characters.",
                "3 state: 'maybe' is no state: write lead, quoted, won, building, done or lost, or leave it empty.",
                "4 height: A fence is 2 to 20 ft high, here '90''.",
                "5 length",
                "6 tape",
                "8 : It is the same job as in line 7: give them different numbers, or names where there are none.",
            ],
            answer["lines"].AsArray().DistinctBy(l => (int)l!["line"]!).Select(l => (int)l!["line"]! is 5 or 6 ? $"{l["line"]} {l["column"]}" : $"{l["line"]} {l["column"]}: {l["message"]}"));
        Assert.Equal(1, (int)answer["taken"]);
    }

    [Fact]
    public async Task TheSampleIsTakenWithoutAWord()
    {
        using var owner = sites.Open(Sites.One);
        await owner.SignUpAsync();
        var answer = await SendAsync(owner, "jobs", await File.ReadAllTextAsync(Path.Combine(RunningServer.Checkout, "samples/company/jobs.csv"), TestContext.Current.CancellationToken));
        Assert.Equal("3 0", $"{answer["taken"]} {answer["lines"].AsArray().Count}");
    }

    [Theory]
    [InlineData("")]
    [InlineData("a,b\n1,2")]
    [InlineData("name\n\"never closed")]
    [InlineData("\0\0\0")]
    [InlineData("name\n")]
    public async Task WhatIsNoListIsToldAndTakesNothing(string text)
    {
        using var owner = sites.Open(Sites.One);
        await owner.SignUpAsync();
        foreach (var list in new[] { "jobs", "people" })
        {
            var answer = await SendAsync(owner, list, text);
            Assert.NotEmpty(answer["lines"].AsArray());
            Assert.Equal(0, (int)answer["taken"]);
        }
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AListOfPeopleBecomesInvitations(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        var answer = await SendAsync(owner, "people", "Name\tE-mail\tRole\nSam Reed\tsam@example.com\tforeman\nTom\ttom@example.com\t\nTom\tTOM@example.com\t\nUna\tuna at example\tking\n");
        Assert.Equal(["4 E-mail", "5 E-mail", "5 Role"], answer["lines"].AsArray().Select(l => $"{l!["line"]} {l["column"]}"));
        Assert.Equal(["sam@example.com foreman", "tom@example.com crew"], answer["invited"].AsArray().Select(p => $"{p!["email"]} {p["role"]}"));
        using var phone = sites.Open(site);
        Assert.Equal("foreman", (string?)(await phone.PostAsync("api/invitations/look", new { token = (string)answer["invited"].AsArray()[0]!["token"]! }))["role"]);
    }

    private static async Task<Answer> SendAsync(Browser browser, string path, string text)
        => Browser.Must(await browser.SendAsync(HttpMethod.Post, $"api/import/{path}", new StringContent(text, Encoding.UTF8, "text/csv")));
}
