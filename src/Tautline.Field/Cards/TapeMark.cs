using Tautline.Engine.Quantities;

namespace Tautline.Field.Cards;

/// <summary>What a crew reads off a tape. Each mark is rounded from the start of the tape, so that what is rounded does not add up.</summary>
public static class TapeMark
{
    /// <summary>To half an inch, or to half a centimetre.</summary>
    public static string Text(Length fromStart, UnitSystem units) => units == UnitSystem.Metric
        ? LengthText.Metric(Length.FromMillimetres(5 * Math.Round(fromStart.Metres * 200, MidpointRounding.AwayFromZero)))
        : LengthText.FeetInches(fromStart, 2);
}
