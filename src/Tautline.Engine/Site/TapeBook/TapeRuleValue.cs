using System.Globalization;
using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>How a limit 'as specified' is written: a length, a volume in ft3, per cent, degrees, days, yes or no, or a plain number.</summary>
internal static class TapeRuleValue
{
    /// <summary>The value in SI, or null where the text is not written as this limit is, or is no value of it.</summary>
    public static double? Read(RuleKey rule, string text)
    {
        if (rule.Measure == RuleUnit.YesNo) return text.ToLowerInvariant() switch { "yes" => 1, "no" => 0, _ => null };
        var (suffix, si) = FormOf(rule);
        if (!text.EndsWith(suffix, StringComparison.OrdinalIgnoreCase)) return null;
        var figure = text[..^suffix.Length].TrimEnd();
        const NumberStyles plain = NumberStyles.AllowDecimalPoint;
        return double.TryParse(figure, plain, CultureInfo.InvariantCulture, out var value) && rule.Allows(value * si) ? value * si : null;
    }

    public static string Write(RuleKey rule, double value, UnitSystem units)
    {
        if (rule.Measure == RuleUnit.Length) return TapeLength.Write(new Length(value), units);
        if (rule.Measure == RuleUnit.YesNo) return value > 0 ? "yes" : "no";
        var (suffix, si) = FormOf(rule);
        return $"{(value / si).ToString("0.############", CultureInfo.InvariantCulture)}{suffix}";
    }

    /// <summary>How it is written, for a message: the base set's value where it has one.</summary>
    public static string Form(RuleKey rule)
        => Write(rule, RuleSets.Base.Find(rule.Key)?.Value ?? 1, UnitSystem.UsCustomary) + (rule.Measure == RuleUnit.YesNo ? " or no" : "");

    private static (string Suffix, double Si) FormOf(RuleKey rule) => rule.Measure switch
    {
        RuleUnit.Volume => (" ft3", 0.028316846592),
        RuleUnit.Angle => (" deg", 1),
        RuleUnit.Slope => ("%", 0.01),
        RuleUnit.Days => (" days", 1),
        _ => ("", 1),
    };
}
