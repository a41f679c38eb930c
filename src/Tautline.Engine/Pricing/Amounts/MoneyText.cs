using System.Globalization;

namespace Tautline.Engine.Pricing.Amounts;

/// <summary>What came of reading an amount of money.</summary>
/// <param name="Value">Nothing where it cannot be read.</param>
/// <param name="Currency">The code or sign that stood with it; empty without one.</param>
/// <param name="Unclear">True where a single separator before three digits may mark thousands or decimals: '1,234'.</param>
public readonly record struct AmountReading(decimal? Value, string Currency, bool Unclear);

/// <summary>Which mark parts whole units from decimals.</summary>
public enum DecimalMark
{
    /// <summary>By the amount itself; where it does not tell, it is unclear.</summary>
    AsFound,
    Point,
    Comma,
}

/// <summary>Amounts as people write them. The same text in every culture.</summary>
public static class MoneyText
{
    private const decimal Largest = 1_000_000_000_000m;

    private static readonly string[] signs = ["$", "\u20AC", "\u00A3", "\u00A5", "US$", "CA$", "A$"];

    /// <summary>'$1,234.56'; with the code after it where the currency has no sign.</summary>
    public static string Format(Money money) => Format(money.Amount, money.Currency, money.Currency.Digits);

    /// <summary>A rate or a unit price with up to six decimals, at least as many as the currency has: '$0.0425'.</summary>
    public static string Rate(decimal amount, Currency currency)
    {
        var digits = currency.Digits;
        while (digits < 6 && decimal.Round(amount, digits) != amount) digits++;
        return Format(amount, currency, digits);
    }

    private static string Format(decimal amount, Currency currency, int digits)
    {
        var number = Math.Abs(amount).ToString($"N{digits}", CultureInfo.InvariantCulture);
        var minus = amount < 0 ? "-" : "";
        return currency.Sign.Length > 0 ? $"{minus}{currency.Sign}{number}" : currency.Code is { Length: > 0 } code ? $"{minus}{number} {code}" : minus + number;
    }

    /// <summary>
    /// Reads '$1,234.56', '1.234,56 EUR', '1 234,56', "1'234.50", '(12.00)' or '-12'. Never throws.
    /// </summary>
    public static AmountReading Parse(string text, DecimalMark mark = DecimalMark.AsFound)
    {
        var rest = text.Trim();
        var negative = false;
        if (rest is ['(', .., ')']) (negative, rest) = (true, rest[1..^1].Trim());
        var currency = TakeCurrency(ref rest);
        if (rest is ['-' or '\u2212', ..]) (negative, rest) = (!negative, rest[1..].Trim());
        else if (rest is ['+', ..]) rest = rest[1..].Trim();
        if (currency.Length == 0) currency = TakeCurrency(ref rest);
        var (value, unclear) = Number(rest, mark);
        return new(value is { } v && v <= Largest ? negative ? -v : v : null, currency, unclear);
    }

    private static string TakeCurrency(ref string rest)
    {
        foreach (var sign in signs.OrderByDescending(s => s.Length).Concat(Currency.Codes))
        {
            if (rest.StartsWith(sign, StringComparison.OrdinalIgnoreCase))
            {
                rest = rest[sign.Length..].Trim();
                return sign;
            }
            if (!rest.EndsWith(sign, StringComparison.OrdinalIgnoreCase)) continue;
            rest = rest[..^sign.Length].Trim();
            return sign;
        }
        return "";
    }

    private static (decimal? Value, bool Unclear) Number(string text, DecimalMark mark)
    {
        if (text.Length == 0 || !text.All(c => char.IsAsciiDigit(c) || IsMark(c)) || !text.Any(char.IsAsciiDigit)) return (null, false);
        var last = text.LastIndexOfAny(['.', ',']);
        var (at, unclear) = mark switch
        {
            DecimalMark.Point => (OnlyOne(text, '.'), false),
            DecimalMark.Comma => (OnlyOne(text, ','), false),
            _ => Found(text, last),
        };
        if (at < -1) return (null, false);
        var (whole, part) = at < 0 ? (text, "") : (text[..at], text[(at + 1)..]);
        if (!Grouped(whole) || !part.All(char.IsAsciiDigit)) return (null, false);
        var digits = string.Concat(whole.Where(char.IsAsciiDigit));
        return decimal.TryParse($"{digits}.{part}0", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? (value, unclear) : (null, false);
    }

    private static bool IsMark(char c) => c is '.' or ',' or '\'' or '\u2019' or ' ' or '\u00A0' or '\u202F';

    /// <summary>Where the mark stands; -1 for none, less where it stands twice.</summary>
    private static int OnlyOne(string text, char mark) => text.IndexOf(mark) is var at && at == text.LastIndexOf(mark) ? at : -2;

    /// <summary>Of two marks the last parts the decimals; one alone does where it cannot mark thousands.</summary>
    private static (int At, bool Unclear) Found(string text, int last)
    {
        if (last < 0) return (-1, false);
        var once = text.IndexOf(text[last]) == last;
        if (!once) return (-1, false); // 1,234,567
        var other = text[..last].Any(c => IsMark(c) && c != text[last]);
        var three = text.Length - last - 1 == 3;
        if (other || !three || last > 3 || last == 0 || text[0] == '0') return (last, false);
        return (last, true);
    }

    /// <summary>Whole units: digits alone, or groups of three parted by one kind of mark.</summary>
    private static bool Grouped(string whole)
    {
        var marks = whole.Where(IsMark).Distinct().ToList();
        if (marks.Count == 0) return true;
        if (marks.Count > 1) return false;
        var groups = whole.Split(marks[0]);
        return groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3);
    }
}
