using System.Globalization;
using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Documents.Words;

/// <summary>What a check allows, in words: the same on paper and on the screen.</summary>
public static class ToleranceText
{
    /// <summary>A length, or a difference of one, with its sign where it is below zero.</summary>
    public static string Length(PlanWords words, double metres) => (metres < 0 ? "−" : "") + words.Short(new Length(Math.Abs(metres)));

    public static string Degrees(double degrees) => degrees.ToString("0.##", CultureInfo.InvariantCulture) + "°";

    /// <param name="value">How one end is said.</param>
    /// <param name="ofPlan">True where the ends are differences from the plan.</param>
    public static string Of(Phrases say, double? least, double? most, Func<double, string> value, bool ofPlan)
    {
        string kind = (least, most) switch
        {
            (null, null) => "",
            ({ } a, { } b) when ofPlan && Math.Abs(a + b) < 1e-9 => "within",
            ({ }, { }) => "between",
            ({ } a, null) when ofPlan && a == 0 => "notLess",
            ({ }, null) => "least",
            _ => "most",
        };
        return kind.Length == 0 ? ""
            : say.Say("inspect.limit." + kind, ("a", least is { } low ? value(low) : ""), ("b", most is { } high ? value(high) : ""), ("plan", ofPlan ? say["inspect.ofPlan"] : "")).Trim();
    }

    public static string Source(Phrases say, Provenance from) => from.Confidence == Confidence.CommonPractice ? say["paper.practice"] : from.Source == "the plan" ? say["inspect.plan"] : SourceText.Text(from);
}
