namespace Tautline.Desk;

/// <summary>The sample jobs that are served beside the app; their names are built in.</summary>
public static class Samples
{
    public static IReadOnlyList<string> FileNames { get; } = [.. Read().Where(n => n.EndsWith(".json", StringComparison.Ordinal))];

    public static IReadOnlyList<string> TapeBooks { get; } = [.. Read().Where(n => n.EndsWith(".tape", StringComparison.Ordinal))];

    /// <summary>'level-yard.json' is called 'level yard'.</summary>
    public static string Title(string fileName) => Path.GetFileNameWithoutExtension(fileName).Replace('-', ' ');

    public static string Address(string fileName) => "samples/" + fileName;

    private static string[] Read()
    {
        using Stream list = typeof(Samples).Assembly.GetManifestResourceStream("samples.txt")
            ?? throw new InvalidOperationException("The list of samples is not in this assembly.");
        using var reader = new StreamReader(list);
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}
