using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

public static partial class HangWords
{
    /// <summary>Bands or post ties, limit and practice side by side.</summary>
    /// <param name="thing">What is counted, one of it: 'band' or 'tie'.</param>
    /// <returns>A sentence each: what is held, what the other count says, what crews do.</returns>
    public static IReadOnlyList<string> Fastenings(FasteningChoice choice, string thing, UnitSystem units)
    {
        var words = new PlanWords(units);
        List<string> lines = [$"{PlanWords.Count(choice.Held.Count, thing)}: {DiamondText.Positions(choice.Held)} (at most {words.Short(choice.HeldSpace)}, limit {words.Short(choice.Limit.Length)})."];
        if (choice.Tighter != Tighter.Neither) lines.Add(Both(choice));
        if (choice.Practice is { } practice) lines.Add(Practice(practice, choice.PracticeSpace!.Value, choice.PracticeOverLimit, choice, thing, words));
        return lines;
    }

    /// <summary>Rings or rail ties, the same.</summary>
    /// <param name="thing">'ring' or 'rail tie'.</param>
    public static IReadOnlyList<string> Fastenings(AlongChoice choice, string thing, UnitSystem units)
    {
        var words = new PlanWords(units);
        List<string> lines = [$"A {thing} every {PlanWords.Count(choice.Every, "diamond")} ({Range(choice.SpaceLow, choice.SpaceHigh, words)}, limit {words.Short(choice.Limit.Length)})."];
        if (choice is { PracticeEvery: { } every, PracticeLow: { } low, PracticeHigh: { } high })
            lines.Add($"Practice: every {every} ({Range(low, high, words)}){Over(choice.PracticeOverLimit, choice.Limit.Length, words)} (common practice, verify).");
        return lines;
    }

    private static string Both(FasteningChoice choice)
        => $"By inches {choice.ByInches}, by whole diamonds {choice.ByDiamonds}: the tighter holds.";

    private static string Practice(FasteningSet set, Length space, bool over, FasteningChoice choice, string thing, PlanWords words)
        => $"Practice: {PlanWords.Count(set.Count, thing)}, {DiamondText.Spaces(set)} ({words.Short(space)}){Over(over, choice.Limit.Length, words)} (common practice, verify).";

    private static string Over(bool over, Length limit, PlanWords words) => over ? $", exceeds the {words.Short(limit)} limit" : "";

    private static string Range(Length low, Length high, PlanWords words)
        => Between(words.Short(low), words.Short(high));
}
