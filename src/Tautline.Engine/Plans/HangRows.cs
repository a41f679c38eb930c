using Tautline.Engine.Fabric;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Plans;

/// <summary>How a run is hung, in labelled sentences: pull, anchor, tail, rolls and splices, seat, cuts.</summary>
public static class HangRows
{
    /// <summary>The sentences of one run, in the order they are worked.</summary>
    public static IEnumerable<(string Label, string Text)> Of(Plan plan, int line, int index, PlanWords words)
    {
        string Mark(int post) => PlanWords.Mark(line, plan.Lines[line].Posts[post]);
        var run = plan.Lines[line].Runs[index];
        var hang = run.Hang;
        var ends = string.Join(", ", hang.Pulls.Select(p => $"to {Mark(p.To)} ({words.Long(p.Fabric)})"));
        yield return ("pull", $"{HangWords.Method(hang, words.Units)}; tie off at {Mark(hang.FirstTie)}, then {ends}"
                              + (hang.Pulls.Count > 1 ? "; each but the last on a temporary bar, tied behind it" : ""));
        if (hang.Anchor is { } anchor) yield return ("anchor", $"chain the puller to {Mark(anchor)}, braced and its concrete cured; never to a line post");
        yield return ("tail", $"{words.Short(hang.Tail)} past the last terminal to pull on; take pickets off only at the last end");
        foreach (var (feed, width) in RollFeeds.Of(plan, plan.Lines[line], run).Select((f, i) => (f, i)))
            yield return (plan.Specs.First(s => s.Id == run.Spec).Widths > 1 ? $"rolls, width {width + 1}" : "rolls", Feed(feed, words));
        foreach (var sentence in HangWords.Seat(HangCards.Seat(plan, line, index), words.Units)) yield return ("seat", sentence);
        if (run.Telescoping.Metres > 0) yield return ("edges", $"top and bottom slide past each other by {words.Short(run.Telescoping)} from end to end");
        for (var end = 0; end < 2; end++)
            if (HangCards.Cut(plan, line, index, end) is { Columns: > 0 } cut)
                yield return ($"cut at {Mark(end == 0 ? run.FromPost : run.ToPost)}", $"{cut.Words[0]} {HangWords.Ahead(run, end == 0, "")} See its cut card.");
    }

    /// <summary>The pieces of one pull in the order of the line, with its splices.</summary>
    public static string Feed(PullFeed feed, PlanWords words)
    {
        if (feed.Pieces.Count == 0) return "no fabric is in stock";
        var pieces = feed.Pieces.Select(p => $"roll {p.Roll + 1} ({PlanWords.Range(p.Pickets.Low, p.Pickets.High)} pickets{Turn(p.Turn)})");
        var splices = feed.Splices.Select(s => $"at {Range(s.Station, words.Station)} {Match(s)}").ToList();
        return string.Join(", ", pieces) + (splices.Count == 0 ? "; no splice" : $"; splice {string.Join(", ", splices)}");
    }

    private static string Turn(PieceTurn turn) => turn switch
    {
        PieceTurn.OtherEndFirst => ", unrolled from its other end",
        PieceTurn.EndForEnd => ", turned end for end",
        PieceTurn.TopForBottom => ", turned top for bottom",
        _ => "",
    };

    private static string Match(FabricSplice splice) => (splice.Match switch
    {
        SpliceMatch.Matches => "whole to half",
        SpliceMatch.OnePicket => "with one picket off or on",
        _ => "(whole or half: resolve on site, one picket allowed)",
    }) + (splice.Certain ? "" : ", if it is needed");

    /// <summary>A length that is known within a range: '4' 2"', or '4' 2" to 4' 6"'.</summary>
    public static string Range(NanometreRange range, Func<Length, string> show)
        => range.IsExact ? show(Length.FromNanometres(range.Low)) : $"{show(Length.FromNanometres(range.Low))} to {show(Length.FromNanometres(range.High))}";
}
