using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Plan;

/// <summary>A plan for people: job, lines with posts, runs and gates, take-off, problems, cautions, hash.</summary>
internal static class PlanText
{
    private const string Reading = "Bands and post ties are counted in diamonds down from the top, rail ties and rings in diamonds from the bar.";

    public static string Write(Planned planned, bool all, QuantitiesBy? by, Paper paper)
    {
        var (plan, words) = (planned.Plan!, new PlanWords(planned.Units));
        Head(plan, words, paper);
        LimitsText.Write(plan, planned.Units, paper);
        foreach (var line in plan.Lines) LineText.Write(line, plan, words, all, paper);
        Temporary(plan, words, paper);
        TakeoffText.Write(plan, words, paper);
        if (by is { } split) QuantitiesText.Write(plan, split, words, paper);
        Problems(planned.Findings, paper);
        paper.Heading("Cautions");
        paper.Labelled(Cautions.All.Select(c => ("-", c)), 0);
        paper.Line();
        paper.Line($"Plan hash {PlanFile.Hash(plan)}");
        return paper.ToString();
    }

    private static void Head(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        var job = plan.Basis.Job;
        paper.Heading(job.Name.Length > 0 ? $"Job {job.Name} ({job.Id})" : $"Job {job.Id}");
        var rules = plan.Basis.Rules;
        paper.Labelled([("rules", $"{rules.Name}: {rules.Title}" + Own(plan)), .. plan.Specs.SelectMany(s => Spec(s, plan, words)), ("reading", Reading)]);
    }

    private static IEnumerable<(string, string)> Spec(SpecPlan spec, Engine.Plans.Plan plan, PlanWords words)
    {
        yield return ($"spec {spec.Id}", words.Made(spec, plan));
        if (spec.Habit is { } habit)
            yield return ("", $"Crews often take {habit.Count} bands: {DiamondText.Positions(habit)}"
                              + (spec.HabitOverLimit ? "; its largest space is over the limit" : "") + " (verify).");
    }

    private static void Temporary(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        if (plan.Temporary.Count == 0) return;
        paper.Heading("Temporary fence");
        paper.Labelled(plan.Temporary.Select(t => (
            t.Name.Length > 0 ? t.Name : t.Id.Value,
            $"{words.Long(t.Length)}: {PlanWords.Count(t.Panels, "panel")}, {PlanWords.Count(t.Stands, "stand")}, {PlanWords.Count(t.Clamps, "clamp")}, {PlanWords.Count(t.Ballast, "bag")} of ballast")));
    }

    private static string Own(Engine.Plans.Plan plan)
    {
        var own = plan.Basis.Job.AsSpecified.Select(o => o.Rule).ToList();
        return own.Count == 0 ? "" : $"; as the job specifies: {string.Join(", ", own)}";
    }

    private static void Problems(IReadOnlyList<Finding> findings, Paper paper)
    {
        paper.Heading("Problems");
        if (findings.Count == 0) paper.Line("  none");
        paper.Labelled(findings.Select(f => (Messages.Word(f.Severity), Sentence(f))));
    }

    private static string Sentence(Finding finding)
        => string.Join(' ', new[] { $"{finding.Where}: {finding.Message}", finding.Hint }.Where(s => s.Length > 0));
}
