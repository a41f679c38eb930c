using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Check;

internal static class CheckCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var json = Flags.Json("The problems as JSON on the output.");
        var command = new Command("check", "Reports the problems of a job and nothing else.") { file, json, built, units, spec, crs };
        rules.AddTo(command);
        command.SetAction(p => (int)CheckRun.Run(
            new CheckOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                p.GetValue(json)),
            host));
        return command;
    }
}
