using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Tautline.Server.Hosting;

/// <summary>What a browser is told not to do with what comes from here.</summary>
internal sealed partial class SafeHeaders(string policy)
{
    private static readonly string[] pages = ["index.html", "company.html"];

    /// <summary>Scripts that are written into the page itself are let in by the digest of what they are.</summary>
    public static SafeHeaders Of(Microsoft.Extensions.FileProviders.IFileProvider files)
    {
        var inline = pages.SelectMany(page => InlineScript().Matches(Text(files, page)))
            .Select(m => $" 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(m.Groups[1].Value)))}'").Distinct();
        return new(
            $"default-src 'self'; script-src 'self' 'wasm-unsafe-eval'{string.Concat(inline)}; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; worker-src 'self' blob:; "
            + "connect-src 'self' data: blob:; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'");
    }

    private static string Text(Microsoft.Extensions.FileProviders.IFileProvider files, string page)
    {
        using var stream = files.GetFileInfo(page) is { Exists: true } found ? found.CreateReadStream() : Stream.Null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    public Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        // At the last moment: whatever goes wrong in between empties the headers and writes its own.
        context.Response.OnStarting(() =>
        {
            Set(context);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private void Set(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(self), microphone=(), geolocation=(), payment=(), usb=()";
        // A picture or a paper has a stricter one of its own.
        headers.TryAdd("Content-Security-Policy", policy);
        if (context.Request.IsHttps) headers.StrictTransportSecurity = "max-age=31536000";
        if (context.Request.Path.StartsWithSegments("/api") || context.Request.Path.StartsWithSegments("/s")) headers.TryAdd("Cache-Control", "no-store");
    }

    [GeneratedRegex("<script(?![^>]*\\ssrc=)[^>]*>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex InlineScript();
}
