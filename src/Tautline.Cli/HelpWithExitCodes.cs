using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Globalization;

namespace Tautline.Cli;

/// <summary>The help text, and below it what the exit codes mean.</summary>
internal sealed class HelpWithExitCodes(HelpAction help) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        help.MaxWidth = Terminal.CliHost.PlainWidth;
        var result = help.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        output.Write("Exit codes:\n");
        foreach (var code in Enum.GetValues<ExitCode>())
            output.Write(string.Create(CultureInfo.InvariantCulture, $"  {(int)code,3}  {ExitCodes.Meaning(code)}\n"));
        return result;
    }
}
