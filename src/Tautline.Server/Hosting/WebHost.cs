using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;

namespace Tautline.Server.Hosting;

/// <summary>Hands out the web app on this machine. It keeps nothing and works nothing out: the page does.</summary>
public static class WebHost
{
    /// <summary>Tried first, so that the address can be kept as a bookmark; another is taken where it is in use.</summary>
    public const int UsualPort = 5080;

    // The web app's own list of its files, where it was published; before that the build's list is found by itself.
    private static readonly string PublishedAddresses = Path.Combine(AppContext.BaseDirectory, "Tautline.Web.staticwebassets.endpoints.json");

    /// <summary>The app, not yet started.</summary>
    /// <param name="args">As ASP.NET Core takes them: '--urls http://localhost:8080'.</param>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
        // Beside the development environment too the files lie where the build left them, until they are published.
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        if (string.IsNullOrEmpty(builder.Configuration["urls"])) builder.WebHost.UseUrls($"http://localhost:{FreePort()}");
        WebApplication app = builder.Build();
        app.Use(SafeHeadersAsync);
        app.Use(PageAtTheRootAsync);
        app.UseRouting();
        app.MapStaticAssets(Path.Exists(PublishedAddresses) ? PublishedAddresses : null);
        return app;
    }

    /// <summary>Runs until it is stopped; says where it listens.</summary>
    /// <returns>0, or 1 where it cannot listen.</returns>
    public static async Task<int> RunAsync(WebApplication app, TextWriter output, TextWriter error)
    {
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
        await app.WaitForShutdownAsync();
        return 0;
    }

    private static Task SafeHeadersAsync(HttpContext context, RequestDelegate next)
    {
        context.Response.Headers.XContentTypeOptions = "nosniff";
        context.Response.Headers["Referrer-Policy"] = "no-referrer";
        return next(context);
    }

    // The page has its own caching rule and compressed copies under its name only.
    private static Task PageAtTheRootAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.Path == "/") context.Request.Path = "/index.html";
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
