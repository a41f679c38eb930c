namespace Tautline.Formats.Ground.Points;

/// <summary>One field of a row.</summary>
/// <param name="Start">Where it begins in the line, from 0.</param>
/// <param name="Text">Without blanks at either end, and without quotes where it was quoted whole.</param>
/// <param name="Quoted">Whether it was.</param>
internal readonly record struct RowField(int Start, string Text, bool Quoted);

/// <summary>
/// Cuts a line into fields. A field in quotes may hold the separator and doubled quotes (RFC 4180, section 2); a quote that does not close its
/// field, such as an inch mark, is a letter like any other.
/// </summary>
internal static class RowSplitter
{
    public const char Blanks = ' ';

    public static List<RowField> Split(string line, char separator)
    {
        var fields = new List<RowField>();
        var at = 0;
        while (true)
        {
            at = SkipBlanks(line, at, separator);
            if (separator == Blanks && at == line.Length) return fields;
            var (field, end) = Quoted(line, at, separator) ?? Plain(line, at, separator);
            fields.Add(field);
            if (end >= line.Length) return fields;
            at = end + 1;
        }
    }

    /// <summary>All of a line from a field on, for a description that may hold separators.</summary>
    public static string RestOf(string line, RowField field)
    {
        var rest = line[Math.Min(field.Start, line.Length)..].Trim();
        return Quoted(rest, 0, '\0') is var (whole, end) && end == rest.Length ? whole.Text : rest;
    }

    private static bool Separates(char letter, char separator) => separator == Blanks ? letter is ' ' or '\t' : letter == separator;

    private static int SkipBlanks(string line, int at, char separator)
    {
        while (at < line.Length && (line[at] == ' ' || (line[at] == '\t' && separator != '\t') || line[at] == '\u00A0')) at++;
        return at;
    }

    private static (RowField Field, int End) Plain(string line, int start, char separator)
    {
        var end = start;
        while (end < line.Length && !Separates(line[end], separator)) end++;
        return (new(start, line[start..end].Trim(), false), end);
    }

    private static (RowField Field, int End)? Quoted(string line, int start, char separator)
    {
        if (start >= line.Length || line[start] != '"') return null;
        for (var at = start + 1; at < line.Length; at++)
        {
            if (line[at] != '"') continue;
            if (at + 1 < line.Length && line[at + 1] == '"')
            {
                at++;
                continue;
            }
            var end = separator == Blanks ? at + 1 : SkipBlanks(line, at + 1, separator);
            if (end < line.Length && !Separates(line[end], separator)) return null;
            return (new(start, line[(start + 1)..at].Replace("\"\"", "\"", StringComparison.Ordinal).Trim(), true), end);
        }
        return null;
    }
}
