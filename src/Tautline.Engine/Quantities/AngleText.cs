namespace Tautline.Engine.Quantities;

/// <summary>Turns from the line ahead, right positive: <c>R 90</c>, <c>L 45°30'</c>, <c>right 37.5 deg</c>.</summary>
public static class AngleText
{
    internal const string Example = "R 90, L 45°30' or right 37.5 deg";

    /// <returns>Degrees, right positive, within (-360, 360).</returns>
    public static Parsed<double> Parse(string text)
    {
        var reader = new TokenReader(text, Example);
        var degrees = reader.Problem is null ? ReadTurn(reader) : 0;
        return reader.Finish(() => Exact.Double(degrees));
    }

    /// <summary>A turn to the nearest second, <c>R 45°30'00"</c>; no turn is written as one to the right.</summary>
    public static string Format(double degrees)
    {
        var seconds = DegreesText.WholeSeconds(degrees);
        return (seconds < 0 ? "L " : "R ") + DegreesText.Format(Math.Abs(seconds));
    }

    private static decimal ReadTurn(TokenReader reader)
    {
        var first = reader.Next;
        var left = reader.TakeWord("L", "left", "lt");
        if (!left && !reader.TakeWord("R", "right", "rt"))
        {
            reader.Refuse(QuantityMessages.TurnSideMissing(first));
            return 0;
        }
        if (DegreesReader.Read(reader) is not { } angle) return 0;
        if (angle.Degrees >= 360) reader.Refuse(QuantityMessages.FullTurn(angle.First.Position, reader.WrittenFrom(angle.First)));
        return left ? -angle.Degrees : angle.Degrees;
    }
}
