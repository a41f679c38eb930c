using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.ResponseCompression;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;
using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Server.Jobs;
using Tautline.Store;
using Tautline.Store.People;

namespace Tautline.Server.Hosting;

/// <summary>What the program is put together from.</summary>
internal static class ServerParts
{
    private const int ShortestPassword = 12;

    public static void Add(WebApplicationBuilder builder, ServerSettings settings)
    {
        var services = builder.Services;
        services.AddSingleton(settings).AddSingleton(settings.Store).AddSingleton(TimeProvider.System).AddSingleton<OwnCompany>().AddSingleton<Sessions>();
        services.AddScoped(_ => settings.Store.Open()).AddScoped<Joining>();
        services.AddDataProtection().SetApplicationName("Tautline").PersistKeysToDbContext<StoreContext>();
        services.AddCallers(settings);
        AddAccounts(services, settings);
        services.AddProblemDetails(o => o.CustomizeProblemDetails = c => c.ProblemDetails.Extensions.TryAdd("code", Code(c.ProblemDetails.Status)));
        services.AddExceptionHandler<Faults>();
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        services.AddLimits(settings);
        services.AddDescription();
        services.AddHealthChecks().AddCheck<StoreHealth>("store");
        services.AddRequestDecompression();
        services.AddResponseCompression(o =>
        {
            o.EnableForHttps = true;
            o.MimeTypes = ["application/json", "application/problem+json"];
            o.Providers.Add<BrotliCompressionProvider>();
            o.Providers.Add<GzipCompressionProvider>();
        });
        services.Configure<ForwardedHeadersOptions>(o => o.ForwardedHeaders = settings.Accounts
            ? ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost
            // Without accounts nobody stands between, and a page that says so wants to be taken for this machine.
            : ForwardedHeaders.None);
        services.AddHostedService<JobIndexer>();
        if (builder.Configuration["OTEL_EXPORTER_OTLP_ENDPOINT"] is { Length: > 0 })
        {
            services.AddOpenTelemetry()
                .WithTracing(t => t.AddAspNetCoreInstrumentation(o => o.Filter = ToldOf).AddOtlpExporter())
                .WithMetrics(m => m.AddAspNetCoreInstrumentation().AddRuntimeInstrumentation().AddOtlpExporter());
        }
    }

    // The address of a shared paper is its secret.
    private static bool ToldOf(HttpContext context) => !context.Request.Path.StartsWithSegments("/s");

    private static string Code(int? status) => status switch { 400 => "malformed", 404 => "not-there", 405 => "method", 413 => "too-large", 415 => "media-type", _ => $"http-{status}" };

    private static void AddAccounts(IServiceCollection services, ServerSettings settings)
    {
        services.AddHttpContextAccessor();
        services.AddIdentityCore<Person>(o =>
        {
            o.User.RequireUniqueEmail = true;
            // Any e-mail address is a name here.
            o.User.AllowedUserNameCharacters = "";
            o.Password.RequiredLength = ShortestPassword;
            (o.Password.RequireDigit, o.Password.RequireLowercase, o.Password.RequireUppercase, o.Password.RequireNonAlphanumeric) = (false, false, false, false);
            o.Lockout.MaxFailedAccessAttempts = 10;
            o.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
            o.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
        }).AddEntityFrameworkStores<StoreContext>().AddSignInManager().AddPasswordValidator<NotAmongTheFirst>();
        services.Configure<IdentityPasskeyOptions>(o =>
        {
            o.ServerDomain = settings.Domain;
            (o.UserVerificationRequirement, o.ResidentKeyRequirement) = ("required", "required");
        });
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = Joining.HashRounds);
    }
}
