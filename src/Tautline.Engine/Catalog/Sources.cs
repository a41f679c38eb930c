namespace Tautline.Engine.Catalog;

internal static class Sources
{
    public static Provenance From(IReadOnlyDictionary<string, SourceFile> sources, string id, string clause, Confidence confidence)
        => sources.TryGetValue(id, out var source)
            ? new Provenance(source.Title, clause, source.Edition, confidence)
            : throw new InvalidDataException($"a row names the source '{id}', which the file does not list");
}

internal static class Resource
{
    /// <summary>The bytes of a data file built into the Engine.</summary>
    public static byte[] Text(string name)
    {
        using var stream = typeof(Resource).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the Engine was built without its data file '{name}'");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
