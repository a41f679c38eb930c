namespace Tautline.Engine.Pricing.Amounts;

/// <summary>
/// An amount in whole smallest units of its currency. Exact amounts on the way to it are plain decimals; <see cref="Round"/> is the one way in. Amounts of two
/// currencies are never added or compared.
/// </summary>
public readonly record struct Money
{
    private Money(decimal amount, Currency currency) => (Amount, Currency) = (amount, currency);

    public decimal Amount { get; }

    public Currency Currency { get; }

    public bool IsZero => Amount == 0;

    public static Money Zero(Currency currency) => new(0, currency);

    /// <summary>An amount that has no part of a smallest unit.</summary>
    /// <exception cref="ArgumentException">It has.</exception>
    public static Money Exactly(decimal amount, Currency currency)
        => decimal.Round(amount, currency.Digits) == amount ? new(amount, currency) : throw new ArgumentException($"{amount} is not in whole smallest units of {currency}", nameof(amount));

    public static Money Round(decimal exact, Currency currency, Halves halves) => new(
        decimal.Round(exact, currency.Digits, halves == Halves.Even ? MidpointRounding.ToEven : MidpointRounding.AwayFromZero), currency);

    /// <summary>The whole number nearest to a / step.</summary>
    internal static decimal Nearest(decimal a, decimal step, Halves halves)
        => decimal.Round(a / step, 0, halves == Halves.Even ? MidpointRounding.ToEven : MidpointRounding.AwayFromZero);

    public static Money operator +(Money a, Money b) => new(a.Amount + b.Amount, Same(a, b));

    public static Money operator -(Money a, Money b) => new(a.Amount - b.Amount, Same(a, b));

    public static Money operator -(Money a) => new(-a.Amount, a.Currency);

    public static bool operator <(Money a, Money b) => Same(a, b) == a.Currency && a.Amount < b.Amount;

    public static bool operator >(Money a, Money b) => b < a;

    /// <summary>The sum; zero for none.</summary>
    public static Money Sum(IEnumerable<Money> terms, Currency currency) => terms.Aggregate(Zero(currency), (sum, term) => sum + term);

    /// <summary>
    /// Parts in proportion to weights, in whole smallest units, that sum to this amount exactly: each gets what it is due rounded towards zero, and the units left go
    /// to those that are owed most, of equals to the first. Where all weights are zero the parts are equal.
    /// </summary>
    /// <param name="weights">At least one, none below zero.</param>
    /// <exception cref="ArgumentException">There is none, or one is below zero.</exception>
    public IReadOnlyList<Money> Split(IReadOnlyList<decimal> weights)
    {
        if (weights.Count == 0 || weights.Any(w => w < 0)) throw new ArgumentException("a split needs weights, none below zero", nameof(weights));
        var currency = Currency;
        return [.. Shares.Of(Amount, currency.Smallest, weights).Select(p => new Money(p, currency))];
    }

    public override string ToString() => MoneyText.Format(this);

    private static Currency Same(Money a, Money b)
        => a.Currency == b.Currency ? a.Currency : throw new InvalidOperationException($"{a.Currency} and {b.Currency} are not added or compared");
}
