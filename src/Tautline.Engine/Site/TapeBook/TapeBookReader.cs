namespace Tautline.Engine.Site.TapeBook;

/// <summary>Reads a tape book: short typed notes of what was walked. See docs/tape-book.md for the notation.</summary>
public static class TapeBookReader
{
    /// <summary>A book of 10,000 lines has about 300,000 characters; more than this is no book.</summary>
    public const int LargestCharacters = 8 << 20;

    /// <summary>Reads a book. Never throws for what is in the text: everything wrong is reported together, by line and column.</summary>
    /// <param name="text">The notes, one statement a line.</param>
    public static TapeBookReading Read(string text)
    {
        var problems = new TapeProblems();
        if (text.Length > LargestCharacters)
        {
            problems.Add(TapeTexts.BookTooLarge, 1, 1, text.Length, LargestCharacters);
            return new TapeBookReading(null, problems.Found);
        }
        var book = new TapeBookState(problems);
        Statements(text, new TapeStatements(book), problems);
        var job = book.Finish();
        return new TapeBookReading(problems.HasErrors ? null : job, problems.Found);
    }

    private static void Statements(string text, TapeStatements statements, TapeProblems problems)
    {
        var number = 0;
        foreach (var range in text.AsSpan().Split('\n'))
        {
            var line = text[range].TrimEnd('\r');
            if (number++ == 0) line = line.TrimStart('\uFEFF');
            if (TapeScanner.Scan(line, number, problems) is { Count: > 0 } tokens)
                statements.Read(new TapeCursor(line, number, tokens, problems));
        }
    }
}
