using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tautline.Formats.Ground;
using Tautline.Formats.Ground.Points;

namespace Tautline.Cli.Attach;

/// <summary>The flags that answer what a ground file leaves open; each carries the kind of question it answers.</summary>
internal sealed class GroundFlags
{
    private readonly (GroundQuestionKind Kind, Option<string?> Flag)[] answers =
    [
        (GroundQuestionKind.System, new("--crs") { Description = "Coordinates of the ground file: EPSG:n, local-m, local-ft or local-ftus (survey feet).", HelpName = "SYSTEM" }),
        (GroundQuestionKind.HeightUnit, new("--height-unit") { Description = "Unit of its heights: metre, foot or survey-foot.", HelpName = "UNIT" }),
        (GroundQuestionKind.Columns, new("--columns") { Description = "Columns of survey text: PNEZD, PENZD, NEZ ...: point, northing, easting, height, description.", HelpName = "ORDER" }),
        (GroundQuestionKind.Surface, new("--surface") { Description = "Which surface of several, by name or as #2.", HelpName = "NAME" }),
        (GroundQuestionKind.PlaceHolders, new("--place-holders") { Description = "Rows that stand many times at one place: keep or leave-out.", HelpName = "keep|leave-out" }),
    ];

    private readonly Option<double?> noData = new("--no-data") { Description = "The value that marks a cell without ground, in place of the file's own.", HelpName = "VALUE" };

    private readonly Option<string?> breaklines = new("--breaklines") { Description = "Codes of survey points that are lines along which the ground breaks, such as TOE,TOPWALL; a B and an E after a code begin and end a line.", HelpName = "CODES" };

    public void AddTo(Command command)
    {
        foreach (var (_, flag) in answers) command.Add(flag);
        command.Add(noData);
        command.Add(breaklines);
        command.Validators.Add(Check);
    }

    /// <summary>The name of the flag that answers a question.</summary>
    public string Of(GroundQuestionKind kind) => answers.First(a => a.Kind == kind).Flag.Name;

    /// <summary>The answers given, for a file of a name.</summary>
    public GroundOptions Answers(ParseResult parsed, string file)
    {
        var options = new GroundOptions { SourceName = file, NoData = parsed.GetValue(noData) };
        foreach (var (kind, flag) in answers)
            if (parsed.GetValue(flag) is { } text) options = GroundAnswers.Apply(options, kind, Word(kind, text))!;
        return parsed.GetValue(breaklines) is { } codes ? options with { Points = options.Points with { Breaklines = Codes(codes) } } : options;
    }

    private static BreaklineCodes Codes(string codes)
        => new([.. codes.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)]) { BeginEnd = true };

    private void Check(CommandResult result)
    {
        foreach (var (kind, flag) in answers)
            if (result.GetResult(flag)?.Tokens is [var token] && GroundAnswers.Apply(new(), kind, Word(kind, token.Value)) is null)
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"{flag.Name} cannot be '{token.Value}': {flag.Description}"));
    }

    /// <summary>Local systems are written here as elsewhere on the command line.</summary>
    private static string Word(GroundQuestionKind kind, string text) => (kind, text.ToLowerInvariant()) switch
    {
        (GroundQuestionKind.System, "local-m") => "local:metre",
        (GroundQuestionKind.System, "local-ft") => "local:foot",
        (GroundQuestionKind.System, "local-ftus") => "local:survey-foot",
        _ => text,
    };
}
