namespace Tautline.Engine.Quantities;

/// <summary>
/// Directions as surveyors write them: bearings (<c>N 45°30' E</c>, <c>S12-05-30W</c>, <c>due N</c>) and azimuths
/// clockwise from north (<c>45.5°</c>, <c>az 123-27-02</c>).
/// </summary>
public static class BearingText
{
    internal const string Example = "N 45°30' E, S12-05-30W, due N or az 123-27-02";

    public static Parsed<Direction> Parse(string text)
    {
        var reader = new TokenReader(text, Example);
        var azimuth = reader.Problem is null ? ReadAzimuth(reader) : 0;
        return reader.Finish(() => Direction.FromAzimuthDegrees(Exact.Double(azimuth)));
    }

    /// <summary>A bearing to the nearest second: <c>N 45°30'00" E</c>.</summary>
    public static string Format(Direction direction)
    {
        var seconds = AzimuthSeconds(direction);
        const long quarter = DegreesText.SecondsPerCircle / 4;
        return seconds switch
        {
            <= quarter => Quadrant("N", seconds, "E"),
            <= 2 * quarter => Quadrant("S", 2 * quarter - seconds, "E"),
            <= 3 * quarter => Quadrant("S", seconds - 2 * quarter, "W"),
            _ => Quadrant("N", 4 * quarter - seconds, "W"),
        };
    }

    /// <summary>An azimuth to the nearest second, from 0°00'00" to 359°59'59".</summary>
    public static string FormatAzimuth(Direction direction) => DegreesText.Format(AzimuthSeconds(direction));

    private static string Quadrant(string from, long seconds, string toward) => $"{from} {DegreesText.Format(seconds)} {toward}";

    private static long AzimuthSeconds(Direction direction) =>
        DegreesText.WholeSeconds(direction.AzimuthDegrees) % DegreesText.SecondsPerCircle;

    private static decimal ReadAzimuth(TokenReader reader)
    {
        var first = reader.Next;
        if (reader.TakeWord("due")) return ReadCardinal(reader);
        if (reader.TakeWord("az", "azimuth")) return ReadPlainAzimuth(reader, named: true);
        if (first.Kind != TokenKind.Word) return ReadPlainAzimuth(reader, named: false);
        if (reader.TakeWord("N", "north")) return ReadQuadrant(reader, south: false);
        if (reader.TakeWord("S", "south")) return ReadQuadrant(reader, south: true);
        reader.Refuse(QuantityMessages.BearingStart(first));
        return 0;
    }

    private static decimal ReadCardinal(TokenReader reader)
    {
        if (reader.TakeWord("N", "north")) return 0;
        if (reader.TakeWord("E", "east")) return 90;
        if (reader.TakeWord("S", "south")) return 180;
        if (reader.TakeWord("W", "west")) return 270;
        reader.Refuse(QuantityMessages.CardinalExpected(reader.Next));
        return 0;
    }

    private static decimal ReadPlainAzimuth(TokenReader reader, bool named)
    {
        if (DegreesReader.Read(reader) is not { } angle) return 0;
        var position = angle.First.Position;
        if (!named && !angle.Marked) reader.Refuse(QuantityMessages.BareBearing(position, reader.WrittenFrom(angle.First)));
        if (angle.Degrees >= 360) reader.Refuse(QuantityMessages.FullCircle(position, reader.WrittenFrom(angle.First)));
        return angle.Degrees;
    }

    private static decimal ReadQuadrant(TokenReader reader, bool south)
    {
        if (DegreesReader.Read(reader) is not { } angle) return 0;
        if (angle.Degrees > 90) reader.Refuse(QuantityMessages.PastQuadrant(angle.First.Position, reader.WrittenFrom(angle.First)));
        if (ReadSide(reader) is not { } west) return 0;
        return (south, west) switch
        {
            (false, false) => angle.Degrees,
            (true, false) => 180 - angle.Degrees,
            (true, true) => 180 + angle.Degrees,
            (false, true) => (360 - angle.Degrees) % 360,
        };
    }

    /// <summary>True for west, false for east.</summary>
    private static bool? ReadSide(TokenReader reader)
    {
        if (reader.TakeWord("E", "east")) return false;
        if (reader.TakeWord("W", "west")) return true;
        reader.Refuse(QuantityMessages.BearingEnd(reader.Next));
        return null;
    }
}
