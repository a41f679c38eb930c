namespace Tautline.Engine.Quantities;

/// <summary>Cuts a written quantity into tokens; stops at the first thing no quantity may hold.</summary>
internal static class Tokenizer
{
    // Enough for any length on earth in nanometres, and it keeps decimal arithmetic exact.
    internal const int MostDigits = 15;

    private const string FootMarks = "'’‘′´`";
    private const string InchMarks = "\"”“″";
    private const string DegreeMarks = "°º˚";
    private const string Dashes = "-‐‑–−";

    public static (List<TextToken> Tokens, ParseProblem? Problem) Cut(string text)
    {
        var tokens = new List<TextToken>();
        var problem = AddAll(text, tokens);
        tokens.Add(new(TokenKind.End, text.Length, ""));
        return (tokens, problem);
    }

    private static ParseProblem? AddAll(string text, List<TextToken> tokens)
    {
        for (var at = 0; at < text.Length;)
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }
            if (Refusal(text, at) is { } problem) return problem;
            at += AddNext(text, at, tokens);
        }
        return null;
    }

    private static ParseProblem? Refusal(string text, int at)
    {
        if (text[at] == ',') return QuantityMessages.Comma(at);
        var digits = text.AsSpan(at, NumberLength(text, at)).TrimStart('0');
        return digits.Length - digits.Count('.') > MostDigits ? QuantityMessages.TooManyDigits(at) : null;
    }

    /// <returns>How many characters were taken.</returns>
    private static int AddNext(string text, int at, List<TextToken> tokens)
    {
        if (Fraction(text[at]) is var (above, below))
        {
            AddFraction(text, at, above, below, tokens);
            return 1;
        }
        var (kind, length) = KindAt(text, at);
        var written = text.Substring(at, length);
        tokens.Add(new(kind, at, written, kind == TokenKind.Number ? Exact(written) : 0));
        return length;
    }

    private static (TokenKind Kind, int Length) KindAt(string text, int at)
    {
        var number = NumberLength(text, at);
        if (number > 0) return (TokenKind.Number, number);
        if (char.IsLetter(text[at]) && !DegreeMarks.Contains(text[at], StringComparison.Ordinal))
            return (TokenKind.Word, WordLength(text, at));
        if (IsFootMark(text, at) && IsFootMark(text, at + 1)) return (TokenKind.InchMark, 2);
        return (MarkKind(text[at]), 1);
    }

    private static TokenKind MarkKind(char mark) => mark switch
    {
        '%' => TokenKind.Percent,
        '/' or '⁄' => TokenKind.Slash,
        '+' => TokenKind.Plus,
        ':' => TokenKind.Colon,
        _ when FootMarks.Contains(mark, StringComparison.Ordinal) => TokenKind.FootMark,
        _ when InchMarks.Contains(mark, StringComparison.Ordinal) => TokenKind.InchMark,
        _ when DegreeMarks.Contains(mark, StringComparison.Ordinal) => TokenKind.DegreeMark,
        _ when Dashes.Contains(mark, StringComparison.Ordinal) => TokenKind.Dash,
        _ => TokenKind.Other,
    };

    private static bool IsFootMark(string text, int at) =>
        at < text.Length && FootMarks.Contains(text[at], StringComparison.Ordinal);

    /// <summary>Digits with at most one point among or before them; 0 if there is no number here.</summary>
    private static int NumberLength(string text, int at)
    {
        var end = AfterDigits(text, at);
        if (end < text.Length && text[end] == '.')
        {
            var afterPoint = AfterDigits(text, end + 1);
            end = afterPoint - at > 1 ? afterPoint : at;
        }
        return end - at;
    }

    private static int AfterDigits(string text, int at)
    {
        while (at < text.Length && char.IsAsciiDigit(text[at])) at++;
        return at;
    }

    private static int WordLength(string text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsLetter(text[end]) && !DegreeMarks.Contains(text[end], StringComparison.Ordinal)) end++;
        return end - at;
    }

    private static decimal Exact(string digits)
    {
        var value = 0m;
        var scale = 1m;
        var afterPoint = false;
        foreach (var c in digits)
        {
            if (c == '.')
            {
                afterPoint = true;
                continue;
            }
            value = value * 10 + (c - '0');
            if (afterPoint) scale *= 10;
        }
        return value / scale;
    }

    // Phones turn a typed 1/2 into one character.
    private static (int Above, int Below)? Fraction(char c) => c switch
    {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => null,
    };

    private static void AddFraction(string text, int at, int above, int below, List<TextToken> tokens)
    {
        var written = text.Substring(at, 1);
        tokens.Add(new(TokenKind.Number, at, written, above));
        tokens.Add(new(TokenKind.Slash, at, written));
        tokens.Add(new(TokenKind.Number, at, written, below));
    }
}
