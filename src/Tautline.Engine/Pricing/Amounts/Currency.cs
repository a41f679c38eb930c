namespace Tautline.Engine.Pricing.Amounts;

/// <summary>A currency by its ISO 4217 letters, with how many decimals its smallest unit has. Equal by both.</summary>
/// <param name="Code">Three capital letters.</param>
/// <param name="Digits">Decimals of the smallest unit: 2 for a dollar's cents, 0 for a yen.</param>
public readonly record struct Currency(string Code, int Digits)
{
    private static readonly Dictionary<string, (int Digits, string Sign)> known = new(StringComparer.Ordinal)
    {
        // Digits by ISO 4217 (list one), from memory.
        ["USD"] = (2, "$"),
        ["CAD"] = (2, "$"),
        ["AUD"] = (2, "$"),
        ["NZD"] = (2, "$"),
        ["MXN"] = (2, "$"),
        ["EUR"] = (2, "\u20AC"),
        ["GBP"] = (2, "\u00A3"),
        ["CHF"] = (2, ""),
        ["SEK"] = (2, ""),
        ["NOK"] = (2, ""),
        ["DKK"] = (2, ""),
        ["JPY"] = (0, "\u00A5"),
    };

    public static Currency Dollar => new("USD", 2);

    /// <summary>The codes this build knows.</summary>
    public static IReadOnlyList<string> Codes { get; } = [.. known.Keys.Order(StringComparer.Ordinal)];

    /// <summary>Nothing for a code that is not known.</summary>
    public static Currency? Find(string code) => known.TryGetValue(code, out var row) ? new(code, row.Digits) : null;

    /// <summary>The sign before an amount; empty where the code is written instead.</summary>
    public string Sign => Code is not null && known.TryGetValue(Code, out var row) ? row.Sign : "";

    /// <summary>One of the smallest units, such as 0.01.</summary>
    public decimal Smallest => Digits switch { 0 => 1m, 1 => 0.1m, 2 => 0.01m, 3 => 0.001m, _ => 0.0001m };

    public override string ToString() => Code ?? "";
}
