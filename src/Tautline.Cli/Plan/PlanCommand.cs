using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Plan;

internal static class PlanCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, units, spec, crs) = (Flags.Rules(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var json = Flags.Json("The whole plan as JSON: metres, cubic metres, kilograms.");
        var csv = new Option<CsvTable?>("--csv")
        {
            Description = "One table as CSV: takeoff (also if none is named), posts or runs. Write it after FILE.",
            HelpName = "takeoff|posts|runs",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = ReadTable,
        };
        var all = new Option<bool>("--all") { Description = "List every post and run of a large job." };
        var output = new Option<string?>("--out") { Description = "Write to this file instead of the screen.", HelpName = "FILE" };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("plan", "Plans a job and prints it: posts, runs, gates, take-off, problems.")
        {
            file, rules, json, csv, units, all, output, force, spec, crs,
        };
        command.Validators.Add(r =>
        {
            if (r.GetResult(json) is { Implicit: false } && r.GetResult(csv) is not null) r.AddError("--json and --csv exclude each other.");
        });
        command.SetAction(p => (int)PlanRun.Run(Options(p), host));
        return command;

        PlanOptions Options(ParseResult p) => new(
            new(p.GetRequiredValue(file), p.GetValue(rules), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs))),
            p.GetValue(json) ? PlanFormat.Json : p.GetResult(csv) is not null ? PlanFormat.Csv : PlanFormat.Text,
            p.GetValue(csv) ?? CsvTable.Takeoff, p.GetValue(all), new Target(p.GetValue(output), p.GetValue(force)));
    }

    private static string Name(CsvTable table) => table.ToString().ToLowerInvariant();

    private static CsvTable? ReadTable(ArgumentResult result)
    {
        if (result.Tokens.Count == 0) return CsvTable.Takeoff;
        var text = result.Tokens[0].Value;
        foreach (var table in Enum.GetValues<CsvTable>())
            if (Name(table) == text) return table;
        result.AddError($"--csv cannot be '{text}': write takeoff, posts or runs, and FILE before --csv.");
        return null;
    }
}
