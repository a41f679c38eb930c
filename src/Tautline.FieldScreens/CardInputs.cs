using System.Globalization;
using Tautline.Engine.Quantities;

namespace Tautline.FieldScreens;

/// <summary>What is chosen and typed on the cards: it stays while one card is closed and another opened, so that nothing is typed twice.</summary>
public sealed class CardInputs
{
    private readonly Dictionary<string, string> typed = [];

    public (int Line, int Run) Run { get; set; }

    /// <summary>A terminal: index of its line and of the post there.</summary>
    public (int Line, int Post) Post { get; set; }

    public (int Line, int Gate) Gate { get; set; }

    public string Text(string key) => typed.GetValueOrDefault(key, "");

    public void Type(string key, string text) => typed[key] = text;

    public bool IsEmpty(string key) => Text(key).Trim().Length == 0;

    /// <summary>Nothing where the field is empty or holds no length; see <see cref="Fault"/>.</summary>
    /// <param name="small">Inches or millimetres where no unit is written; else feet or metres.</param>
    public Length? Length(string key, UnitSystem units, bool small) => IsEmpty(key) || LengthText.Parse(Text(key), Bare(units, small)) is not { Ok: true } read ? null : read.Value;

    /// <summary>Why what was typed is no length; empty where it is one or nothing was typed.</summary>
    public string Fault(string key, UnitSystem units, bool small)
        => IsEmpty(key) || LengthText.Parse(Text(key), Bare(units, small)) is not { Ok: false } read ? "" : $"{read.Problem.Message} {read.Problem.Hint}";

    /// <summary>Nothing where the field is empty or holds no number from zero up.</summary>
    public decimal? Number(string key)
        => decimal.TryParse(Text(key).Trim().TrimEnd('%').Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) && number < 1_000_000 ? number : null;

    private static LengthUnit Bare(UnitSystem units, bool small) => (units, small) switch
    {
        (UnitSystem.Metric, true) => LengthUnit.Millimetre,
        (UnitSystem.Metric, false) => LengthUnit.Metre,
        (_, true) => LengthUnit.Inch,
        _ => LengthUnit.Foot,
    };
}
