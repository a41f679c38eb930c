using CsCheck;
using Tautline.Engine.Pricing.Amounts;

namespace Tautline.Engine.Tests.Pricing;

public sealed class MoneyTests
{
    private static readonly Currency yen = new("JPY", 0);
    private static readonly Currency dinar = new("BHD", 3);

    private static Gen<T> OneOf<T>(params T[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static readonly Gen<Currency> currencies = OneOf(Currency.Dollar, yen, dinar);
    private static readonly Gen<decimal> exact = Gen.Select(Gen.Long[-9_000_000_000, 9_000_000_000], Gen.Int[0, 6], (n, d) => new decimal((int)(n % 1_000_000_000), (int)(n >> 40), 0, n < 0, (byte)d));
    private static readonly Gen<RoundingRule> rules = Gen.Select(
        OneOf(RoundedAt.Line, RoundedAt.Total), OneOf(Halves.Up, Halves.Even), OneOf(0m, 0.05m, 0.1m, 1m), (at, halves, step) => new RoundingRule(at, halves, step));

    /// <summary>Half cases of IEEE 754-2008, 4.3.1: ties to even and ties away from zero.</summary>
    [Theory]
    [InlineData("0.125", Halves.Up, "0.13")]
    [InlineData("0.125", Halves.Even, "0.12")]
    [InlineData("0.135", Halves.Even, "0.14")]
    [InlineData("-0.125", Halves.Up, "-0.13")]
    [InlineData("-0.125", Halves.Even, "-0.12")]
    [InlineData("2.675", Halves.Up, "2.68")] // a binary 2.675 lies under the half and would go to 2.67
    [InlineData("1.005", Halves.Up, "1.01")]
    public void HalvesGoAsTheRuleSays(string exactly, Halves halves, string rounded)
        => Assert.Equal(decimal.Parse(rounded, System.Globalization.CultureInfo.InvariantCulture), Money.Round(decimal.Parse(exactly, System.Globalization.CultureInfo.InvariantCulture), Currency.Dollar, halves).Amount);

    /// <summary>To the nearest five cents: 1 and 2 down, 3 and 4 up, 6 and 7 down, 8 and 9 up, as cash is rounded in Canada since the cent was withdrawn in 2013 (from memory).</summary>
    [Theory]
    [InlineData(1.01, 1.00)]
    [InlineData(1.02, 1.00)]
    [InlineData(1.03, 1.05)]
    [InlineData(1.04, 1.05)]
    [InlineData(1.06, 1.05)]
    [InlineData(1.07, 1.05)]
    [InlineData(1.08, 1.10)]
    [InlineData(1.09, 1.10)]
    public void CashGoesToTheNearestFiveCents(double total, double paid)
        => Assert.Equal((decimal)paid, new RoundingRule(RoundedAt.Line, Halves.Up, 0.05m).Payable(Money.Exactly((decimal)total, Currency.Dollar)).Amount);

    [Fact]
    public void AHundredInThreePartsAddsUp()
        => Assert.Equal([33.34m, 33.33m, 33.33m], Money.Exactly(100m, Currency.Dollar).Split([1, 1, 1]).Select(p => p.Amount));

    /// <summary>Ten seats over 21878, 9713, 4167, 3252 and 1065 votes by largest remainders: a division worked by hand, 5.461, 2.425, 1.040, 0.812, 0.266.</summary>
    [Fact]
    public void TheLargestRemaindersGetWhatIsLeft()
        => Assert.Equal([6m, 2m, 1m, 1m, 0m], Money.Exactly(10m, yen).Split([21878, 9713, 4167, 3252, 1065]).Select(p => p.Amount));

    [Fact]
    public void PartsOfAnyTotalByAnyWeightsSumToIt()
        => Gen.Select(exact, currencies, Gen.Decimal[0, 1000].List[1, 40]).Always((amount, currency, weights) =>
        {
            var total = Money.Round(amount, currency, Halves.Up);
            var parts = total.Split(weights);
            Assert.Equal(total, Money.Sum(parts, currency));
            Assert.All(parts, p => Assert.True(p.IsZero || p.Amount < 0 == total.Amount < 0));
        }, iter: 2000);

    [Fact]
    public void APartIsWithinOneSmallestUnitOfItsDue()
        => Gen.Select(Gen.Long[0, 10_000_000], Gen.Int[0, 500].List[1, 30]).Always((cents, weights) =>
        {
            if (weights.Sum() == 0) return;
            var total = Money.Exactly(cents / 100m, Currency.Dollar);
            var parts = total.Split([.. weights.Select(w => (decimal)w)]);
            for (var i = 0; i < parts.Count; i++)
                Assert.InRange(parts[i].Amount - total.Amount * weights[i] / weights.Sum(), -0.01m, 0.01m);
        }, iter: 1000);

    [Fact]
    public void LinesSumToTheirTotalUnderEveryRule()
        => Gen.Select(exact.List[0, 40], rules, currencies).Always((amounts, rule, currency) =>
        {
            var totalled = Totalled.Of(amounts, rule, currency);
            Assert.Equal(totalled.Total, Money.Sum(totalled.Lines, currency));
            Assert.Equal(totalled.Payable, totalled.Total + totalled.Cash);
            Assert.Equal(amounts.Count, totalled.Lines.Count);
            Assert.All(totalled.Lines.Zip(amounts), p => Assert.InRange(p.First.Amount - p.Second, -currency.Smallest, currency.Smallest));
            if (rule.At == RoundedAt.Total) Assert.InRange(totalled.Total.Amount - amounts.Sum(), -currency.Smallest / 2, currency.Smallest / 2);
            else Assert.All(totalled.Lines.Zip(amounts), p => Assert.InRange(p.First.Amount - p.Second, -currency.Smallest / 2, currency.Smallest / 2));
            if (rule.CashStep >= currency.Smallest) Assert.Equal(0, totalled.Payable.Amount % rule.CashStep);
        }, iter: 2000);

    [Fact]
    public void TwoCurrenciesAreNotAdded()
        => Assert.Throws<InvalidOperationException>(() => Money.Exactly(1, Currency.Dollar) + Money.Exactly(1, yen));

    [Fact]
    public void PartOfACentIsNoMoney() => Assert.Throws<ArgumentException>(() => Money.Exactly(1.005m, Currency.Dollar));

    [Theory]
    [InlineData("$1,234.56", "1234.56", "$")]
    [InlineData("1.234,56 \u20AC", "1234.56", "\u20AC")]
    [InlineData("1 234,5", "1234.5", "")]
    [InlineData("1'234.50", "1234.50", "")]
    [InlineData("USD 12", "12", "USD")]
    [InlineData("12.5 cad", "12.5", "CAD")]
    [InlineData("-$3.10", "-3.10", "$")]
    [InlineData("($3.10)", "-3.10", "$")]
    [InlineData("1,234,567", "1234567", "")]
    [InlineData("0.125", "0.125", "")]
    [InlineData("12,75", "12.75", "")]
    [InlineData(".85", "0.85", "")]
    public void AmountsAreReadAsPeopleWriteThem(string text, string value, string currency)
    {
        var read = MoneyText.Parse(text);
        Assert.Equal((decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture), currency, false), (read.Value, read.Currency, read.Unclear));
    }

    [Theory]
    [InlineData("1,234")]
    [InlineData("1.234")]
    public void ASingleMarkBeforeThreeDigitsIsUnclear(string text)
    {
        Assert.True(MoneyText.Parse(text).Unclear);
        Assert.Equal(1234m, MoneyText.Parse(text, text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Point : DecimalMark.Comma).Value);
        Assert.Equal(1.234m, MoneyText.Parse(text, text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point).Value);
    }

    [Theory]
    [InlineData("")]
    [InlineData("call")]
    [InlineData("12..5")]
    [InlineData("1,23,456.00")]
    [InlineData("3 @ 4.00")]
    [InlineData("$")]
    [InlineData("1e5")]
    [InlineData("99999999999999999999999999999999")]
    public void WhatIsNoAmountIsNotRead(string text) => Assert.Null(MoneyText.Parse(text).Value);

    [Fact]
    public void NoTextMakesTheReaderThrow() => Gen.String[Gen.Char["0123456789.,'$ -()eEUSD"], 0, 12].Always(t => { MoneyText.Parse(t); MoneyText.Parse(t, DecimalMark.Comma); }, iter: 3000);

    [Fact]
    public void WhatIsWrittenIsReadBack()
        => Gen.Select(Gen.Long[-100_000_000, 100_000_000], currencies).Always((units, currency) =>
        {
            var money = Money.Exactly(units * currency.Smallest, currency);
            Assert.Equal(money.Amount, MoneyText.Parse(MoneyText.Format(money), DecimalMark.Point).Value ?? MoneyText.Parse(MoneyText.Format(money).Replace(" BHD", "", StringComparison.Ordinal), DecimalMark.Point).Value);
        }, iter: 500);

    [Fact]
    public void RatesKeepTheirDecimals()
        => Assert.Equal(["$0.0425", "$12.50", "-$1,000.00"], new[] { 0.0425m, 12.5m, -1000m }.Select(r => MoneyText.Rate(r, Currency.Dollar)));
}
