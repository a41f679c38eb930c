using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Check;

internal static class CheckRun
{
    public static ExitCode Run(CheckOptions options, CliHost host)
    {
        var planned = Planning.Run(options.Planning, host);
        if (options.Json) host.Output.Write(Json(planned.Findings));
        else Messages.Show(host, planned.Findings);
        if (!options.Json && planned.Exit is ExitCode.Fine or ExitCode.Problems)
            host.Output.Write($"{options.Planning.File}: {Messages.Tally(planned.Findings)}\n");
        return planned.After(planned.Exit);
    }

    private static string Json(IReadOnlyList<Finding> findings) => JsonText.Write(json =>
    {
        json.WriteStartArray();
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("severity", Messages.Word(finding.Severity));
            json.WriteString("code", finding.Code);
            json.WriteString("where", finding.Where);
            json.WriteString("message", finding.Message);
            json.WriteString("hint", finding.Hint);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    });
}
