namespace Tautline.Engine.Quantities;

/// <summary>A number as written on a tape: 6, 6.5, 1/2, 6 1/2 or, where a dash cannot mean feet-inches, 6-1/2.</summary>
/// <param name="Value">Exact for every fraction with a power of two below the line.</param>
/// <param name="IsWhole">No point and no fraction.</param>
/// <param name="First">Where it starts.</param>
internal sealed record MixedNumber(decimal Value, bool IsWhole, TextToken First)
{
    /// <summary>Null, with the reader's problem set, if no such number stands here.</summary>
    public static MixedNumber? Read(TokenReader reader, bool dashJoinsFraction)
    {
        if (reader.Problem is not null) return null;
        if (reader.After.Kind == TokenKind.Slash && reader.Ahead(2).Kind == TokenKind.Number) return ReadFraction(reader);
        if (reader.Number() is not { } whole) return null;
        if (dashJoinsFraction && StartsFraction(reader, 1)) reader.Take(TokenKind.Dash);
        return StartsFraction(reader, 0) ? ReadTail(reader, whole) : new(whole.Number, whole.IsWhole, whole);
    }

    /// <summary>Whether number, slash, number begins so many tokens ahead.</summary>
    public static bool StartsFraction(TokenReader reader, int ahead) =>
        (ahead == 0 || reader.Next.Kind == TokenKind.Dash)
        && reader.Ahead(ahead).Kind == TokenKind.Number
        && reader.Ahead(ahead + 1).Kind == TokenKind.Slash
        && reader.Ahead(ahead + 2).Kind == TokenKind.Number;

    private static MixedNumber? ReadTail(TokenReader reader, TextToken whole)
    {
        if (ReadFraction(reader) is not { } fraction) return null;
        if (whole.IsWhole && fraction.Value < 1) return new(whole.Number + fraction.Value, false, whole);
        reader.Refuse(QuantityMessages.MixedFraction(fraction.First.Position, reader.WrittenFrom(whole)));
        return null;
    }

    private static MixedNumber? ReadFraction(TokenReader reader)
    {
        var above = reader.Take();
        reader.Take(TokenKind.Slash);
        var below = reader.Take();
        if (FractionProblem(reader, above, below) is not { } problem) return new(above.Number / below.Number, false, above);
        reader.Refuse(problem);
        return null;
    }

    private static ParseProblem? FractionProblem(TokenReader reader, TextToken above, TextToken below)
    {
        if (above.Kind != TokenKind.Number) return QuantityMessages.NumberExpected(above, reader.Example);
        if (!above.IsWhole || !below.IsWhole) return QuantityMessages.FractionParts(above.Position, reader.WrittenFrom(above));
        return below.Number == 0 ? QuantityMessages.ZeroDenominator(below.Position, reader.WrittenFrom(above)) : null;
    }
}
