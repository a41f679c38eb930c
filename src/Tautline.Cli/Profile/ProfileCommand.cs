using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Profile;

internal static class ProfileCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var csv = new Option<bool>("--csv") { Description = "Every corner of the ground and every post as CSV." };
        var output = new Option<string?>("--out") { Description = "Write to this file instead of the screen.", HelpName = "FILE" };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("profile", "Shows the ground under each line, how the fence goes over it, and what is to be graded.")
        {
            file, csv, built, units, output, force, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)ProfileRun.Run(
            new ProfileOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                p.GetValue(csv), new Target(p.GetValue(output), p.GetValue(force))),
            host));
        return command;
    }
}
