using System.CommandLine;
using System.CommandLine.Parsing;
using Tautline.Cli.Input;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Papers.Paper;

namespace Tautline.Cli.Papers;

internal static class PapersCommand
{
    public static readonly string[] Names = ["packet", "drawings", "site", "takeoff", "reasons", "submittal", "revision", "calculation", "tables"];

    private static readonly Dictionary<string, PaperSize> sizes = new(StringComparer.OrdinalIgnoreCase)
    {
        ["letter"] = PaperSize.Letter,
        ["a4"] = PaperSize.A4,
        ["tabloid"] = PaperSize.Tabloid,
        ["a3"] = PaperSize.A3,
        ["ansi-d"] = PaperSize.AnsiD,
        ["arch-d"] = PaperSize.ArchD,
        ["a1"] = PaperSize.A1,
    };

    public static Command Define(CliHost host)
    {
        var file = Flags.File();
        var (rules, units, spec, crs) = (Flags.Rules(), Flags.Units(), Flags.Spec(), Flags.Crs());
        var paper = new Option<string>("--paper")
        {
            Description = "packet (for the crew), drawings, site (the site plan alone, also as .svg or .dxf), takeoff, reasons (take-off with why), submittal, revision (with --against), calculation (with --fact), tables (.xlsx).",
            HelpName = string.Join('|', Names),
            DefaultValueFactory = _ => "packet",
            CustomParser = ReadName,
        };
        var language = new Option<string>("--lang")
        {
            Description = "en or es, the language of the paper.",
            HelpName = "en|es",
            DefaultValueFactory = _ => Phrases.English,
            CustomParser = ReadLanguage,
        };
        var size = new Option<PaperSize>("--size")
        {
            Description = "Size of the paper; otherwise letter, or a4 for a metric job.",
            HelpName = string.Join('|', sizes.Keys),
            CustomParser = ReadSize,
        };
        var against = new Option<string?>("--against") { Description = "For a revision: the job as it was before.", HelpName = "FILE" };
        var fact = new Option<string?>("--fact") { Description = "For a calculation: the figure, as 'why' names it.", HelpName = "FACT" };
        var output = new Option<string?>("--out") { Description = "The file: .pdf, of the site also .svg or .dxf, of tables .xlsx.", HelpName = "FILE", Required = true };
        var force = new Option<bool>("--force") { Description = "Let --out replace a file." };
        var command = new Command("papers", "Makes a paper of a job: the crew's packet, drawings, office papers, tables.")
        {
            file, paper, output, language, units, size, against, fact, force, spec, crs,
        };
        rules.AddTo(command);
        command.SetAction(p => (int)PapersRun.Run(
            new PapersOptions(
                new(p.GetRequiredValue(file), rules.Choice(p), p.GetValue(units), new OutlineChoices(p.GetValue(spec), p.GetValue(crs))), p.GetValue(paper)!, p.GetValue(language)!,
                p.GetValue(size), p.GetValue(against), p.GetValue(fact), new Target(p.GetValue(output), p.GetValue(force))),
            p.GetResult(size) is { Implicit: false }, host));
        return command;
    }

    private static string? ReadName(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (Names.Contains(text)) return text;
        result.AddError($"--paper cannot be '{text}': write {string.Join(", ", Names[..^1])} or {Names[^1]}.");
        return null;
    }

    private static string? ReadLanguage(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (Phrases.Languages.Contains(text)) return text;
        result.AddError($"--lang cannot be '{text}': write {string.Join(" or ", Phrases.Languages)}.");
        return null;
    }

    private static PaperSize ReadSize(ArgumentResult result)
    {
        string text = result.Tokens[0].Value;
        if (sizes.TryGetValue(text, out PaperSize size)) return size;
        result.AddError($"--size cannot be '{text}': write {string.Join(", ", sizes.Keys)}.");
        return default;
    }
}
