using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;

namespace Tautline.Cli.Papers;

internal static class PapersCommand
{
    public static readonly string[] Names = ["packet", "drawings", "site", "takeoff", "reasons", "submittal", "revision", "calculation", "tables"];

    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, built, units, spec, crs) = (Flags.Rules(), Flags.Built(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var paper = new Option<string>("--paper")
        {
            Description = "packet (for the crew), drawings, site (the site plan alone, also as .svg or .dxf), takeoff, reasons (take-off with why), submittal, revision (with --against), calculation (with --fact), tables (.xlsx).",
            HelpName = string.Join('|', Names),
            DefaultValueFactory = _ => "packet",
            CustomParser = ReadName,
        };
        var (language, size) = (PaperFlags.Language(), PaperFlags.Size());
        var against = new Option<string?>("--against") { Description = "For a revision: the job as it was before, planned as drawn.", HelpName = "FILE" };
        var fact = new Option<string?>("--fact") { Description = "For a calculation: the figure, as 'why' names it.", HelpName = "FACT" };
        var output = new Option<string?>("--out") { Description = "The file: .pdf, of the site also .svg or .dxf, of tables .xlsx.", HelpName = "FILE", Required = true };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("papers", "Makes a paper of a job: the crew's packet, drawings, office papers, tables.")
        {
            file, paper, output, language, built, units, size, against, fact, force, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)PapersRun.Run(
            new PapersOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs)), p.GetValue(built)), p.GetValue(paper)!, p.GetValue(language)!,
                p.GetValue(size), p.GetValue(against), p.GetValue(fact), new Target(p.GetValue(output), p.GetValue(force))),
            host));
        return command;
    }

    private static string? ReadName(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (Names.Contains(text)) return text;
        result.AddError($"--paper cannot be '{text}': write {string.Join(", ", Names[..^1])} or {Names[^1]}.");
        return null;
    }
}
