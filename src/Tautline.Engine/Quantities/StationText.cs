using System.Globalization;

namespace Tautline.Engine.Quantities;

/// <summary>
/// Stations along a line: <c>4+32.5</c> is 432.5 ft in US units (hundreds of feet), <c>0+131.8</c> is 131.8 m in
/// metric (thousands of metres). The feet are international.
/// </summary>
public static class StationText
{
    public static Parsed<Length> Parse(string text, UnitSystem units)
    {
        var style = Style.Of(units);
        var reader = new TokenReader(text, style.Example);
        reader.TakeWord("sta", "station");
        var negative = reader.Take(TokenKind.Dash);
        var nanometres = ReadStation(reader, style) * style.Nanometres;
        if (nanometres > Exact.LargestNanometres) reader.Refuse(QuantityMessages.TooLong());
        return reader.Finish(() => Exact.FromNanometres(negative ? -nanometres : nanometres));
    }

    /// <summary>Rounded halves away from zero and carried: 499.99 ft with one decimal is <c>5+00.0</c>.</summary>
    /// <param name="station">Distance from the start of the line; before the start it is written with a minus.</param>
    /// <param name="units">US hundreds of feet or metric thousands of metres.</param>
    /// <param name="decimals">0 to 15.</param>
    public static string Format(Length station, UnitSystem units, int decimals)
    {
        var style = Style.Of(units);
        var rounded = Math.Round(station.Nanometres / style.Nanometres, decimals, MidpointRounding.AwayFromZero);
        var size = Math.Abs(rounded);
        var full = decimal.Floor(size / style.Full);
        var digits = new string('0', style.PlusDigits) + (decimals > 0 ? "." + new string('0', decimals) : "");
        var plus = (size - full * style.Full).ToString(digits, CultureInfo.InvariantCulture);
        return Exact.Sign(rounded) + full.ToString("0", CultureInfo.InvariantCulture) + "+" + plus;
    }

    /// <summary>Feet or metres from the start; 0 with a problem set if it cannot be read.</summary>
    private static decimal ReadStation(TokenReader reader, Style style)
    {
        if (reader.Problem is not null || reader.Number() is not { } full) return 0;
        if (!reader.Take(TokenKind.Plus))
        {
            reader.Refuse(QuantityMessages.PlusMissing(reader.Next.Position, reader.WrittenFrom(full), style.Example));
            return 0;
        }
        if (reader.Number() is not { } plus) return 0;
        if (Problem(full, plus, style) is { } problem) reader.Refuse(problem);
        return full.Number * style.Full + plus.Number;
    }

    private static ParseProblem? Problem(TextToken full, TextToken plus, Style style)
    {
        if (!full.IsWhole) return QuantityMessages.StationWhole(full);
        var digits = plus.Text.Split('.')[0].Length;
        if (digits == style.PlusDigits) return null;
        return digits == style.Other.PlusDigits
            ? QuantityMessages.OtherStation(plus, style.Name, style.Other.Name, style.Example)
            : QuantityMessages.PlusDigits(plus, style.PlusDigits, style.Example);
    }

    private sealed record Style(string Name, int PlusDigits, decimal Full, decimal Nanometres, string Example)
    {
        private static readonly Style Us = new("US", 2, 100, Length.NmPerFoot, "4+32.5 for 432.5 ft");
        private static readonly Style Metric = new("metric", 3, 1000, Exact.NmPerMetre, "0+131.8 for 131.8 m");

        public Style Other => PlusDigits == 2 ? Metric : Us;

        public static Style Of(UnitSystem units) => units switch
        {
            UnitSystem.UsCustomary => Us,
            UnitSystem.Metric => Metric,
            _ => throw new ArgumentOutOfRangeException(nameof(units), units, "Not a system of units."),
        };
    }
}
