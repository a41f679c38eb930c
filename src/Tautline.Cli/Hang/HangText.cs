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
        paper.Labelled(HangRows.Of(plan, line, index, words));
    }
}
