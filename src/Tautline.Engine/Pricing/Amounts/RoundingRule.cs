namespace Tautline.Engine.Pricing.Amounts;

/// <summary>Which way an amount goes that lies halfway between two smallest units.</summary>
public enum Halves
{
    /// <summary>Away from zero, as people round: 0.125 to 0.13, -0.125 to -0.13.</summary>
    Up,

    /// <summary>To the even neighbour: 0.125 to 0.12, 0.135 to 0.14.</summary>
    Even,
}

/// <summary>What is rounded to the smallest unit of the currency.</summary>
public enum RoundedAt
{
    /// <summary>Each line; a total is the sum of what is printed.</summary>
    Line,

    /// <summary>The exact sum once; the printed lines are brought to it, none by more than one smallest unit.</summary>
    Total,
}

/// <summary>How money is rounded. All of it is in the currency's smallest unit but what is paid in cash.</summary>
/// <param name="CashStep">What is to pay goes to the nearest multiple, the difference standing on a line of its own; 0 where it is not paid in coins.</param>
public readonly record struct RoundingRule(RoundedAt At, Halves Halves, decimal CashStep)
{
    public static RoundingRule Usual => new(RoundedAt.Line, Halves.Up, 0);

    /// <summary>An exact amount in whole smallest units.</summary>
    public Money Round(decimal exact, Currency currency) => Money.Round(exact, currency, Halves);

    /// <summary>What is paid for a total.</summary>
    public Money Payable(Money total)
        => CashStep > 0 ? Round(Money.Nearest(total.Amount, CashStep, Halves) * CashStep, total.Currency) : total;
}
