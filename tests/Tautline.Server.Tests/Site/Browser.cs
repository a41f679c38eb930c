using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace Tautline.Server.Tests.Site;

/// <summary>An answer of the server.</summary>
internal sealed record Answer(HttpStatusCode Status, string Text, HttpResponseMessage Response)
{
    public JsonNode Json => JsonNode.Parse(Text)!;

    /// <summary>The code of a refusal.</summary>
    public string Code => (string?)Json["code"] ?? "";

    public JsonNode this[string name] => Json[name]!;
}

/// <summary>Asks as a page does: with its cookies and the header no other site's page can send.</summary>
internal sealed class Browser(string address) : IDisposable
{
    public const string Password = "slow copper gate 41";

    private static int people;
    private readonly HttpClient client = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false, AutomaticDecompression = DecompressionMethods.All }) { BaseAddress = new(address) };
    private readonly Dictionary<string, string> cookies = [];

    public string? Token { get; init; }

    public string Address { get; } = address;

    public static string NewEmail() => string.Create(CultureInfo.InvariantCulture, $"person{Interlocked.Increment(ref people)}-{Environment.ProcessId}@example.com");

    public IReadOnlyDictionary<string, string> Cookies => cookies;

    public Task<Answer> GetAsync(string path, params (string Name, string Value)[] headers) => SendAsync(HttpMethod.Get, path, null, headers);

    public Task<Answer> PostAsync(string path, object body) => SendAsync(HttpMethod.Post, path, JsonContent.Create(body));

    public Task<Answer> PutAsync(string path, object body) => SendAsync(HttpMethod.Put, path, JsonContent.Create(body));

    public Task<Answer> DeleteAsync(string path) => SendAsync(HttpMethod.Delete, path, null);

    public async Task<Answer> SendAsync(HttpMethod method, string path, HttpContent? content, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path) { Content = content };
        request.Headers.Add("Tautline", "1");
        if (Token is not null) request.Headers.Authorization = new("Bearer", Token);
        if (cookies.Count > 0) request.Headers.Add("Cookie", string.Join("; ", cookies.Select(c => $"{c.Key}={c.Value}")));
        foreach (var (name, value) in headers)
        {
            request.Headers.Remove(name);
            if (value.Length > 0) request.Headers.TryAddWithoutValidation(name, value);
        }
        var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        if (response.Headers.TryGetValues("Set-Cookie", out var set)) foreach (var cookie in set) Take(cookie);
        return new(response.StatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), response);
    }

    /// <summary>A company of its own, this browser signed in as its owner.</summary>
    public async Task<Answer> SignUpAsync(string company = "Harrow Fence", string? email = null)
        => Must(await PostAsync("api/account/sign-up", new { company, name = "Ona Harrow", email = email ?? NewEmail(), password = Password, device = "desk" }));

    /// <summary>Another browser, signed in as somebody whom this one's owner invited.</summary>
    public async Task<Browser> InviteAsync(string role)
    {
        var token = (string)Must(await PostAsync("api/invitations", new { role }))["token"]!;
        var other = new Browser(Address);
        Must(await other.PostAsync("api/invitations/accept", new { token, name = $"A {role}", email = NewEmail(), password = Password, device = "phone" }));
        return other;
    }

    public static Answer Must(Answer answer) => (int)answer.Status < 300 ? answer : throw new InvalidOperationException($"{answer.Status}: {answer.Text}");

    public void Dispose() => client.Dispose();

    private void Take(string cookie)
    {
        var pair = cookie.Split(';')[0].Split('=', 2);
        if (pair[1].Length == 0 || cookie.Contains("expires=Thu, 01 Jan 1970", StringComparison.OrdinalIgnoreCase)) cookies.Remove(pair[0]);
        else cookies[pair[0]] = pair[1];
    }
}
