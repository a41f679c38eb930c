using System.Globalization;

namespace Tautline.Formats.Sites.Shape;

/// <summary>A node of a coordinate system in well-known text: KEYWORD["name", number, NODE[...]] (OGC 01-009, and Esri's flavour of it).</summary>
internal sealed class WktNode(string keyword)
{
    private const int Deepest = 32;
    private const int Longest = 64 * 1024;

    public string Keyword { get; } = keyword;

    public List<string> Texts { get; } = [];

    public List<double> Numbers { get; } = [];

    public List<WktNode> Nodes { get; } = [];

    public string Name => Texts.Count > 0 ? Texts[0] : "";

    public WktNode? Find(string keyword) => Nodes.Find(n => n.Keyword.Equals(keyword, StringComparison.OrdinalIgnoreCase));

    /// <summary>The root; null where the text is none.</summary>
    public static WktNode? Parse(string text)
    {
        if (text.Length > Longest) return null;
        var at = 0;
        return Node(text, ref at, 0);
    }

    private static WktNode? Node(string text, ref int at, int depth)
    {
        Blanks(text, ref at);
        var from = at;
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] == '_')) at++;
        if (at == from || depth > Deepest) return null;
        var node = new WktNode(text[from..at]);
        Blanks(text, ref at);
        if (at >= text.Length || text[at] is not ('[' or '(')) return depth == 0 ? null : node;
        at++;
        while (true)
        {
            Blanks(text, ref at);
            if (at >= text.Length) return null;
            if (text[at] is ']' or ')')
            {
                at++;
                return node;
            }
            if (text[at] == ',') at++;
            else if (text[at] == '"')
            {
                var end = text.IndexOf('"', at + 1);
                if (end < 0) return null;
                node.Texts.Add(text[(at + 1)..end]);
                at = end + 1;
            }
            else if (text[at] is '-' or '+' or '.' || char.IsAsciiDigit(text[at]))
            {
                var start = at;
                while (at < text.Length && text[at] is not (',' or ']' or ')') && !char.IsWhiteSpace(text[at])) at++;
                if (!double.TryParse(text.AsSpan(start, at - start), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)) return null;
                node.Numbers.Add(number);
            }
            else if (Node(text, ref at, depth + 1) is { } child) node.Nodes.Add(child);
            else return null;
        }
    }

    private static void Blanks(string text, ref int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at])) at++;
    }
}
