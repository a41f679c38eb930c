namespace Tautline.Engine.Pricing.Amounts;

/// <summary>
/// Splitting that adds up, by largest remainders (the method of apportioning seats that Hamilton proposed in 1792: everyone gets the whole units due, what is left goes to
/// the largest fractions).
/// </summary>
public static class Shares
{
    /// <summary>Parts of a total in whole steps, in proportion to the weights; their sum is the total.</summary>
    /// <param name="total">A whole number of steps.</param>
    /// <param name="step">Above zero.</param>
    /// <param name="weights">At least one, none below zero.</param>
    public static decimal[] Of(decimal total, decimal step, IReadOnlyList<decimal> weights)
    {
        var whole = weights.Sum();
        var units = Math.Abs(total) / step;
        var due = weights.Select(w => whole == 0 ? units / weights.Count : units * (w / whole)).ToArray();
        var parts = Bring(due, units);
        return [.. parts.Select(p => total < 0 ? -p * step : p * step)];
    }

    /// <summary>Amounts in whole steps that sum to a total, none moved by more than a step; the total is the sum of the exact ones rounded either way.</summary>
    public static decimal[] Brought(IReadOnlyList<decimal> exact, decimal total, decimal step)
        => [.. Bring([.. exact.Select(e => e / step)], total / step).Select(p => p * step)];

    private static decimal[] Bring(decimal[] due, decimal units)
    {
        var parts = Array.ConvertAll(due, decimal.Floor);
        var left = (int)(units - parts.Sum());
        // A last digit lost in a division may leave one unit too few or too many: whoever is owed least gives it back.
        var owed = Enumerable.Range(0, due.Length).OrderByDescending(i => due[i] - parts[i]).ThenBy(i => i).ToArray();
        for (var i = 0; i < left; i++) parts[owed[i % owed.Length]] += 1;
        for (var i = 0; i < -left; i++) parts[owed[^(1 + i % owed.Length)]] -= 1;
        return parts;
    }
}
