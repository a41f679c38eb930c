using System.Globalization;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Catalog;

/// <summary>A limit in words: '10 ft', '15 in', '5 deg', '7 days', 'up to 100 ft'.</summary>
public static class LimitText
{
    /// <summary>The value with its unit, in the user's units.</summary>
    public static string Value(RuleKey rule, double value, UnitSystem units) => rule.Measure switch
    {
        RuleUnit.Length => Length(value, units),
        RuleUnit.Volume => ExprText.Value(value, Unit.Volume, units),
        RuleUnit.Slope => $"{Number(value * 100)} %",
        RuleUnit.Angle => $"{Number(value)} deg",
        RuleUnit.Days => $"{Number(value)} {(value == 1 ? "day" : "days")}",
        RuleUnit.YesNo => value > 0 ? "yes" : "no",
        _ => Number(value),
    };

    /// <summary>Where a step holds; empty for a limit of one value.</summary>
    public static string Where(RuleKey rule, Step? step, UnitSystem units) => step switch
    {
        null => "",
        { UpTo: { } end, Included: var included } => $"{rule.SteppedBy} {(included ? "up to" : "under")} {End(end, units)}",
        _ => $"any {(rule.SteppedBy == "leaf" ? "wider leaf" : rule.SteppedBy)}",
    };

    /// <summary>Name of the unit the value itself is in.</summary>
    public static string SiUnit(RuleKey rule) => rule.Measure switch
    {
        RuleUnit.Length => "m",
        RuleUnit.Volume => "m3",
        RuleUnit.Slope => "ratio",
        RuleUnit.Angle => "deg",
        RuleUnit.Days => "days",
        RuleUnit.YesNo => "yes-no",
        RuleUnit.Count => "count",
        _ => "number",
    };

    /// <summary>An end printed in metres is said in metres.</summary>
    private static string End(double metres, UnitSystem units)
    {
        var tenths = metres * 10;
        return Math.Abs(tenths - Math.Round(tenths)) < 1e-9 ? $"{Number(metres)} m" : Length(metres, units);
    }

    /// <summary>Whole feet from 4 ft on are said in feet, whole metres in metres.</summary>
    private static string Length(double metres, UnitSystem units)
    {
        var (size, name) = units == UnitSystem.UsCustomary ? (new Length(metres).Feet, "ft") : (metres, "m");
        var whole = size >= (name == "ft" ? 4 : 1) - 1e-9 && Math.Abs(size - Math.Round(size)) < 1e-9;
        return whole ? $"{Math.Round(size).ToString("#,0", CultureInfo.InvariantCulture)} {name}" : ExprText.Value(metres, Unit.Length, units);
    }

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
