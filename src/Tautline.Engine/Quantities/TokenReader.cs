namespace Tautline.Engine.Quantities;

/// <summary>
/// Walks over the tokens of one text. The first problem stays; a method that returns null or false has set it
/// where it says so.
/// </summary>
internal sealed class TokenReader
{
    private readonly List<TextToken> _tokens;
    private readonly string _text;
    private int _at;

    public TokenReader(string text, string example)
    {
        _text = text;
        Example = example;
        (_tokens, Problem) = Tokenizer.Cut(text);
        if (Problem is null && Next.Kind == TokenKind.End) Problem = QuantityMessages.Empty(example);
    }

    /// <summary>How this quantity is written, for hints.</summary>
    public string Example { get; }

    public ParseProblem? Problem { get; private set; }

    public TextToken Next => _tokens[_at];

    public TextToken After => Ahead(1);

    public TextToken Ahead(int count) => _tokens[Math.Min(_at + count, _tokens.Count - 1)];

    public TextToken Take() => Next.Kind == TokenKind.End ? Next : _tokens[_at++];

    public bool Take(TokenKind kind)
    {
        if (Next.Kind != kind) return false;
        Take();
        return true;
    }

    public bool TakeWord(params ReadOnlySpan<string> words)
    {
        if (!Next.IsWord(words)) return false;
        Take();
        return true;
    }

    public void Refuse(ParseProblem problem) => Problem ??= problem;

    /// <summary>Whether a minus stood first; a plus is taken too.</summary>
    public bool TakeSign()
    {
        if (Take(TokenKind.Dash)) return true;
        Take(TokenKind.Plus);
        return false;
    }

    /// <summary>Everything from a token to the end of the text, for messages.</summary>
    public string RestFrom(TextToken token) => _text[token.Position..].TrimEnd();

    /// <summary>What was written from one token up to the next one to be read.</summary>
    public string WrittenFrom(TextToken token) => _text[token.Position..Next.Position].TrimEnd();

    /// <summary>A number; null with a problem set if there is none.</summary>
    public TextToken? Number()
    {
        if (Next.Kind == TokenKind.Number) return Take();
        Refuse(QuantityMessages.NumberExpected(Next, Example));
        return null;
    }

    /// <summary>The value if nothing went wrong and nothing is left.</summary>
    public Parsed<T> Finish<T>(Func<T> value)
    {
        if (Problem is null && Next.Kind != TokenKind.End) Refuse(QuantityMessages.Leftover(Next.Position, RestFrom(Next), Example));
        return Problem is null ? Parsed.Success(value()) : Parsed.Failure<T>(Problem);
    }
}
