namespace Tautline.Formats.Tests;

/// <summary>Real files kept beside the repository. Where they are absent the test is skipped.</summary>
internal static class SharedData
{
    public static string PathOf(string path) => Path.Combine(Root(), "data", path);

    public static byte[] Read(string path)
    {
        var file = PathOf(path);
        if (!File.Exists(file)) Assert.Skip($"The shared file {path} is not here.");
        return File.ReadAllBytes(file);
    }

    private static string Root()
    {
        if (Environment.GetEnvironmentVariable("TAUTLINE_SHARED") is { Length: > 0 } stated) return stated;
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Tautline.slnx"))) folder = folder.Parent;
        return Path.Combine(folder?.Parent?.FullName ?? "", "shared");
    }
}
