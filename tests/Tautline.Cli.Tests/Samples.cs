namespace Tautline.Cli.Tests;

/// <summary>The samples of the repository.</summary>
internal static class Samples
{
    public static string Folder
    {
        get
        {
            var root = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(root.FullName, "Tautline.slnx"))) root = root.Parent ?? throw new InvalidOperationException("the tests run inside the repository");
            return Path.Combine(root.FullName, "samples");
        }
    }

    public static string Field => Path.Combine(Folder, "field", FieldSample.File);
}
