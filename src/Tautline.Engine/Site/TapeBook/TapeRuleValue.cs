using System.Globalization;
using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>How a limit 'as specified' is written: a length, a volume in ft3, per cent, degrees, or a plain number.</summary>
internal static class TapeRuleValue
{
    /// <summary>The value in SI, or null where the text is not written as this limit is.</summary>
    public static double? Read(Limit rule, string text)
    {
        var (suffix, si) = FormOf(rule);
        if (!text.EndsWith(suffix, StringComparison.OrdinalIgnoreCase)) return null;
        var figure = text[..^suffix.Length].TrimEnd();
        const NumberStyles plain = NumberStyles.AllowDecimalPoint;
        return double.TryParse(figure, plain, CultureInfo.InvariantCulture, out var value) && value > 0 && double.IsFinite(value * si) ? value * si : null;
    }

    public static string Write(Limit rule, double value, UnitSystem units)
    {
        if (rule.Unit == Unit.Length) return TapeLength.Write(new Length(value), units);
        var (suffix, si) = FormOf(rule);
        return $"{(value / si).ToString("0.############", CultureInfo.InvariantCulture)}{suffix}";
    }

    private static (string Suffix, double Si) FormOf(Limit rule)
        => rule.Unit == Unit.Volume ? (" ft3", 0.028316846592)
            : rule.Key == "terminal.turn" ? (" deg", 1)
            : rule.Key == "terminal.gradeChange" ? ("%", 0.01)
            : ("", 1);
}
