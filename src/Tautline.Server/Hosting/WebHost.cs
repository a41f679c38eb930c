using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Tautline.Server.Access;

namespace Tautline.Server.Hosting;

/// <summary>Hands out the web app, and keeps and carries what its pages share.</summary>
public static class WebHost
{
    /// <summary>Tried first, so that the address can be kept as a bookmark; another is taken where it is in use.</summary>
    public const int UsualPort = 5080;

    // The web app's own list of its files, where it was published; before that the build's list is found by itself.
    private static readonly string PublishedAddresses = Path.Combine(AppContext.BaseDirectory, "Tautline.Web.staticwebassets.endpoints.json");

    /// <summary>The app, not yet started.</summary>
    /// <param name="args">As ASP.NET Core takes them: '--urls http://localhost:8080'.</param>
    /// <exception cref="SettingsException">Something that was asked cannot be.</exception>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.AddEnvironmentVariables("TAUTLINE_").AddCommandLine(args);
        // Beside the development environment too the files lie where the build left them, until they are published.
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        // The keys lie in the store, which is guarded as the jobs in it are.
        builder.Logging.AddSimpleConsole(o => (o.TimestampFormat, o.UseUtcTimestamp) = ("yyyy-MM-ddTHH:mm:ss.fffZ ", true));
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error).AddFilter("Microsoft.EntityFrameworkCore", LogLevel.None)
            .AddFilter("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogLevel.None);
        builder.WebHost.ConfigureKestrel(k => (k.Limits.MaxRequestBodySize, k.AddServerHeader) = (Limits.LargestBody, false));
        if (string.IsNullOrEmpty(builder.Configuration["urls"])) builder.WebHost.UseUrls($"http://localhost:{FreePort()}");
        ServerSettings settings = ServerSettings.Of(builder.Configuration);
        ServerParts.Add(builder, settings);
        return Pipeline(builder.Build());
    }

    private static WebApplication Pipeline(WebApplication app)
    {
        ServerSettings settings = app.Services.GetRequiredService<ServerSettings>();
        app.UseForwardedHeaders();
        app.Use(SafeHeaders.Of(app.Environment.WebRootFileProvider).InvokeAsync);
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.Use(new Guard(settings).InvokeAsync);
        app.Use(PageAtTheRootAsync);
        app.UseWhen(c => c.Request.Path.StartsWithSegments("/api"), api => api.UseResponseCompression().UseRequestDecompression());
        app.UseRouting();
        app.Use(SlashesOfNamesAsync);
        app.UseAuthentication();
        app.Use(Guard.CompanyAsync);
        app.UseRateLimiter();
        app.UseAuthorization();
        app.MapStaticAssets(Path.Exists(PublishedAddresses) ? PublishedAddresses : null).AllowAnonymous();
        app.MapApi();
        return app;
    }

    /// <summary>Runs until it is stopped; says where it listens.</summary>
    /// <returns>0, or 1 where it cannot listen or has no store.</returns>
    public static async Task<int> RunAsync(WebApplication app, TextWriter output, TextWriter error)
    {
        ServerSettings settings = app.Services.GetRequiredService<ServerSettings>();
        if (!await StoreAtStart.ReadyAsync(settings.Store, error)) return 1;
        try
        {
            await app.StartAsync();
        }
        catch (IOException fault)
        {
            await error.WriteLineAsync($"error: Tautline cannot listen there: {fault.Message}\nhint: Choose another address: --urls http://localhost:8080");
            return 1;
        }

        await output.WriteLineAsync($"Tautline is open at {string.Join(" and ", app.Urls)}. Stop it with Ctrl+C.");
        if (settings.Accounts && app.Urls.Any(u => u.StartsWith("http://", StringComparison.Ordinal)))
            await output.WriteLineAsync("note: Phones sign in, and keep the program for when there is no signal, only over HTTPS. docs/company.md shows the ways to a certificate.");
        await app.WaitForShutdownAsync();
        return 0;
    }

    // The page has its own caching rule and compressed copies under its name only.
    private static Task PageAtTheRootAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path == "/") context.Request.Path = "/index.html";
        return next(context);
    }

    // A slash in a job's name stays written as %2F in the path, so that it is part of the name; here it becomes the name.
    private static Task SlashesOfNamesAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.RouteValues["job"] is string name) context.Request.RouteValues["job"] = name.Replace("%2F", "/", StringComparison.OrdinalIgnoreCase);
        return next(context);
    }

    private static int FreePort()
    {
        try
        {
            return Probe(UsualPort);
        }
        catch (SocketException)
        {
            return Probe(0);
        }
    }

    private static int Probe(int port)
    {
        using var listener = new TcpListener(IPAddress.Loopback, port);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
