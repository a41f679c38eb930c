namespace Tautline.Engine.Site.TapeBook;

/// <summary>A word of a line, or a quoted name without its quotes. Offsets count from 0 in the line.</summary>
internal readonly record struct TapeToken(string Text, int Start, int End, bool Quoted);

/// <summary>Cuts a line into words and quoted names. A quote opens only where a word begins; elsewhere " is the inch mark.</summary>
internal static class TapeScanner
{
    /// <summary>The words of a line, or null where it cannot be read, which is told.</summary>
    public static List<TapeToken>? Scan(string line, int number, TapeProblems problems)
    {
        if (FindControl(line) is var control and >= 0)
        {
            problems.Add(TapeTexts.ControlCharacter, number, control + 1, (int)line[control]);
            return null;
        }
        List<TapeToken> tokens = [];
        for (var i = 0; i < line.Length && line[i] != '#';)
        {
            if (char.IsWhiteSpace(line[i])) i++;
            else if (Read(line, i) is { } token)
            {
                tokens.Add(token);
                i = token.End;
            }
            else
            {
                problems.Add(TapeTexts.QuoteUnclosed, number, i + 1);
                return null;
            }
        }
        return tokens;
    }

    /// <summary>The marks that phones and word processors put for ' and " and -, as plain marks; one for one.</summary>
    public static string Plain(string text)
    {
        Span<char> plain = text.Length <= 256 ? stackalloc char[text.Length] : new char[text.Length];
        for (var i = 0; i < text.Length; i++) plain[i] = Plain(text[i]);
        return plain.SequenceEqual(text) ? text : new string(plain);
    }

    private static char Plain(char mark) => mark switch
    {
        '\u2018' or '\u2019' or '\u2032' => '\'',
        '\u201C' or '\u201D' or '\u2033' => '"',
        '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2212' => '-',
        _ => mark,
    };

    private static int FindControl(string line)
    {
        for (var i = 0; i < line.Length; i++)
            if (line[i] != '\t' && char.IsControl(line[i])) return i;
        return -1;
    }

    private static TapeToken? Read(string line, int start) => Plain(line[start]) == '"' ? Quoted(line, start) : Word(line, start);

    private static TapeToken? Quoted(string line, int start)
    {
        for (var i = start + 1; i < line.Length; i++)
            if (line[i] is '"' or '\u201C' or '\u201D') return new TapeToken(line[(start + 1)..i], start, i + 1, true);
        return null;
    }

    private static TapeToken? Word(string line, int start)
    {
        var end = start;
        while (end < line.Length && line[end] != '#' && !char.IsWhiteSpace(line[end])) end++;
        return new TapeToken(Plain(line[start..end]), start, end, false);
    }
}
