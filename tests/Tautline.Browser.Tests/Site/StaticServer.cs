using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.Logging;

namespace Tautline.Browser.Tests.Site;

/// <summary>One answer of the server: what was asked for, how it was compressed, and how long its body was.</summary>
internal sealed record Answer(string Path, int Status, string Encoding, long Bytes);

/// <summary>A plain file server on this machine only, which hands out the compressed file where there is one and the browser takes it.</summary>
internal sealed class StaticServer : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly string folder;
    private readonly FileExtensionContentTypeProvider kinds = new(new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        [".html"] = "text/html; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".json"] = "application/json",
        [".wasm"] = "application/wasm",
        [".svg"] = "image/svg+xml",
        [".dat"] = "application/octet-stream",
        [".pdb"] = "application/octet-stream",
    });

    private StaticServer(WebApplication app, string folder) => (this.app, this.folder) = (app, folder);

    public ConcurrentQueue<Answer> Answers { get; } = [];

    public string Address => app.Urls.Single();

    public static async Task<StaticServer> StartAsync(string folder)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var server = new StaticServer(builder.Build(), folder);
        server.app.Run(server.AnswerAsync);
        await server.app.StartAsync();
        return server;
    }

    public async ValueTask DisposeAsync() => await app.DisposeAsync();

    private async Task AnswerAsync(HttpContext context)
    {
        string asked = context.Request.Path.Value is null or "/" ? "/index.html" : context.Request.Path.Value;
        string file = Path.GetFullPath(Path.Join(folder, asked));
        if (!file.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal) || !File.Exists(file)
            || !kinds.TryGetContentType(file, out string? kind))
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            Answers.Enqueue(new(asked, 404, "", 0));
            return;
        }

        (string sent, string encoding) = Compressed(file, context.Request.Headers.AcceptEncoding.ToString());
        context.Response.ContentType = kind;
        context.Response.Headers.Vary = "Accept-Encoding";
        // Names under _framework hold a digest of their content, so a browser may keep them.
        context.Response.Headers.CacheControl =
            asked.StartsWith("/_framework/", StringComparison.Ordinal) ? "max-age=31536000, immutable" : "no-cache";
        if (encoding.Length > 0) context.Response.Headers.ContentEncoding = encoding;
        Answers.Enqueue(new(asked, 200, encoding, new FileInfo(sent).Length));
        await context.Response.SendFileAsync(sent);
    }

    private static (string File, string Encoding) Compressed(string file, string accepted)
    {
        if (accepted.Contains("br", StringComparison.Ordinal) && File.Exists(file + ".br")) return (file + ".br", "br");
        return accepted.Contains("gzip", StringComparison.Ordinal) && File.Exists(file + ".gz") ? (file + ".gz", "gzip") : (file, "");
    }
}
