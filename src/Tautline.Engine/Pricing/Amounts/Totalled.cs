namespace Tautline.Engine.Pricing.Amounts;

/// <summary>Lines and their total, rounded by a rule so that they add up on paper.</summary>
/// <param name="Lines">As printed, in the order of the exact amounts.</param>
/// <param name="Total">Their sum.</param>
/// <param name="Cash">What is added to the total, or taken off, for payment in coins.</param>
/// <param name="Payable">Total and cash difference together.</param>
public sealed record Totalled(IReadOnlyList<Money> Lines, Money Total, Money Cash, Money Payable)
{
    /// <param name="exact">Amounts that are not rounded yet.</param>
    public static Totalled Of(IReadOnlyList<decimal> exact, RoundingRule rule, Currency currency)
    {
        var lines = Printed(exact, rule, currency);
        var total = Money.Sum(lines, currency);
        var payable = rule.Payable(total);
        return new(lines, total, payable - total, payable);
    }

    private static IReadOnlyList<Money> Printed(IReadOnlyList<decimal> exact, RoundingRule rule, Currency currency)
        => rule.At == RoundedAt.Line
            ? [.. exact.Select(e => rule.Round(e, currency))]
            : [.. Shares.Brought(exact, rule.Round(exact.Sum(), currency).Amount, currency.Smallest).Select(e => Money.Exactly(e, currency))];
}
