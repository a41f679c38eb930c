using System.Text;
using Tautline.Cli.Terminal;
using Tautline.Documents.Paper;
using Tautline.Documents.Plans;
using Tautline.Documents.Plans.Office;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;

namespace Tautline.Cli.Papers;

internal static class PapersRun
{
    private static readonly Dictionary<string, PaperKind> kinds = Enum.GetValues<PaperKind>().ToDictionary(k => k.ToString().ToLowerInvariant());

    public static ExitCode Run(PapersOptions options, bool sized, CliHost host)
    {
        if (Refusal(options) is var (message, hint))
        {
            Messages.Error(host, message, hint);
            return ExitCode.Usage;
        }

        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var planned = Planning.Run(options.Planning, host);
        Messages.Show(host, planned.Findings);
        if (planned.Exit != ExitCode.Fine) return planned.Exit;
        var size = sized ? options.Size : planned.Units == UnitSystem.Metric ? PaperSize.A4 : PaperSize.Letter;
        var choice = new PaperChoice(planned.Units, Phrases.Of(options.Language), new(size)) { Stakes = Stakes(planned) };
        if (options.Paper == "revision") return Revision(options, planned, choice, host);
        if (options.Paper == "calculation") return Calculation(options, planned, choice, host);
        if (Extension(options) == ".xlsx") return options.Target.Write(host, Work.Run(host, "writing tables", () => XlsxWriter.WriteAsync(PlanBook.Of(planned.Plan!, choice)).GetAwaiter().GetResult()));
        return options.Paper == "site" ? Site(options, planned, choice, host) : Print(options, host, made => Documents.Plans.Papers.Of(kinds[options.Paper], planned.Plan!, choice, made));
    }

    private static string Extension(PapersOptions options) => Path.GetExtension(options.Target.Path!).ToLowerInvariant();

    /// <summary>What does not go together, told before any work.</summary>
    private static (string Message, string Hint)? Refusal(PapersOptions options)
    {
        string ending = Extension(options);
        string[] fits = options.Paper switch { "site" => [".pdf", ".svg", ".dxf"], "tables" => [".xlsx"], _ => [".pdf"] };
        if (!fits.Contains(ending)) return ($"--out {options.Target.Path}: the paper '{options.Paper}' cannot be written as '{ending}'.", $"Let the name end in {string.Join(" or ", fits)}.");
        if (options.Paper == "revision" && options.Against is null) return ("A revision compares two jobs and only one is named.", "Name the job as it was before with --against FILE.");
        return options.Paper == "calculation" && options.Fact is null ? ("A calculation needs the figure it works out.", "Name it with --fact FACT; 'tautline why FILE --list' lists them.") : null;
    }

    private static ExitCode Print(PapersOptions options, CliHost host, Func<Action<int, int>, PaperDocument> make)
    {
        using var progress = new ProgressLine(host);
        PrintedPaper printed = PdfWriter.Write(make((n, of) =>
        {
            progress.Cancelled.ThrowIfCancellationRequested();
            progress.Show($"sheet {n} of {of}");
        }));
        progress.Clear();
        var exit = options.Target.Write(host, printed.Pdf);
        if (exit != ExitCode.Fine) return exit;
        host.Error.Write($"{PlanWords.Count(printed.Pages, "page")}, {printed.Pdf.Length:#,0} bytes\n");
        if (printed.UnknownCharacters.Length > 0) Messages.Error(host, $"The typeface lacks {PlanWords.Count(printed.UnknownCharacters.EnumerateRunes().Count(), "sign")} of this job; the paper's last page names them.", "Write the names with letters of the Latin alphabet.");
        return ExitCode.Fine;
    }

    private static ExitCode Site(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var picture = PictureStage.Of(planned.Plan!);
        var format = new PaperFormat(choice.Format.Size, picture.Extent[2] - picture.Extent[0] > picture.Extent[3] - picture.Extent[1]);
        if (SitePlanDrawing.Of(planned.Plan!, picture, format.RoomWidth, format.RoomHeight, new PlanWords(choice.Units), choice.Say) is not { } scene)
        {
            Messages.Error(host, "There is no site plan of a job without a line.", "Draw a line, or walk one in a tape book.");
            return ExitCode.Problems;
        }

        string title = planned.Plan!.Basis.Job.Name;
        return Extension(options) switch
        {
            ".svg" => options.Target.Write(host, Encoding.UTF8.GetBytes(SvgWriter.File(scene, title))),
            ".dxf" => options.Target.Write(host, DxfWriter.Write(scene, choice.Units)),
            _ => Print(options, host, _ => new PaperDocument(title)
            {
                Words = choice.Words, Format = format, Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(planned.Plan!)[..16])),
                Sheets = [new PaperSheet(choice.Say["paper.site"]) { Blocks = [new PaperBlock.Drawing(scene)] }],
            }),
        };
    }

    private static ExitCode Revision(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var before = Planning.Run(options.Planning with { File = options.Against! }, host);
        if (before.Exit != ExitCode.Fine)
        {
            Messages.Show(host, before.Findings);
            return before.Exit;
        }

        return Print(options, host, _ => RevisionPaper.Of(before.Plan!, planned.Plan!, choice));
    }

    private static ExitCode Calculation(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var reading = FactText.Parse(planned.Plan!, options.Fact!);
        if (reading.Key is { } fact) return Print(options, host, _ => CalculationPaper.Of(planned.Plan!, [fact], choice));
        Messages.Error(host, reading.Message, "'tautline why FILE --list' lists the facts of a plan.");
        return ExitCode.Problems;
    }

    private static StakeTable Stakes(Planned planned)
    {
        var stakes = StakeLister.Of(planned.Plan!, planned.Units);
        return new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]);
    }
}
