using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Site;

namespace Tautline.Cli.Hang;

/// <summary>The hang plan for people: run by run, then the rolls.</summary>
internal static class HangText
{
    public static string Write(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        foreach (var spec in plan.Basis.Specs) Spec(spec, words, paper);
        for (var line = 0; line < plan.Lines.Count; line++) Line(plan, line, words, paper);
        RollText.Write(plan, words, paper);
        paper.Heading("On every pull (common practice)");
        paper.Labelled(HangWords.EveryPull.Select(s => ("-", s)), 0);
        paper.Heading("Caution");
        paper.Line(Cautions.Tension);
        return paper.ToString();
    }

    private static void Spec(ResolvedSpec spec, PlanWords words, Paper paper)
    {
        paper.Heading($"Spec {spec.Spec.Id}: fabric {HangWords.CallOut(spec)}, fastened on level ground");
        paper.Labelled(HangWords.Fastenings(spec, words.Units).SelectMany(f => f.Sentences.Select((s, i) => (i == 0 ? f.Thing : "", s))));
    }

    private static void Line(Engine.Plans.Plan plan, int line, PlanWords words, Paper paper)
    {
        var planned = plan.Lines[line];
        paper.Heading(planned.Name.Length > 0 ? $"Line {planned.Id}, {planned.Name}" : $"Line {planned.Id}");
        for (var run = 0; run < planned.Runs.Count; run++) Run(plan, line, run, words, paper);
    }

    private static void Run(Engine.Plans.Plan plan, int line, int index, PlanWords words, Paper paper)
    {
        var (planned, run) = (plan.Lines[line], plan.Lines[line].Runs[index]);
        string Mark(int post) => PlanWords.Mark(line, planned.Posts[post]);
        paper.Line();
        paper.Line($"Run {run.Number}: {Mark(run.FromPost)} to {Mark(run.ToPost)}, {words.Long(run.Fabric)} of fabric between the bars");
        paper.Labelled(Rows(plan, line, index, words, Mark));
    }

    private static IEnumerable<(string, string)> Rows(Engine.Plans.Plan plan, int line, int index, PlanWords words, Func<int, string> mark)
    {
        var run = plan.Lines[line].Runs[index];
        var hang = run.Hang;
        var ends = string.Join(", ", hang.Pulls.Select(p => $"to {mark(p.To)} ({words.Long(p.Fabric)})"));
        yield return ("pull", $"{HangWords.Method(hang, words.Units)}; tie off at {mark(hang.FirstTie)}, then {ends}"
                              + (hang.Pulls.Count > 1 ? "; each but the last on a temporary bar, tied behind it" : ""));
        if (hang.Anchor is { } anchor) yield return ("anchor", $"chain the puller to {mark(anchor)}, braced and its concrete cured; never to a line post");
        yield return ("tail", $"{words.Short(hang.Tail)} past the last terminal to pull on; take pickets off only at the last end");
        foreach (var (feed, width) in RollFeeds.Of(plan, plan.Lines[line], run).Select((f, i) => (f, i)))
            yield return (plan.Specs.First(s => s.Id == run.Spec).Widths > 1 ? $"rolls, width {width + 1}" : "rolls", RollText.Feed(feed, plan, words));
        foreach (var sentence in HangWords.Seat(HangCards.Seat(plan, line, index), words.Units)) yield return ("seat", sentence);
        if (run.Telescoping.Metres > 0) yield return ("edges", $"top and bottom slide past each other by {words.Short(run.Telescoping)} from end to end");
        for (var end = 0; end < 2; end++)
            if (HangCards.Cut(plan, line, index, end) is { Columns: > 0 } cut)
                yield return ($"cut at {mark(end == 0 ? run.FromPost : run.ToPost)}", $"{cut.Words[0]} {HangWords.Ahead(run, end == 0, "")} See its cut card.");
    }
}
