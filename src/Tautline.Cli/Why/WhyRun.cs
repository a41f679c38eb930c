using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Why;

internal static class WhyRun
{
    private const int MostNear = 20;

    public static ExitCode Run(WhyOptions options, CliHost host)
    {
        var planned = Planning.Run(options.Planning, host);
        if (planned.Exit != ExitCode.Fine)
        {
            Messages.Show(host, planned.Findings);
            return planned.Exit;
        }
        Messages.Show(host, planned.FieldFindings);
        var plan = planned.Plan!;
        if (options.Fact is null) return planned.After(List(plan, host));
        var reading = FactText.Parse(plan, options.Fact);
        if (reading.Key is not { } key) return Unknown(reading, options.Planning, host);
        host.Output.Write(WhyText.Write(plan, key, planned.Units, Paper.For(host)));
        return planned.After(ExitCode.Fine);
    }

    private static ExitCode List(Engine.Plans.Plan plan, CliHost host)
    {
        foreach (var key in Facts.All(plan))
        {
            host.Cancelled.ThrowIfCancellationRequested();
            host.Output.Write($"{FactText.Format(plan, key)}\n");
        }
        return ExitCode.Fine;
    }

    private static ExitCode Unknown(FactReading reading, PlanningOptions of, CliHost host)
    {
        var near = reading.Near.Count == 0 ? "" : $"Nearest first: {string.Join(", ", reading.Near.Take(MostNear))}. ";
        Messages.Error(host, reading.Message, $"{near}'tautline why {of.File}{(of.Built is { } built ? $" --built {built}" : "")} --list' lists all.");
        return ExitCode.Usage;
    }
}
