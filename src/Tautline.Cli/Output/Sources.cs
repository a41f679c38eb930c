using Tautline.Engine.Catalog;

namespace Tautline.Cli.Output;

/// <summary>A source in words, with how far it may be trusted.</summary>
internal static class Sources
{
    public static string Text(Provenance from)
    {
        var parts = new[] { from.Source, from.Clause, from.Edition }.Where(p => p.Length > 0);
        return $"{string.Join(", ", parts)} ({Trust(from)})";
    }

    public static string Trust(Provenance from) => Confidence(from.Confidence) + (from.Verify ? ": verify" : "");

    public static string Confidence(Confidence confidence) => confidence switch
    {
        Engine.Catalog.Confidence.Published => "published",
        Engine.Catalog.Confidence.Calculated => "calculated",
        Engine.Catalog.Confidence.FromMemory => "from memory",
        Engine.Catalog.Confidence.CommonPractice => "common practice",
        _ => "as specified",
    };
}
