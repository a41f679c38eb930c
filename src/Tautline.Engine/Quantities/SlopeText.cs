namespace Tautline.Engine.Quantities;

/// <summary>
/// Slopes as written in the field: <c>12%</c>, <c>-3.5%</c>, <c>1:8</c> (rise 1 in a run of 8), <c>7 deg</c>,
/// <c>1 1/2"/ft</c>, <c>level</c>.
/// </summary>
public static class SlopeText
{
    internal const string Example = "12%, 1:8, 7 deg, 1 1/2\"/ft or level";

    public static Parsed<Slope> Parse(string text)
    {
        var reader = new TokenReader(text, Example);
        if (reader.Problem is null && reader.TakeWord("level", "flat")) return reader.Finish(() => Slope.Level);
        var negative = reader.Problem is null && reader.TakeSign();
        var slope = ReadSlope(reader);
        return reader.Finish(() => negative && slope.Ratio != 0 ? -slope : slope);
    }

    /// <summary>As a percentage with a fixed number of decimals, halves away from zero: <c>12.0%</c>.</summary>
    /// <exception cref="OverflowException">The slope is not finite or beyond 1e25 or so.</exception>
    public static string Percent(Slope slope, int decimals) => Exact.Fixed((decimal)slope.Percent, decimals) + "%";

    private static Slope ReadSlope(TokenReader reader)
    {
        if (MixedNumberFollows(reader)) return ReadInchesPerFoot(reader);
        return reader.After.Kind switch
        {
            TokenKind.Percent => ReadPercent(reader),
            TokenKind.Colon => ReadRatio(reader),
            _ when IsInchMark(reader.After) => ReadInchesPerFoot(reader),
            _ => ReadAngle(reader),
        };
    }

    private static bool MixedNumberFollows(TokenReader reader) =>
        MixedNumber.StartsFraction(reader, 0) || (reader.Next.Kind == TokenKind.Number && FractionComesAfterNumber(reader));

    private static bool FractionComesAfterNumber(TokenReader reader) =>
        reader.After.Kind == TokenKind.Number || (reader.After.Kind == TokenKind.Dash && reader.Ahead(3).Kind == TokenKind.Slash);

    private static bool IsInchMark(TextToken token) => LengthUnits.Named(token) == LengthUnit.Inch;

    private static Slope ReadPercent(TokenReader reader)
    {
        if (reader.Number() is not { } percent) return default;
        reader.Take(TokenKind.Percent);
        return new(Exact.Double(percent.Number / 100));
    }

    private static Slope ReadRatio(TokenReader reader)
    {
        if (reader.Number() is not { } rise) return default;
        reader.Take(TokenKind.Colon);
        if (reader.Number() is not { } run) return default;
        if (RatioProblem(reader, rise, run) is not { } problem) return new(Exact.Double(rise.Number / run.Number));
        reader.Refuse(problem);
        return default;
    }

    private static ParseProblem? RatioProblem(TokenReader reader, TextToken rise, TextToken run)
    {
        if (run.Number == 0) return QuantityMessages.ZeroDenominator(run.Position, reader.WrittenFrom(rise));
        return rise.Number > run.Number ? QuantityMessages.SteepRatio(rise, run) : null;
    }

    private static Slope ReadInchesPerFoot(TokenReader reader)
    {
        if (MixedNumber.Read(reader, dashJoinsFraction: true) is not { } inches) return default;
        if (!IsInchMark(reader.Take())) reader.Refuse(QuantityMessages.SlopeUnitMissing(inches.First.Position, reader.RestFrom(inches.First)));
        else if (!TakePerFoot(reader)) reader.Refuse(QuantityMessages.PerFootMissing(reader.Next, reader.WrittenFrom(inches.First)));
        return new(Exact.Double(inches.Value / 12));
    }

    private static bool TakePerFoot(TokenReader reader)
    {
        if (!reader.Take(TokenKind.Slash) && !reader.TakeWord("per")) return false;
        if (LengthUnits.Named(reader.Next) != LengthUnit.Foot) return false;
        reader.Take();
        return true;
    }

    private static Slope ReadAngle(TokenReader reader)
    {
        // 7-30 alone is refused: it is too close to a ratio.
        var marked = DegreesReader.IsDegreeMark(reader.After);
        if (DegreesReader.Read(reader) is not { } angle) return default;
        var written = reader.WrittenFrom(angle.First);
        if (!marked) reader.Refuse(QuantityMessages.SlopeUnitMissing(angle.First.Position, reader.RestFrom(angle.First)));
        else if (angle.Degrees >= 90) reader.Refuse(QuantityMessages.PlumbSlope(angle.First.Position, written));
        return reader.Problem is null ? Slope.FromDegrees(angle.Value) : default;
    }
}
