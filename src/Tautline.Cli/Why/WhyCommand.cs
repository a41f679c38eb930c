using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Why;

internal static class WhyCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var fact = new Argument<string?>("FACT")
        {
            Description = "Such as post/yard/7/hole-depth, run/yard/2/rail-ties, end/yard/2/start/bands, gate/yard/1/leaf, spec/fence/advance-low "
                          + "or takeoff/3/purchase; lines and specs by their ids, the rest numbered from 1.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var list = new Option<bool>("--list") { Description = "List the facts of the plan." };
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var command = new Command("why", "Explains one figure: the formula, the numbers put in, and where each comes from.")
        {
            file, fact, list, built, units, spec, crs,
        };
        rules.AddTo(command);
        command.Validators.Add(r =>
        {
            if (r.GetResult(fact)?.Tokens.Count > 0 == r.GetValue(list)) r.AddError("Name one FACT, or ask for all with --list.");
        });
        command.SetAction(p => (int)WhyRun.Run(
            new WhyOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                p.GetValue(list) ? null : p.GetValue(fact)),
            host));
        return command;
    }
}
