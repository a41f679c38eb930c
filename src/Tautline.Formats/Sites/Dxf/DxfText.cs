using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Tautline.Formats.Sites.Dxf;

/// <summary>Labels of a drawing as plain text.</summary>
internal static partial class DxfText
{
    private const int Longest = 2000;

    /// <summary>Of a TEXT or an attribute: %% signs and \U+ letters put in.</summary>
    public static string Plain(string text)
    {
        if (text.Contains("%%", StringComparison.Ordinal)) text = Percent().Replace(text, Sign);
        if (text.Contains(@"\U+", StringComparison.OrdinalIgnoreCase)) text = Letter().Replace(text, m => ((char)ushort.Parse(m.Groups[1].Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString());
        return Short(text.Trim());
    }

    /// <summary>Of an MTEXT: without its formats; a new line becomes a blank.</summary>
    public static string Unformatted(string text)
    {
        text = Plain(text);
        var plain = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (letter is '{' or '}') continue;
            if (letter != '\\' || i + 1 == text.Length)
            {
                plain.Append(letter);
                continue;
            }
            switch (text[++i])
            {
                case 'P' or 'N' or '~': plain.Append(' '); break;
                case '\\' or '{' or '}': plain.Append(text[i]); break;
                // Underline, overline, strike: switches without a value. All others have one up to a semicolon.
                case 'L' or 'l' or 'O' or 'o' or 'K' or 'k': break;
                case 'S': i = Stacked(text, i + 1, plain); break;
                default: i = text.IndexOf(';', i) is >= 0 and var end ? end : i; break;
            }
        }
        return Short(Blanks().Replace(plain.ToString(), " ").Trim());
    }

    // A fraction: "1/2", "1#2" or "1^2".
    private static int Stacked(string text, int from, StringBuilder plain)
    {
        var end = text.IndexOf(';', from) is >= 0 and var found ? found : text.Length;
        plain.Append(text[from..end].Replace('#', '/').Replace('^', '/'));
        return end;
    }

    private static string Sign(Match match) => match.Groups[1].Value.ToUpperInvariant() switch
    {
        "D" => "\u00B0",
        "P" => "\u00B1",
        "C" => "\u2300",
        "%" => "%",
        var digits when int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var code) => ((char)code).ToString(),
        _ => "", // underline and overline
    };

    private static string Short(string text) => text.Length <= Longest ? text : text[..Longest];

    [GeneratedRegex("%%([dDpPcCuUoOkK%]|[0-9]{3})", RegexOptions.CultureInvariant)]
    private static partial Regex Percent();

    [GeneratedRegex(@"\\[Uu]\+([0-9A-Fa-f]{4})", RegexOptions.CultureInvariant)]
    private static partial Regex Letter();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
