namespace Tautline.Engine.Quantities;

/// <summary>An angle as read: exact decimal degrees, and whether anything but a bare number was written.</summary>
internal readonly record struct WrittenDegrees(decimal Degrees, bool Marked, TextToken First)
{
    /// <summary>The nearest double.</summary>
    public double Value => Exact.Double(Degrees);
}

/// <summary>Reads 45.5°, 45.5 deg, 45°30', 45°30'15" and 45-30-15.</summary>
internal static class DegreesReader
{
    /// <summary>Null, with the reader's problem set, if no angle stands here.</summary>
    public static WrittenDegrees? Read(TokenReader reader)
    {
        if (reader.Problem is not null || reader.Number() is not { } degrees) return null;
        var marked = TakeDegreeMark(reader);
        if (!PartFollows(reader, marked)) return new(degrees.Number, marked, degrees);
        var minutes = ReadPart(reader, degrees, "minutes", TokenKind.FootMark, "min");
        var seconds = minutes is not null && PartFollows(reader, minutes.Value.Marked)
            ? ReadPart(reader, minutes.Value.Number, "seconds", TokenKind.InchMark, "sec")
            : null;
        if (reader.Problem is not null) return null;
        var total = degrees.Number * 3600 + (minutes?.Number.Number ?? 0) * 60 + (seconds?.Number.Number ?? 0);
        return new(total / 3600, true, degrees);
    }

    public static bool IsDegreeMark(TextToken token) =>
        token.Kind == TokenKind.DegreeMark || token.IsWord("deg", "degree", "degrees");

    private static bool TakeDegreeMark(TokenReader reader)
    {
        if (!IsDegreeMark(reader.Next)) return false;
        reader.Take();
        return true;
    }

    // After a mark the next part follows directly; otherwise only a dash says that one is coming.
    private static bool PartFollows(TokenReader reader, bool marked)
    {
        if (reader.Next.Kind == TokenKind.Number) return marked;
        return reader.Next.Kind == TokenKind.Dash && reader.After.Kind == TokenKind.Number && reader.Take(TokenKind.Dash);
    }

    private static (TextToken Number, bool Marked)? ReadPart(
        TokenReader reader, TextToken larger, string name, TokenKind mark, string word)
    {
        if (reader.Number() is not { } part) return null;
        if (!larger.IsWhole) reader.Refuse(QuantityMessages.DecimalBeforePart(larger, name));
        if (part.Number >= 60) reader.Refuse(QuantityMessages.SixtyOrMore(part, name));
        var marked = reader.Take(mark) || reader.TakeWord(word);
        return reader.Problem is null ? (part, marked) : null;
    }
}
