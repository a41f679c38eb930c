using System.Net;
using System.Text.Json.Nodes;
using Tautline.Server.Tests.Site;

namespace Tautline.Server.Tests;

/// <summary>Every address the API describes, tried by everybody. A new one is tried the day it appears.</summary>
public sealed class EverybodyTests(Sites sites)
{
    private static readonly string[] roles = ["crew", "foreman", "estimator", "owner"];

    private sealed record Operation(string Method, string Path, string Role);

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task EachAddressIsForItsRoleAndThoseAboveAndForNobodyElse(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        await Yards.SendAsync(owner, Yards.Job("secret-yard", "Secret yard"));
        using var nobody = sites.Open(site);
        using var crew = await owner.InviteAsync("crew");
        using var foreman = await owner.InviteAsync("foreman");
        using var estimator = await owner.InviteAsync("estimator");
        Browser[] ranks = [crew, foreman, estimator];
        var operations = await OperationsAsync(owner);
        Assert.True(operations.Count > 35, $"only {operations.Count} operations are described");
        foreach (var operation in operations.Where(o => o.Role != "anybody"))
        {
            Assert.Contains(operation.Role, roles);
            var answer = await AskAsync(nobody, operation);
            Assert.True(answer.Status == HttpStatusCode.Unauthorized, $"nobody: {operation} {answer.Status}");
            for (var rank = 0; rank < ranks.Length; rank++)
            {
                if (EndsSession(operation)) continue;
                var asked = await AskAsync(ranks[rank], operation);
                var may = rank >= Array.IndexOf(roles, operation.Role);
                Assert.True(may != (asked.Status is HttpStatusCode.Forbidden && asked.Code == "role"), $"{roles[rank]}: {operation} {asked.Status} {asked.Text}");
                Assert.True(asked.Status != HttpStatusCode.InternalServerError, $"{roles[rank]}: {operation} {asked.Text}");
            }
        }
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task AnotherCompanysOwnerFindsNothingAndChangesNothing(string site)
    {
        using var us = sites.Open(site);
        await us.SignUpAsync("Secret Fence Works");
        await Yards.SendAsync(us, Yards.Job("secret-yard", "Secret yard"));
        var ids = await OursAsync(us);
        var before = await AllAsync(us);
        using var them = sites.Open(site);
        await them.SignUpAsync("Curious");
        foreach (var operation in await OperationsAsync(us))
        {
            if (EndsSession(operation)) continue;
            foreach (var id in ids)
            {
                var answer = await AskAsync(them, operation, id);
                Assert.DoesNotContain("Secret", answer.Text, StringComparison.OrdinalIgnoreCase);
                if (operation.Path.Contains('{', StringComparison.Ordinal) && operation.Path != "/api/jobs/{job}/items")
                    Assert.True((int)answer.Status is >= 400 and < 500, $"{operation} {id}: {answer.Status} {answer.Text}");
            }
        }
        Assert.Equal(before, await AllAsync(us));
    }

    [Theory, MemberData(nameof(Sites.Both), MemberType = typeof(Sites))]
    public async Task WhoLeftTheCompanyIsNobody(string site)
    {
        using var owner = sites.Open(site);
        await owner.SignUpAsync();
        using var left = await owner.InviteAsync("owner");
        var token = (string)Browser.Must(await left.PostAsync("api/tokens", new { name = "books", role = "owner" }))["token"]!;
        Browser.Must(await owner.DeleteAsync($"api/people/{(await left.GetAsync("api/me"))["person"]["id"]}"));
        using var program = new Browser(owner.Address) { Token = token };
        foreach (var operation in (await OperationsAsync(owner)).Where(o => o.Role != "anybody"))
        {
            Assert.Equal(HttpStatusCode.Unauthorized, (await AskAsync(left, operation)).Status);
            Assert.Equal(HttpStatusCode.Unauthorized, (await AskAsync(program, operation)).Status);
        }
    }

    private static bool EndsSession(Operation operation) => operation.Path == "/api/account/sign-out";

    private static async Task<List<Operation>> OperationsAsync(Browser browser) =>
    [
        .. from path in Browser.Must(await browser.GetAsync("openapi/v1.json"))["paths"].AsObject()
           from method in path.Value!.AsObject()
           where path.Key.StartsWith("/api/", StringComparison.Ordinal) && !path.Key.Contains("{*", StringComparison.Ordinal)
           select new Operation(method.Key.ToUpperInvariant(), path.Key, (string)method.Value!["x-role"]!),
    ];

    private static Task<Answer> AskAsync(Browser browser, Operation operation, string id = "secret-yard")
    {
        var path = operation.Path.Replace("{job}", operation.Path.Contains("{id}", StringComparison.Ordinal) ? "secret-yard" : id, StringComparison.Ordinal)
            .Replace("{id}", Guid.TryParse(id, out _) ? id : Guid.Empty.ToString(), StringComparison.Ordinal).Replace("{sha256}", new string('a', 64), StringComparison.Ordinal);
        HttpContent? content = operation.Method is "POST" or "PUT" ? new StringContent(Body(operation), null, "application/json") : null;
        return browser.SendAsync(new(operation.Method), path[1..], content);
    }

    // What is right for its address, where being right decides who may.
    private static string Body(Operation operation) => operation.Path switch
    {
        "/api/jobs/{job}/state" => """{"state":"won"}""",
        "/api/jobs/{job}/items" => """{"items":[{"kind":"entry","body":{}}]}""",
        "/api/jobs/{job}/links" => """{"paper":"site"}""",
        "/api/people/{id}" => """{"role":"crew"}""",
        _ => "{}",
    };

    /// <summary>The names of everything of ours that an address could be asked with.</summary>
    private static async Task<List<string>> OursAsync(Browser us)
    {
        await us.InviteAsync("crew");
        Browser.Must(await us.PostAsync("api/invitations", new { role = "crew", email = "secret@example.com" }));
        Browser.Must(await us.PostAsync("api/tokens", new { name = "secret books", role = "owner" }));
        Browser.Must(await us.PostAsync("api/jobs/secret-yard/links", new { paper = "site" }));
        List<string> ids = ["secret-yard"];
        foreach (var list in new[] { "people", "devices", "invitations", "tokens", "jobs/secret-yard/links" })
            ids.AddRange(Browser.Must(await us.GetAsync($"api/{list}")).Json.AsArray().Select(row => (string)row!["id"]!));
        Assert.Equal(8, ids.Count);
        return ids;
    }

    private static async Task<string> AllAsync(Browser us)
    {
        List<string> all = [];
        foreach (var list in new[] { "people", "devices", "invitations", "tokens", "jobs/secret-yard/links", "jobs", "jobs/secret-yard/items", "audit" }) all.Add((await us.GetAsync($"api/{list}")).Text);
        return string.Join('\n', all);
    }
}
