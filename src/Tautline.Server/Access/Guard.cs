using Tautline.Server.Accounts;
using Tautline.Server.Hosting;

namespace Tautline.Server.Access;

/// <summary>Requests that no page of ours would make.</summary>
internal sealed class Guard(ServerSettings settings)
{
    /// <summary>No other site's page can send it without asking first, and nobody here answers that question.</summary>
    public const string Header = "Tautline";

    /// <summary>The company a device carries something for. What one company's device kept never goes to another, whoever signed in since.</summary>
    public const string CompanyHeader = "Tautline-Company";

    /// <summary>Behind the sign-in: refuses what is meant for another company than the one that is signed in.</summary>
    public static Task CompanyAsync(HttpContext context, RequestDelegate next)
        => context.Request.Headers[CompanyHeader].ToString() is { Length: > 0 } meant && context.CallerOrNobody() is { } caller && meant != caller.CompanyId.ToString()
            ? Refuse.WriteAsync(context, 409, "company", "This job on this device belongs to another company than the one that is signed in. Nothing was sent: sign in to its company to go on.")
            : next(context);

    public Task InvokeAsync(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        // A name that leads to this machine by a trick would make its owner of whoever set it up.
        if (!settings.Accounts && request.Host.Host is not ("localhost" or "127.0.0.1" or "[::1]"))
            return Refuse.WriteAsync(context, 400, "host", "Without accounts the program answers to localhost only.");
        if (!request.Path.StartsWithSegments("/api")) return next(context);
        if (CallerAccess.TokenOf(request) is not null)
            return Sessions.Safe(request) ? next(context) : Refuse.WriteAsync(context, 403, "https", "A token is only taken over HTTPS; this one was readable on its way: withdraw it.");
        if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site") return Refuse.WriteAsync(context, 403, "site", "Another site's page may not ask this.");
        if (!HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method) && request.Headers[Header].Count == 0)
            return Refuse.WriteAsync(context, 400, "header", $"The header '{Header}: 1' is missing.");
        return next(context);
    }
}
