using System.Text;

namespace Tautline.Server.Import;

/// <summary>Something about a row that a person should know.</summary>
/// <param name="Line">Of the file, from 1.</param>
/// <param name="Column">As the file's heading has it; empty where it is about the row.</param>
internal sealed record ImportLine(int Line, string Column, string Message);

/// <summary>One row, its cells by what their columns mean; what no column means stays under its own heading.</summary>
internal sealed record CsvRow(int Line, IReadOnlyDictionary<string, (string Heading, string Text)> Known, IReadOnlyDictionary<string, string> Others)
{
    public string this[string column] => Known.TryGetValue(column, out var cell) ? cell.Text : "";

    public string Heading(string column) => Known.TryGetValue(column, out var cell) ? cell.Heading : column;
}

/// <summary>Reads a table another program wrote: comma, semicolon or tab, quotes over several lines, headings in any order.</summary>
internal static class CsvRows
{
    public const int MostRows = 5000;

    /// <param name="columns">For each column its name and other words people write for it, in small letters without spaces.</param>
    /// <returns>No rows where the file cannot be read at all; then <paramref name="lines"/> says why.</returns>
    public static IReadOnlyList<CsvRow> Read(byte[] file, IReadOnlyDictionary<string, string[]> columns, string needed, List<ImportLine> lines)
    {
        var text = Text(file, lines);
        List<CsvRow> rows = [];
        string[]? headings = null;
        foreach (var (line, cells) in CsvCells.Read(text, lines))
        {
            if (cells.All(c => c.Length == 0)) continue;
            if (headings is null)
            {
                headings = cells;
                if (headings.Any(h => Meaning(h, columns) == needed)) continue;
                lines.Add(new(line, "", $"The first line has the headings of the columns, and one of them is '{needed}'; here it has: {string.Join(", ", headings.Take(12))}."));
                return [];
            }
            if (rows.Count == MostRows)
            {
                lines.Add(new(line, "", $"A list has at most {MostRows} rows: split it."));
                return [];
            }
            if (cells.Length > headings.Length) lines.Add(new(line, "", $"The row has {cells.Length} cells and the headings {headings.Length}: a text with a separator in it needs quotes. What is beyond is left out."));
            rows.Add(Row(line, headings, cells, columns));
        }
        if (rows.Count == 0 && lines.Count == 0) lines.Add(new(1, "", "The list has no rows."));
        return rows;
    }

    private static CsvRow Row(int line, string[] headings, string[] cells, IReadOnlyDictionary<string, string[]> columns)
    {
        Dictionary<string, (string, string)> known = new(StringComparer.Ordinal);
        Dictionary<string, string> others = new(StringComparer.Ordinal);
        for (var c = 0; c < Math.Min(headings.Length, cells.Length); c++)
        {
            if (Meaning(headings[c], columns) is { } meaning) known.TryAdd(meaning, (headings[c], cells[c]));
            else if (cells[c].Length > 0 && headings[c].Length > 0) others.TryAdd(headings[c], cells[c]);
        }
        return new(line, known, others);
    }

    private static string? Meaning(string heading, IReadOnlyDictionary<string, string[]> columns)
    {
        var word = string.Concat(heading.Where(char.IsLetterOrDigit)).ToLowerInvariant();
        return columns.Where(c => c.Key == word || c.Value.Contains(word)).Select(c => c.Key).FirstOrDefault();
    }

    private static string Text(byte[] file, List<ImportLine> lines)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(file).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            lines.Add(new(1, "", "The file is not UTF-8: it was read as Latin-1. Look whether names with accents are right."));
            return Encoding.Latin1.GetString(file);
        }
    }
}
