using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Plan;

internal static class PlanRun
{
    public static ExitCode Run(PlanOptions options, CliHost host)
    {
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var planned = Planning.Run(options.Planning, host);
        if (planned.Exit != ExitCode.Fine || !IsOnScreen(options, host)) Messages.Show(host, planned.Findings);
        if (planned.Exit != ExitCode.Fine) return planned.Exit;
        var data = Work.Run(host, "writing", () => Data(planned, options, host));
        return planned.After(options.Target.Write(host, data));
    }

    /// <summary>The problems stand in the text itself; where that is on the same screen they are not told twice.</summary>
    private static bool IsOnScreen(PlanOptions options, CliHost host)
        => options.Format == PlanFormat.Text && options.Target.Path is null && host.OutputIsTerminal;

    public static byte[] Data(Planned planned, PlanOptions options, CliHost host) => options.Format switch
    {
        PlanFormat.Json when options.By is { } by => Utf8(QuantitiesJson.Write(planned.Plan!, by)),
        PlanFormat.Json => PlanFile.Indented(planned.Plan!),
        PlanFormat.Csv => Utf8(PlanCsv.Write(planned.Plan!, options.Table, options.By ?? QuantitiesBy.Run, planned.Units)),
        _ => Utf8(PlanText.Write(planned, options.All, options.By, options.Target.Path is null ? Paper.For(host) : Paper.Plain())),
    };

    private static byte[] Utf8(string text) => System.Text.Encoding.UTF8.GetBytes(text);
}
