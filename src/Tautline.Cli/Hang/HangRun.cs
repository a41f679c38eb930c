using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Hang;

internal static class HangRun
{
    public static ExitCode Run(HangOptions options, CliHost host)
        => Planning.Write(options.Planning, options.Target, host, (planned, paper) => HangText.Write(planned.Plan!, new PlanWords(planned.Units), paper));
}
