using Tautline.Cli.Field;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli;

/// <summary>What to plan and by which rules.</summary>
/// <param name="Built">What was handed over from the field, to plan through what stands; nothing to plan as drawn.</param>
internal sealed record PlanningOptions(string File, RulesChoice Rules, UnitSystem? Units, OutlineChoices Outline, string? Built = null);

/// <summary>A planned job, or why there is none.</summary>
/// <param name="Plan">Nothing where the file or the rules could not be used.</param>
/// <param name="Findings">All problems: of the readers and of the plan, worst first.</param>
internal sealed record Planned(Engine.Plans.Plan? Plan, UnitSystem Units, IReadOnlyList<Finding> Findings, ExitCode Exit)
{
    /// <summary>Problems where the plan is there and part of the field file was damaged and left out.</summary>
    public ExitCode Field { get; init; }

    /// <summary>What there is to tell of the field file, worst first; all of it is in <see cref="Findings"/> too.</summary>
    public IReadOnlyList<Finding> FieldFindings { get; init; } = [];

    /// <summary>What a command ends with once it has done its part.</summary>
    public ExitCode After(ExitCode done) => done > Field ? done : Field;
}

/// <summary>From a file to a plan, for every command that needs one.</summary>
internal static class Planning
{
    public static Planned Run(PlanningOptions options, CliHost host)
    {
        var file = Work.Run(host, "reading", () => JobSource.Load(options.File, options.Outline, options.Units));
        if (file.Exit != ExitCode.Fine) return new(null, default, [.. Messages.Ordered(file.Findings)], file.Exit);
        var job = file.Job!;
        var (rules, fault) = RulesSource.Load(options.Rules, job.RuleSet);
        if (rules is null) return new(null, default, [fault!], ExitCode.Unreadable);
        var built = FieldBuilt.Read(options.Built, job, options.File, host);
        if (built.Log is null) return new(null, default, [.. Messages.Ordered(built.Findings)], built.Exit);
        return Plan(file, options.Rules.Made ? job with { RuleSet = rules.Name } : job, rules, built, options.Units, host);
    }

    /// <summary>Plans, tells what there is to tell, and writes a text of the plan to the screen or a file.</summary>
    public static ExitCode Write(PlanningOptions options, Target target, CliHost host, Func<Planned, Paper, string> text)
    {
        if (target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var planned = Run(options, host);
        Messages.Show(host, planned.Findings);
        return planned.Exit != ExitCode.Fine ? planned.Exit : planned.After(target.Write(host, text(planned, target.Path is null ? Paper.For(host) : Paper.Plain())));
    }

    private static Planned Plan(LoadedJob file, Job job, Rules rules, FieldBuilt built, UnitSystem? asked, CliHost host)
    {
        var units = asked ?? job.Units;
        var (plan, told) = Work.Run(host, "planning", () => built.Plan(job, rules, units));
        var findings = Messages.Ordered(file.Findings.Concat(told).Concat(plan.Problems.Select(p => file.Describe(p, units)))).ToList();
        return new(plan, units, findings, findings.Any(f => f.Severity == Severity.Error) ? ExitCode.Problems : ExitCode.Fine) { Field = built.Exit, FieldFindings = [.. Messages.Ordered(told)] };
    }
}
