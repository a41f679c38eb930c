using Tautline.Cli.Field;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Compare;

internal static class CompareRun
{
    public static ExitCode Run(CompareOptions options, CliHost host)
    {
        var planning = options.Planning;
        var file = Work.Run(host, "reading", () => JobSource.Load(planning.File, planning.Outline, planning.Units));
        if (file.Exit != ExitCode.Fine) return Stop(host, file.Findings, file.Exit);
        var job = file.Job!;
        var (sets, fault) = Sets(options, job.RuleSet, file.Path);
        if (sets is not var (a, b)) return Stop(host, [fault!], fault!.Code == UnknownSet ? ExitCode.Problems : ExitCode.Unreadable);
        var built = FieldBuilt.Read(planning.Built, job, planning.File, host);
        if (built.Log is null) return Stop(host, built.Findings, built.Exit);
        var units = planning.Units ?? job.Units;
        var (first, second) = Work.Run(host, "planning", () => (By(a), By(b)));
        var compared = RuleComparison.ComparePlans(first.Plan, second.Plan);
        var errors = Errors(compared, file, units);
        if (errors.Count > 0) return Stop(host, [.. first.Told, .. errors], ExitCode.Problems);
        Messages.Show(host, Messages.Ordered([.. file.Findings, .. first.Told]));
        host.Output.Write(options.Json ? CompareJson.Write(compared) : CompareText.Write(compared, units, Paper.For(host)));
        return built.Exit;

        BuiltPlan By(Rules rules) => built.Plan(job with { RuleSet = rules.Name }, rules, units);
    }

    private const string UnknownSet = "RuleSetUnknown";

    private static ExitCode Stop(CliHost host, IEnumerable<Finding> findings, ExitCode exit)
    {
        Messages.Show(host, Messages.Ordered(findings));
        return exit;
    }

    /// <summary>The two sets in the order given; a single one is compared with the job's own, which then comes first.</summary>
    private static ((Rules A, Rules B)? Sets, Finding? Fault) Sets(CompareOptions options, string jobSet, string path)
    {
        List<Rules> sets = [];
        if (options.Planning.Rules.File is not null)
        {
            var (own, fault) = RulesSource.Load(options.Planning.Rules, jobSet);
            if (own is null) return (null, fault);
            sets.Add(own);
        }
        sets.AddRange(options.Sets.Select(n => RuleSets.Find(n)!));
        if (sets.Count == 2) return ((sets[0], sets[1]), null);
        return RuleSets.Find(jobSet) is { } job
            ? ((job, sets[0]), null)
            : (null, new(Severity.Error, UnknownSet, path, $"The rule set '{jobSet}' of the job is not known.", "Name both sets."));
    }

    /// <summary>What keeps either set from a plan, each problem once; one that arises by a single set names it.</summary>
    private static List<Finding> Errors(RuleComparison compared, LoadedJob file, UnitSystem units)
        => [.. new[] { compared.A, compared.B }
            .SelectMany(p => p.Problems.Where(q => q.Severity == Severity.Error).Select(q => (file.Describe(q, units), p.RuleSet)))
            .GroupBy(f => f.Item1, f => f.RuleSet)
            .Select(g => g.Count() == 1 ? g.Key with { Where = $"{g.Key.Where}, by {g.First()}" } : g.Key)];
}
