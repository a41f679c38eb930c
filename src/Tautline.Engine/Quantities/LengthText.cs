namespace Tautline.Engine.Quantities;

/// <summary>
/// Lengths as the trade writes them. Reading: <c>132' 6 1/2"</c>, <c>132-6.5</c> (feet-inches), <c>132.54'</c>,
/// <c>84"</c>, <c>132 ft 6 in</c>, <c>40.4 m</c>, <c>13 mm</c>, <c>1200 ftUS</c> (survey feet). A length that is a
/// whole number of nanometres is read exactly.
/// </summary>
public static partial class LengthText
{
    internal const string Example = "132' 6 1/2\", 132.54', 84\" or 40.4 m";

    /// <param name="text">What was written.</param>
    /// <param name="bareUnit">What a number without a unit means; null refuses it, for it could be anything.</param>
    public static Parsed<Length> Parse(string text, LengthUnit? bareUnit = null)
    {
        var reader = new TokenReader(text, Example);
        var negative = reader.TakeSign();
        var nanometres = ReadNanometres(reader, bareUnit);
        if (nanometres > Exact.LargestNanometres) reader.Refuse(QuantityMessages.TooLong());
        return reader.Finish(() => Exact.FromNanometres(negative ? -nanometres : nanometres));
    }

    private static decimal ReadNanometres(TokenReader reader, LengthUnit? bareUnit)
    {
        if (MixedNumber.Read(reader, dashJoinsFraction: false) is not { } first) return 0;
        if (reader.Next.Kind == TokenKind.Dash && reader.After.Kind == TokenKind.Number) return ReadDashedFeet(reader, first);
        return ReadUnit(reader, first, bareUnit) switch
        {
            null => 0,
            LengthUnit.Foot => ReadFeet(reader, first),
            { } unit => LengthUnits.Nanometres(first.Value, unit),
        };
    }

    private static LengthUnit? ReadUnit(TokenReader reader, MixedNumber number, LengthUnit? bareUnit)
    {
        var token = reader.Next;
        if (token.Kind == TokenKind.End && bareUnit is not null) return bareUnit;
        if (LengthUnits.Named(token) is { } unit)
        {
            reader.Take();
            return unit;
        }
        reader.Refuse(token.Kind switch
        {
            TokenKind.End => QuantityMessages.UnitMissing(token.Position, reader.WrittenFrom(number.First)),
            TokenKind.Word => QuantityMessages.UnknownUnit(token),
            _ => QuantityMessages.Leftover(token.Position, reader.RestFrom(token), Example),
        });
        return null;
    }

    // 132-6.5 and 132-6 1/2, but not 6-1/2", which half the trade reads as six and a half inches.
    private static decimal ReadDashedFeet(TokenReader reader, MixedNumber feet)
    {
        if (!MixedNumber.StartsFraction(reader, 1)) return ReadFeet(reader, feet);
        reader.Refuse(QuantityMessages.DashBeforeFraction(reader.Next.Position, reader.RestFrom(feet.First)));
        return 0;
    }

    private static decimal ReadFeet(TokenReader reader, MixedNumber feet)
    {
        var inches = InchesFollow(reader) ? ReadInches(reader, feet) : 0;
        return feet.Value * Length.NmPerFoot + inches * Length.NmPerInch;
    }

    private static bool InchesFollow(TokenReader reader)
    {
        if (reader.Next.Kind == TokenKind.Dash && reader.After.Kind == TokenKind.Number) reader.Take();
        return reader.Next.Kind == TokenKind.Number;
    }

    private static decimal ReadInches(TokenReader reader, MixedNumber feet)
    {
        if (MixedNumber.Read(reader, dashJoinsFraction: true) is not { } inches) return 0;
        var position = inches.First.Position;
        if (!feet.IsWhole) reader.Refuse(QuantityMessages.InchesAfterDecimalFeet(position));
        if (inches.Value >= 12) reader.Refuse(QuantityMessages.TooManyInches(position, feet.Value, inches.Value));
        TakeInchUnit(reader);
        return inches.Value;
    }

    private static void TakeInchUnit(TokenReader reader)
    {
        var token = reader.Next;
        if (LengthUnits.Named(token) == LengthUnit.Inch) reader.Take();
        else if (token.Kind is TokenKind.Word or TokenKind.FootMark) reader.Refuse(QuantityMessages.InchesExpected(token));
    }
}
