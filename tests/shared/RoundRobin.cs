using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace Tautline;

/// <summary>Hands each request to the next of several servers, as a balancer in front of them does.</summary>
internal sealed class RoundRobin : IAsyncDisposable
{
    private static readonly string[] ownHeaders = ["Transfer-Encoding", "Connection", "Keep-Alive"];

    private readonly HttpClient client = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false });
    private readonly WebApplication app;
    private readonly string[] servers;
    private int turn;

    private RoundRobin(string address, string[] servers)
    {
        (Address, this.servers) = (address, servers);
        var builder = WebApplication.CreateEmptyBuilder(new());
        builder.WebHost.UseKestrelCore().UseUrls(address).ConfigureKestrel(k => k.Limits.MaxRequestBodySize = null);
        builder.Logging.SetMinimumLevel(LogLevel.None);
        app = builder.Build();
        app.Run(ForwardAsync);
    }

    public string Address { get; }

    public static async Task<RoundRobin> StartAsync(params string[] servers)
    {
        var made = new RoundRobin($"http://localhost:{Postgres.FreePort()}", servers);
        await made.app.StartAsync();
        return made;
    }

    public async ValueTask DisposeAsync()
    {
        await app.DisposeAsync();
        client.Dispose();
    }

    private async Task ForwardAsync(HttpContext context)
    {
        var server = servers[(uint)Interlocked.Increment(ref turn) % servers.Length];
        using var request = new HttpRequestMessage(new(context.Request.Method), server + context.Request.Path.ToUriComponent() + context.Request.QueryString);
        if (context.Request.ContentLength is not null || context.Request.Headers.TransferEncoding.Count > 0) request.Content = new StreamContent(context.Request.Body);
        foreach (var (name, values) in context.Request.Headers.Where(h => !ownHeaders.Contains(h.Key)))
            if (!request.Headers.TryAddWithoutValidation(name, [.. values])) request.Content?.Headers.TryAddWithoutValidation(name, [.. values]);
        request.Headers.TryAddWithoutValidation("X-Forwarded-For", "127.0.0.1");
        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, context.RequestAborted);
        context.Response.StatusCode = (int)answer.StatusCode;
        foreach (var (name, values) in answer.Headers.Concat(answer.Content.Headers).Where(h => !ownHeaders.Contains(h.Key))) context.Response.Headers[name] = values.ToArray();
        await answer.Content.CopyToAsync(context.Response.Body, context.RequestAborted);
    }
}
