namespace Tautline.Browser.Tests.Site;

/// <summary>The checkout these tests were built in.</summary>
internal static class Checkout
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>A folder for what the tests make; not committed.</summary>
    public static string Artifacts { get; } = Directory.CreateDirectory(PathOf("artifacts", "browser-tests")).FullName;

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Tautline.slnx")))
                return at.FullName;
        throw new InvalidOperationException($"no Tautline.slnx above {AppContext.BaseDirectory}");
    }
}
