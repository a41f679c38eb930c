using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Folder;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Plan;

internal static class PlanCommand
{
    public static Command Define(CliHost host)
    {
        var file = Flags.File("A job (.json), a tape book (.tape, .txt), an outline (.geojson), or a folder: then every job in it, and a summary.");
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var json = Flags.Json("The whole plan as JSON: metres, cubic metres, kilograms. Of a folder, the summary.");
        var csv = new Option<CsvTable?>("--csv")
        {
            Description = "One table as CSV: takeoff (also if none is named), posts, runs or quantities (net, by place). Write it after FILE.",
            HelpName = "takeoff|posts|runs|quantities",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = ReadTable,
        };
        var by = new Option<QuantitiesBy?>("--by")
        {
            Description = "Also the net quantities of each line, or of each run with the line's terminals, line posts, gates and work; as JSON or CSV "
                          + "these alone. Only net quantities have a place: a roll or a stick is bought for the whole job.",
            HelpName = "line|run",
            CustomParser = ReadBy,
        };
        var all = new Option<bool>("--all") { Description = "List every post and run of a large job." };
        var output = new Option<string?>("--out")
        {
            Description = "Write to this file instead of the screen. Of a folder, write the plan of each job into the folder DIR.",
            HelpName = "FILE|DIR",
        };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("plan", "Plans a job and prints it: posts, runs, gates, take-off, problems.")
        {
            file, json, csv, by, built, units, all, output, force, spec, crs,
        };
        rules.AddTo(command);
        command.Validators.Add(r =>
        {
            if (r.GetResult(json) is { Implicit: false } && r.GetResult(csv) is not null) r.AddError("--json and --csv exclude each other.");
            if (r.GetResult(by) is not null && r.GetResult(csv)?.Tokens is [var table] && HasNoPlaces(table.Value))
                r.AddError($"--by has nothing to do with the table {table.Value}: write --csv quantities.");
        });
        command.SetAction(p => (int)Run(Options(p), host));
        return command;

        PlanOptions Options(ParseResult p) => new(
            new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)),
            p.GetValue(json) ? PlanFormat.Json : p.GetResult(csv) is not null ? PlanFormat.Csv : PlanFormat.Text,
            p.GetValue(csv) ?? (p.GetValue(by) is null ? CsvTable.Takeoff : CsvTable.Quantities), p.GetValue(by), p.GetValue(all), new Target(p.GetValue(output), p.GetValue(force)));
    }

    private static ExitCode Run(PlanOptions options, CliHost host)
        => Directory.Exists(options.Planning.File) ? FolderRun.Run(options, host) : PlanRun.Run(options, host);

    private static string Name(CsvTable table) => table.ToString().ToLowerInvariant();

    /// <summary>By the word on the command line: the value of a wrong word cannot be asked for.</summary>
    private static bool HasNoPlaces(string table) => Enum.GetValues<CsvTable>().Any(t => t != CsvTable.Quantities && Name(t) == table);

    private static CsvTable? ReadTable(ArgumentResult result)
    {
        if (result.Tokens.Count == 0) return null;
        var text = result.Tokens[0].Value;
        foreach (var table in Enum.GetValues<CsvTable>())
            if (Name(table) == text) return table;
        result.AddError($"--csv cannot be '{text}': write takeoff, posts, runs or quantities, and FILE before --csv.");
        return null;
    }

    private static QuantitiesBy? ReadBy(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (text == "line") return QuantitiesBy.Line;
        if (text == "run") return QuantitiesBy.Run;
        result.AddError($"--by cannot be '{text}': write line or run.");
        return null;
    }
}
