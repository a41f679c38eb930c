namespace Tautline.Spanish;

/// <summary>The Spanish of screens and papers, in an assembly of its own: a page that speaks English does without it.</summary>
public static class SpanishWords
{
    /// <summary>A JSON object of texts by key.</summary>
    public static Stream Open() => typeof(SpanishWords).Assembly.GetManifestResourceStream("words.es.json")!;
}
