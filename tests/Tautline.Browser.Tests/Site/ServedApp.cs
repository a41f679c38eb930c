using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace Tautline.Browser.Tests.Site;

/// <summary>The server with the web app as they would be deployed: published, trimmed and compressed, once for as long as no source changes; started on a free port.</summary>
internal sealed class ServedApp : IAsyncDisposable
{
    private static readonly string folder = Path.Combine(Checkout.Artifacts, "web");
    private static readonly string stamp = Path.Combine(Checkout.Artifacts, "web.stamp");

    private readonly Process server;
    private readonly string store;

    private ServedApp(Process server, string address, string store) => (this.server, Address, this.store) = (server, address, store);

    public string Address { get; }

    /// <summary>Publishes where that is due, starts the server, and waits until it says where it listens.</summary>
    /// <param name="more">Besides the address and a store of its own.</param>
    public static async Task<ServedApp> StartAsync(string urls = "http://127.0.0.1:0", params string[] more)
    {
        await PublishWhereDueAsync();
        string store = Directory.CreateTempSubdirectory("tautline-served-").FullName;
        Process server = Process.Start(new ProcessStartInfo(Path.Combine(folder, "Tautline.Server"), ["--urls", urls, "--store", Path.Combine(store, "tautline.db"), .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        string said = await server.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException("The server ended: " + await server.StandardError.ReadToEndAsync());
        _ = server.StandardOutput.ReadToEndAsync();
        _ = server.StandardError.ReadToEndAsync();
        int at = said.IndexOf("http://", StringComparison.Ordinal);
        return new(server, said[at..].Split(". ", 2)[0].TrimEnd('.', '/'), store);
    }

    public async ValueTask DisposeAsync()
    {
        server.Kill();
        await server.WaitForExitAsync();
        server.Dispose();
        Directory.Delete(store, recursive: true);
    }

    private static async Task PublishWhereDueAsync()
    {
        string sources = Sources();
        if (File.Exists(stamp) && await File.ReadAllTextAsync(stamp) == sources) return;
        File.Delete(stamp);
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        await PublishAsync();
        await File.WriteAllTextAsync(stamp, sources);
    }

    private static async Task PublishAsync()
    {
        // Nothing may outlive the tests: no build server, no node kept for the next build.
        string[] arguments =
        [
            "publish", Checkout.PathOf("src", "Tautline.Server"), "-c", "Release", "-o", folder, "--nologo", "-nodeReuse:false", "-p:UseSharedCompilation=false",
        ];
        using Process publish = Process.Start(new ProcessStartInfo("dotnet", arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        Task<string> said = publish.StandardOutput.ReadToEndAsync();
        Task<string> complained = publish.StandardError.ReadToEndAsync();
        await publish.WaitForExitAsync();
        if (publish.ExitCode != 0)
            throw new InvalidOperationException($"dotnet publish ended with exit code {publish.ExitCode}:\n{await said}\n{await complained}");
    }

    /// <summary>A digest of every file the app is made from.</summary>
    private static string Sources()
    {
        var digest = new StringBuilder();
        string[] roots = ["Tautline.Engine", "Tautline.Desk", "Tautline.Documents", "Tautline.Field", "Tautline.FieldScreens", "Tautline.Formats", "Tautline.Papers", "Tautline.Spanish", "Tautline.Store", "Tautline.Web", "Tautline.Server"];
        string[] made = ["bin", "obj", "node_modules", "scripts", "samples"];
        var files = roots.SelectMany(r => Directory.EnumerateFiles(Checkout.PathOf("src", r), "*", SearchOption.AllDirectories))
            .Where(f => !made.Any(m => f.Contains($"{Path.DirectorySeparatorChar}{m}{Path.DirectorySeparatorChar}", StringComparison.Ordinal)))
            .Concat(Directory.EnumerateFiles(Checkout.PathOf("samples")))
            .Concat([Checkout.PathOf("Directory.Build.props"), Checkout.PathOf("Directory.Packages.props"), Checkout.PathOf("global.json")]);
        foreach (string file in files.Order(StringComparer.Ordinal))
            digest.AppendLine(Path.GetRelativePath(Checkout.Root, file) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))));
        return digest.ToString();
    }
}
