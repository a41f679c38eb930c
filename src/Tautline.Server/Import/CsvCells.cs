using System.Text;

namespace Tautline.Server.Import;

/// <summary>
/// Separated values as people have them: by RFC 4180, and also with a quote within a cell that does not begin with one, for that is how inches are written. A reader that held to the letter would
/// take the rest of the list for one cell.
/// </summary>
internal static class CsvCells
{
    private const string Separators = ",;\t";

    /// <returns>Each row with the line it begins at. A quote that is never closed ends the reading, and is told.</returns>
    public static IEnumerable<(int Line, string[] Cells)> Read(string text, List<ImportLine> lines)
    {
        var end = text.AsSpan().IndexOfAny('\r', '\n');
        var separator = Separators.MaxBy(s => text.AsSpan(0, end < 0 ? text.Length : end).Count(s));
        List<string> cells = [];
        var (at, line, from) = (0, 1, 1);
        while (at < text.Length)
        {
            var begun = line;
            if (Cell(text, separator, ref at, ref line) is not { } cell)
            {
                lines.Add(new(begun, "", "A quote is opened here and never closed: the list was read up to this line."));
                yield break;
            }
            cells.Add(cell);
            if (at < text.Length && text[at] == separator)
            {
                at++;
                if (at < text.Length) continue;
                cells.Add("");
            }
            yield return (from, [.. cells]);
            cells.Clear();
            if (at < text.Length && text[at] == '\r') at++;
            if (at < text.Length && text[at] == '\n') at++;
            from = ++line;
        }
    }

    private static string? Cell(string text, char separator, ref int at, ref int line)
    {
        if (at >= text.Length || text[at] != '"') return Plain(Until(text, separator, ref at));
        var cell = new StringBuilder();
        for (at++; at < text.Length; at++)
        {
            if (text[at] == '\n') line++;
            if (text[at] != '"') cell.Append(text[at]);
            else if (at + 1 < text.Length && text[at + 1] == '"') cell.Append(text[++at]);
            else
            {
                at++;
                return Plain(cell.Append(Until(text, separator, ref at)).ToString());
            }
        }
        return null;
    }

    private static string Until(string text, char separator, ref int at)
    {
        var from = at;
        while (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n')) at++;
        return text[from..at];
    }

    // An apostrophe before a sign that would begin a formula is how spreadsheets are kept from running it.
    private static string Plain(string cell) => cell.TrimStart() is ['\'', '=' or '+' or '-' or '@', ..] guarded ? guarded[1..].Trim() : cell.Trim();
}
