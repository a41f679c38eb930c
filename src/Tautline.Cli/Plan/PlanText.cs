using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;

namespace Tautline.Cli.Plan;

/// <summary>A plan for people: job, lines with posts, runs and gates, take-off, problems, cautions, hash.</summary>
internal static class PlanText
{
    public static string Write(Planned planned, bool all, Paper paper)
    {
        var (plan, words) = (planned.Plan!, new PlanWords(planned.Units));
        Head(plan, words, paper);
        foreach (var line in plan.Lines) LineText.Write(line, plan, words, all, paper);
        TakeoffText.Write(plan, words, paper);
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
        paper.Labelled([("rules", $"{rules.Name}: {rules.Title}" + Own(plan)), .. plan.Specs.Select(s => ($"spec {s.Id}", Spec(s, plan, words)))]);
    }

    private static string Own(Engine.Plans.Plan plan)
    {
        var own = plan.Basis.Job.AsSpecified.Select(o => o.Rule).ToList();
        return own.Count == 0 ? "" : $"; as the job specifies: {string.Join(", ", own)}";
    }

    private static string Spec(SpecPlan spec, Engine.Plans.Plan plan, PlanWords words)
    {
        var asked = plan.Basis.Specs.First(s => s.Spec.Id == spec.Id);
        var frame = spec.TopRail ? $"top rail {spec.Rail}" : "top tension wire, no top rail";
        return $"{words.Long(spec.Height)} fabric, {words.Short(asked.Fabric.Mesh)} mesh, {asked.Fabric.Gauge} gauge; line posts {spec.LinePost}, "
               + $"terminals {spec.TerminalPost}, {frame}, {(spec.BottomWire ? "bottom tension wire" : "no bottom wire")}, "
               + (spec.Braced ? "terminals braced" : "no braces");
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
