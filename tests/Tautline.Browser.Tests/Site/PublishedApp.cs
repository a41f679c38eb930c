using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;

namespace Tautline.Browser.Tests.Site;

/// <summary>The web app as it would be deployed: published, trimmed and compressed, once for as long as no source changes.</summary>
internal static class PublishedApp
{
    private static readonly string folder = Path.Combine(Checkout.Artifacts, "web");
    private static readonly string stamp = Path.Combine(Checkout.Artifacts, "web.stamp");

    // Two test classes start at once: the first to ask publishes, the other waits for the same folder.
    private static readonly Lazy<Task<string>> published = new(MakeAsync);

    /// <summary>The folder to serve, made if it is not there or not up to date.</summary>
    public static Task<string> FolderAsync() => published.Value;

    private static async Task<string> MakeAsync()
    {
        string sources = Sources();
        if (!File.Exists(stamp) || await File.ReadAllTextAsync(stamp) != sources)
        {
            File.Delete(stamp);
            if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
            await PublishAsync();
            await File.WriteAllTextAsync(stamp, sources);
        }

        return Path.Combine(folder, "wwwroot");
    }

    private static async Task PublishAsync()
    {
        // Nothing may outlive the tests: no build server, no node kept for the next build.
        string[] arguments =
        [
            "publish", Checkout.PathOf("src", "Tautline.Web"), "-c", "Release", "-o", folder, "--nologo", "-nodeReuse:false", "-p:UseSharedCompilation=false",
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
        string[] roots = ["Tautline.Engine", "Tautline.Documents", "Tautline.Web"];
        var files = roots.SelectMany(r => Directory.EnumerateFiles(Checkout.PathOf("src", r), "*", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Concat(Directory.EnumerateFiles(Checkout.PathOf("samples")))
            .Concat([Checkout.PathOf("Directory.Build.props"), Checkout.PathOf("Directory.Packages.props"), Checkout.PathOf("global.json")]);
        foreach (string file in files.Order(StringComparer.Ordinal))
            digest.AppendLine(Path.GetRelativePath(Checkout.Root, file) + " " + Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))));
        return digest.ToString();
    }
}
