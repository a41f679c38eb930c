namespace Tautline.Engine.Quantities;

/// <summary>The smallest parts a written quantity is made of.</summary>
internal enum TokenKind
{
    Number,
    Word,
    FootMark,
    InchMark,
    DegreeMark,
    Percent,
    Slash,
    Dash,
    Plus,
    Colon,
    Other,
    End,
}

/// <param name="Kind">What it is.</param>
/// <param name="Position">Its column in the text, from 0.</param>
/// <param name="Text">As written.</param>
/// <param name="Number">The value of a number, exact; otherwise 0.</param>
internal readonly record struct TextToken(TokenKind Kind, int Position, string Text, decimal Number = 0)
{
    public bool IsWhole => Kind == TokenKind.Number && !Text.Contains('.', StringComparison.Ordinal);

    public bool IsWord(params ReadOnlySpan<string> words)
    {
        if (Kind != TokenKind.Word) return false;
        foreach (var word in words)
            if (string.Equals(Text, word, StringComparison.OrdinalIgnoreCase)) return true;
        return false;
    }
}
