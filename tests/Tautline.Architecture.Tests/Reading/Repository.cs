using System.Diagnostics;
using System.Text;

namespace Tautline.Architecture.Tests.Reading;

/// <summary>The checkout these tests were built in.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>Release or Debug: the configuration of this very build, so that nothing stale is judged.</summary>
    public static string Configuration { get; } = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    /// <summary>The folder of outside material beside the repository; null where there is none.</summary>
    public static string? Shared()
    {
        var path = Environment.GetEnvironmentVariable("TAUTLINE_SHARED") is { Length: > 0 } told ? told : Path.Combine(Root, "..", "shared");
        return Directory.Exists(path) ? path : null;
    }

    public static string PathOf(string relative) => Path.Combine(Root, relative);

    public static string Read(string relative) => File.ReadAllText(PathOf(relative));

    /// <summary>Every file that is, or would be, committed: tracked or new, not ignored. Relative, with forward slashes.</summary>
    public static IReadOnlyList<string> Files()
    {
        if (!Path.Exists(PathOf(".git")))
            Assert.Skip("this copy of the sources is not a git checkout");
        var listed = Git("ls-files", "-z", "--cached", "--others", "--exclude-standard");
        return [.. listed.Split('\0', StringSplitOptions.RemoveEmptyEntries).Where(f => File.Exists(PathOf(f))).Order(StringComparer.Ordinal)];
    }

    public static IEnumerable<string> Files(string under, params string[] endings) =>
        Files().Where(f => f.StartsWith(under, StringComparison.Ordinal) && endings.Any(e => f.EndsWith(e, StringComparison.Ordinal)));

    private static string Git(params string[] arguments)
    {
        // A checkout owned by another user (a container's mount) is refused otherwise.
        var start = new ProcessStartInfo("git", ["-c", "safe.directory=*", .. arguments])
        {
            WorkingDirectory = Root,
            RedirectStandardOutput = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        using var git = Process.Start(start)!;
        var text = git.StandardOutput.ReadToEnd();
        git.WaitForExit();
        Assert.True(git.ExitCode == 0, $"git {string.Join(' ', arguments)} ended with exit code {git.ExitCode}");
        return text;
    }

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Tautline.slnx")))
                return at.FullName;
        throw new InvalidOperationException($"no Tautline.slnx above {AppContext.BaseDirectory}");
    }
}
