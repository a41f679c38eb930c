namespace Tautline.Engine.Catalog;

/// <summary>A source in words, with how far it may be trusted.</summary>
public static class SourceText
{
    public static string Text(Provenance from)
    {
        var clause = from.Source.Contains(from.Clause, StringComparison.Ordinal) ? "" : from.Clause;
        var edition = from.Edition == "not shown" ? "edition not shown" : from.Edition;
        return $"{string.Join(", ", new[] { from.Source, clause, edition }.Where(p => p.Length > 0))} ({Trust(from)})"
            .Replace("common practice, no source (common practice: verify)", "common practice, no source: verify", StringComparison.Ordinal);
    }

    public static string Trust(Provenance from) => Confidence(from.Confidence) + (from.Verify ? ": verify" : "");

    public static string Confidence(Confidence confidence) => confidence switch
    {
        Catalog.Confidence.Published => "published",
        Catalog.Confidence.Calculated => "calculated",
        Catalog.Confidence.FromMemory => "from memory",
        Catalog.Confidence.CommonPractice => "common practice",
        _ => "as specified",
    };
}
