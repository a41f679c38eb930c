using System.CommandLine;
using Tautline.Cli.Input;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Compare;

internal static class CompareCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (from, sets) = (Flags.Rules().File, Flags.RuleSets());
        var (built, units, spec, crs) = (Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var json = Flags.Json("The differences as JSON: metres, cubic metres, kilograms.");
        from.Description = "A rule set from a file, in place of one of the two.";
        var command = new Command("compare", "Compares two rule sets on one job: the limits that differ, and what they do to it.")
        {
            file, sets, from, json, built, units, spec, crs,
        };
        command.Validators.Add(r =>
        {
            var named = r.GetResult(sets)?.Tokens.Count ?? 0;
            var all = named + (r.GetResult(from) is null ? 0 : 1);
            if (all is < 1 or > 2) r.AddError($"Two rule sets are compared, or one with the job's own; {all} were given.");
        });
        command.SetAction(p => (int)CompareRun.Run(
            new CompareOptions(
                new(
                    p.GetRequiredValue(file), new RulesChoice(p.GetValue(from), null), p.GetValue(units),
                    new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
                p.GetValue(sets) ?? [], p.GetValue(json)),
            host));
        return command;
    }
}
