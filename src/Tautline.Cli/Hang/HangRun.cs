using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Hang;

internal static class HangRun
{
    public static ExitCode Run(HangOptions options, CliHost host)
    {
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var planned = Planning.Run(options.Planning, host);
        Messages.Show(host, planned.Findings);
        if (planned.Exit != ExitCode.Fine) return planned.Exit;
        var paper = options.Target.Path is null ? Paper.For(host) : Paper.Plain();
        return options.Target.Write(host, HangText.Write(planned.Plan!, new PlanWords(planned.Units), paper));
    }
}
