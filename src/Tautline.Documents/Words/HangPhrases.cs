using System.Globalization;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;

namespace Tautline.Documents.Words;

/// <summary>Cuts and stacks in the words of a crew, the same on paper and on a phone.</summary>
public static class HangPhrases
{
    /// <summary>Whole or half: 4, 2½.</summary>
    public static string Diamonds(double diamonds)
    {
        long halves = (long)Math.Round(diamonds * 2);
        string whole = (halves / 2).ToString(CultureInfo.InvariantCulture);
        return halves % 2 == 0 ? whole : halves / 2 == 0 ? "½" : whole + "½";
    }

    /// <summary>What a run is pulled with, and why so.</summary>
    public static string Method(this Phrases say, RunHang hang, PlanWords words)
    {
        string pullers = say[hang.Pullers > 1 ? "paper.hang.twoPullers" : "paper.hang.onePuller"];
        string bar = hang.PullBar is { } wide ? say.Say("paper.hang.bar", ("wide", words.Short(wide)), ("pullers", pullers)) : "";
        string why = hang.Reason switch
        {
            HangReason.Wet => say["paper.hang.wet"],
            HangReason.Steep => say["paper.hang.steep"],
            HangReason.Stated => say["paper.hang.stated"],
            _ => "",
        };
        return say[hang.Method switch { HangMethod.Machine => "paper.hang.machine", HangMethod.Hand => "paper.hang.hand", _ => "paper.hang.short" }] + bar + why;
    }

    /// <summary>A cut, step by step.</summary>
    public static IEnumerable<string> Cut(this Phrases say, BiasCut cut)
    {
        if (cut.Dressed)
        {
            yield return say[cut.Columns == 0 ? "paper.cut.straight" : "paper.cut.nearly"];
            if (cut.Columns != 0) yield return say[cut.LongEdge == LongEdge.Top ? "paper.cut.dressBottom" : "paper.cut.dressTop"];
            yield break;
        }

        if (!cut.Cuttable)
        {
            yield return say.Say("paper.cut.cannot", ("n", cut.Columns), ("rows", cut.Rows));
            yield break;
        }

        string way = say[cut.StepsOut ? "paper.cut.toTerminal" : "paper.cut.toRoll"];
        yield return cut.StepsOut ? say.Say("paper.cut.beginIn", ("n", cut.Columns)) : say["paper.cut.beginEnd"];
        double last = 0;
        foreach (double crossing in cut.Crossings)
        {
            yield return last == 0
                ? say.Say("paper.cut.first", ("n", Diamonds(crossing)), ("way", way))
                : say.Say("paper.cut.more", ("n", Diamonds(crossing - last)), ("at", Diamonds(crossing)), ("way", way));
            last = crossing;
        }

        yield return say.Say("paper.cut.out", ("n", Diamonds(cut.Rows - last)));
    }

    /// <summary>What holds at every step of such a cut; nothing for one that is straight or cannot be made.</summary>
    public static IReadOnlyList<string> CutNotes(this Phrases say, BiasCut cut)
        => cut.Dressed || !cut.Cuttable ? [] : [say[cut.First == FirstInterlock.Unknown ? "paper.cut.nearest" : "paper.cut.each"], say["paper.cut.leave"]];

    /// <summary>A step of sliding on.</summary>
    public static string Slide(this Phrases say, StackItem item)
    {
        string thing = say.Count("paper.stack." + item.Kind.ToString(), item.Count);
        string at = item.Diamonds.Count > 0 ? " " + say.Say("paper.stack.at", ("list", string.Join(", ", item.Diamonds.Select(Diamonds)))) : "";
        string[] marks = [.. item.Name.Split("toward ").Skip(1).Select(m => m.Split(' ')[0].TrimEnd(','))];
        return thing + (marks.Length > 0 ? $" ({say.Say("paper.toward", ("mark", string.Join(", ", marks)))})" : "") + at;
    }

    public static string Moved(this Phrases say, StackMove move) => say.Say(
        move.To > move.From ? "paper.stack.down" : "paper.stack.up", ("from", Diamonds(move.From)), ("by", Diamonds(Math.Abs(move.To - move.From))), ("to", Diamonds(move.To)));
}
