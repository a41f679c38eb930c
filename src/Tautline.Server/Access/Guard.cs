using Tautline.Server.Hosting;

namespace Tautline.Server.Access;

/// <summary>Requests that no page of ours would make.</summary>
internal sealed class Guard(ServerSettings settings)
{
    /// <summary>No other site's page can send it without asking first, and nobody here answers that question.</summary>
    public const string Header = "Tautline";

    public Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        // A name that leads to this machine by a trick would make its owner of whoever set it up.
        if (!settings.Accounts && request.Host.Host is not ("localhost" or "127.0.0.1" or "[::1]"))
            return Refuse.WriteAsync(context, 400, "host", "Without accounts the program answers to localhost only.");
        if (!request.Path.StartsWithSegments("/api") || CallerAccess.TokenOf(request) is not null) return next(context);
        if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site") return Refuse.WriteAsync(context, 403, "site", "Another site's page may not ask this.");
        if (!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && request.Headers[Header].Count == 0)
            return Refuse.WriteAsync(context, 400, "header", $"The header '{Header}: 1' is missing.");
        return next(context);
    }
}
