namespace Tautline.Engine.Reasons;

/// <summary>The names facts go by on the command line and in answers.</summary>
public static class FactNames
{
    private static readonly Dictionary<FactKind, string> names = Enum.GetValues<FactKind>().ToDictionary(k => k, Dashed);

    private static readonly Dictionary<string, FactKind> kinds = names.ToDictionary(p => p.Value, p => p.Key, StringComparer.Ordinal);

    /// <summary>hole-depth for HoleDepth.</summary>
    public static string Of(FactKind kind) => names[kind];

    public static FactKind? Find(string name) => kinds.TryGetValue(name, out var kind) ? kind : null;

    private static string Dashed(FactKind kind)
        => string.Concat(kind.ToString().Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : $"{c}"));
}
