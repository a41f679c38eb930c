using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Tautline.Server.Hosting;
using Tautline.Store;
using Tautline.Store.Rows;

namespace Tautline.Server.Access;

/// <summary>Finds out who asks: whoever sits at this machine, a device by its cookie, or a program by its token.</summary>
internal static class CallerAccess
{
    public const string Cookie = "__Host-tautline";

    private const string Any = "caller";
    private const string OwnScheme = "own";
    private const string DeviceScheme = "device";
    private const string TokenScheme = "token";
    private const string DeviceClaim = "device";

    public static void AddCallers(this IServiceCollection services, ServerSettings settings)
    {
        var signIn = services.AddAuthentication(Any)
            .AddPolicyScheme(Any, null, o => o.ForwardDefaultSelector = context => !settings.Accounts ? OwnScheme : TokenOf(context.Request) is null ? DeviceScheme : TokenScheme);
        signIn.AddScheme<AuthenticationSchemeOptions, OwnMachine>(OwnScheme, null);
        signIn.AddScheme<AuthenticationSchemeOptions, TokenBearer>(TokenScheme, null);
        signIn.AddCookie(DeviceScheme, DeviceCookie);
        // Holds the question a passkey answers, between asking and answering, so that any process can judge the answer.
        signIn.AddCookie(IdentityConstants.TwoFactorUserIdScheme, o =>
        {
            o.Cookie.Name = "__Host-tautline-ask";
            o.Cookie.SecurePolicy = CookieSecurePolicy.Always;
            o.Cookie.SameSite = SameSiteMode.Strict;
            o.ExpireTimeSpan = TimeSpan.FromMinutes(5);
        });
        services.AddAuthorization(o =>
        {
            foreach (var role in Enum.GetValues<Role>()) o.AddPolicy(Policy(role), p => p.RequireAssertion(c => c.User.FindFirstValue(ClaimTypes.Role) is { } has && Enum.Parse<Role>(has) >= role));
            // What says nothing of who may is for nobody.
            o.FallbackPolicy = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build();
        });
    }

    /// <summary>Who may call an endpoint: this role and those above.</summary>
    public static T For<T>(this T endpoint, Role role) where T : IEndpointConventionBuilder => endpoint.RequireAuthorization(Policy(role)).WithMetadata(new NeedsRole(role));

    /// <summary>Who asks. Only behind <see cref="For"/>.</summary>
    public static Caller Caller(this HttpContext context) => (Caller)context.Items[typeof(Caller)]!;

    public static Caller? CallerOrNobody(this HttpContext context) => (Caller?)context.Items[typeof(Caller)];

    public static Task SignInAsync(HttpContext context, Guid deviceId)
        => context.SignInAsync(DeviceScheme, new(new ClaimsIdentity([new Claim(DeviceClaim, deviceId.ToString())], DeviceScheme)), new() { IsPersistent = true });

    public static Task SignOutAsync(HttpContext context) => context.SignOutAsync(DeviceScheme);

    internal static AuthenticateResult Found(HttpContext context, Caller caller, string scheme)
    {
        context.Items[typeof(Caller)] = caller;
        // From here on the request sees this company's rows and no others.
        context.RequestServices.GetRequiredService<StoreContext>().CompanyId = caller.CompanyId;
        return AuthenticateResult.Success(new(Principal(caller, scheme), scheme));
    }

    internal static string? TokenOf(HttpRequest request) => request.Headers.Authorization.ToString() is var text && text.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase) ? text[7..].Trim() : null;

    private static ClaimsPrincipal Principal(Caller caller, string scheme)
        => new(new ClaimsIdentity([new(ClaimTypes.NameIdentifier, caller.PersonId.ToString()), new(ClaimTypes.Role, caller.Role.ToString())], scheme));

    private static string Policy(Role role) => $"role-{role}";

    private static void DeviceCookie(CookieAuthenticationOptions o)
    {
        o.Cookie.Name = Cookie;
        o.Cookie.SecurePolicy = CookieSecurePolicy.Always;
        o.Cookie.SameSite = SameSiteMode.Strict;
        o.ExpireTimeSpan = Doors.Unused;
        o.SlidingExpiration = true;
        o.Events.OnValidatePrincipal = CheckDeviceAsync;
        o.Events.OnRedirectToLogin = c => Refuse.WriteAsync(c.HttpContext, 401, "signed-out", "Sign in first. What waits on this device stays there until then.");
        o.Events.OnRedirectToAccessDenied = c => ForbidAsync(c.HttpContext);
    }

    private static async Task CheckDeviceAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var now = services.GetRequiredService<TimeProvider>().GetUtcNow().UtcTicks;
        var caller = Guid.TryParse(context.Principal?.FindFirstValue(DeviceClaim), out var device)
            ? await Doors.ByDeviceAsync(services.GetRequiredService<StoreContext>(), device, now, context.HttpContext.RequestAborted) : null;
        if (caller is null) context.RejectPrincipal();
        else context.ReplacePrincipal(Found(context.HttpContext, caller, DeviceScheme).Principal!);
    }

    internal static Task ForbidAsync(HttpContext context)
    {
        var needs = context.GetEndpoint()?.Metadata.GetMetadata<NeedsRole>()?.Role;
        return Refuse.WriteAsync(context, 403, "role", needs is { } role ? $"This is for {Words(role)}; ask the owner of the company." : "You may not do this.");
    }

    private static string Words(Role role) => role switch
    {
        Role.Owner => "an owner",
        Role.Estimator => "an estimator or an owner",
        Role.Foreman => "a foreman, an estimator or an owner",
        _ => "those who belong to the company",
    };
}

/// <summary>What an endpoint says of who may call it; in the API's description too.</summary>
internal sealed record NeedsRole(Role Role);

/// <summary>Without accounts: everybody who reaches this machine's own address is its owner.</summary>
internal sealed class OwnMachine(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory log, UrlEncoder encoder, OwnCompany own) : AuthenticationHandler<AuthenticationSchemeOptions>(options, log, encoder)
{
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync() => CallerAccess.Found(Context, await own.CallerAsync(Context.RequestAborted), Scheme.Name);

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) => CallerAccess.ForbidAsync(Context);
}

/// <summary>A program with a token.</summary>
internal sealed class TokenBearer(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory log, UrlEncoder encoder) : AuthenticationHandler<AuthenticationSchemeOptions>(options, log, encoder)
{
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (CallerAccess.TokenOf(Request) is not { } token) return AuthenticateResult.NoResult();
        var store = Context.RequestServices.GetRequiredService<StoreContext>();
        var now = Context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow().UtcTicks;
        var caller = await Doors.ByTokenAsync(store, Secret.Hash(token), now, Context.RequestAborted);
        return caller is null ? AuthenticateResult.Fail("no such token") : CallerAccess.Found(Context, caller, Scheme.Name);
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        return Refuse.WriteAsync(Context, 401, "token", "The token is not known, was withdrawn or has expired: ask the owner for another.");
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) => CallerAccess.ForbidAsync(Context);
}
