using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Hang;

internal static class HangCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var output = new Option<string?>("--out") { Description = "Write to this file instead of the screen.", HelpName = "FILE" };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("hang", "The hang plan: pulls, rolls and splices of every run, how it is fastened and seated, and where rolls are dropped.")
        {
            file, built, units, output, force, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)HangRun.Run(
            new HangOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                new Target(p.GetValue(output), p.GetValue(force))),
            host));
        return command;
    }
}
