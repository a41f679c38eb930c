using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Stakes;

internal static class StakesCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var bare = new Option<bool>("--no-header") { Description = "Leave out the first row, for instruments that read none." };
        var output = new Option<string?>("--out") { Description = "Write to this file instead of the screen.", HelpName = "FILE" };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("stakes", "Lists the posts for setting out as CSV: point, northing, easting, elevation, description, top over the stake.")
        {
            file, built, units, bare, output, force, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)StakesRun.Run(
            new StakesOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                !p.GetValue(bare), new Target(p.GetValue(output), p.GetValue(force))),
            host));
        return command;
    }
}
