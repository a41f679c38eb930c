using Tautline.Cli.Input;
using Tautline.Cli.Terminal;
using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli;

/// <summary>What to plan and by which rules.</summary>
internal sealed record PlanningOptions(string File, string? Rules, UnitSystem? Units, OutlineChoices Outline);

/// <summary>A planned job, or why there is none.</summary>
/// <param name="Plan">Nothing where the file or the rules could not be used.</param>
/// <param name="Findings">All problems: of the readers and of the plan, worst first.</param>
internal sealed record Planned(Engine.Plans.Plan? Plan, UnitSystem Units, IReadOnlyList<Finding> Findings, ExitCode Exit);

/// <summary>From a file to a plan, for every command that needs one.</summary>
internal static class Planning
{
    public static Planned Run(PlanningOptions options, CliHost host)
    {
        var (rules, fault) = RulesSource.Load(options.Rules);
        if (rules is null) return new(null, default, [fault!], ExitCode.Unreadable);
        var file = Work.Run(host, "reading", () => JobSource.Load(options.File, options.Outline, options.Units, rules));
        return file.Exit == ExitCode.Fine
            ? Plan(file, file.Job!, rules, options.Units, host)
            : new(null, default, [.. Messages.Ordered(file.Findings)], file.Exit);
    }

    private static Planned Plan(LoadedJob file, Job job, Rules rules, UnitSystem? asked, CliHost host)
    {
        var units = asked ?? job.Units;
        var plan = Work.Run(host, "planning", () => JobPlanner.Plan(job, FenceCatalog.BuiltIn(), rules, BuiltFacts.None));
        var findings = Messages.Ordered(file.Findings.Concat(plan.Problems.Select(p => file.Describe(p, units)))).ToList();
        return new(plan, units, findings, findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine);
    }
}
