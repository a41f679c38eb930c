using System.Text;
using Tautline.Cli.Terminal;
using Tautline.Documents.Paper;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.StakeOut;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Office;

namespace Tautline.Cli.Papers;

internal static class PapersRun
{
    private static readonly Dictionary<string, PaperKind> kinds = Enum.GetValues<PaperKind>().ToDictionary(k => k.ToString().ToLowerInvariant());

    public static ExitCode Run(PapersOptions options, CliHost host)
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
        return planned.After(Make(options, planned, host));
    }

    private static ExitCode Make(PapersOptions options, Planned planned, CliHost host)
    {
        var choice = new PaperChoice(planned.Units, Phrases.Of(options.Language), new(PaperPrinting.Size(options.Size, planned.Units))) { Stakes = Stakes(planned) };
        if (options.Paper == "revision") return Revision(options, planned, choice, host);
        if (options.Paper == "calculation") return Calculation(options, planned, choice, host);
        if (Extension(options) == ".xlsx") return options.Target.Write(host, Work.Run(host, "writing tables", () => XlsxWriter.WriteAsync(PlanBook.Of(planned.Plan!, choice)).GetAwaiter().GetResult()));
        return options.Paper == "site" && Extension(options) != ".pdf"
            ? Site(options, planned, choice, host)
            : PaperPrinting.Print(options.Target, host, pause => PaperMaker.OfAsync(kinds[options.Paper], planned.Plan!, choice, pause));
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

    private static ExitCode Site(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var scene = DrawingPaper.SiteScene(planned.Plan!, choice)!; // a plan without errors has a line
        return Extension(options) == ".svg"
            ? options.Target.Write(host, Encoding.UTF8.GetBytes(SvgWriter.File(scene, planned.Plan!.Basis.Job.Name)))
            : options.Target.Write(host, DxfWriter.Write(scene, choice.Units));
    }

    private static ExitCode Revision(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var before = Planning.Run(options.Planning with { File = options.Against!, Built = null }, host);
        if (before.Exit != ExitCode.Fine)
        {
            Messages.Show(host, before.Findings);
            return before.Exit;
        }

        return PaperPrinting.Print(options.Target, host, _ => Task.FromResult(RevisionPaper.Of(before.Plan!, planned.Plan!, choice)));
    }

    private static ExitCode Calculation(PapersOptions options, Planned planned, PaperChoice choice, CliHost host)
    {
        var reading = FactText.Parse(planned.Plan!, options.Fact!);
        if (reading.Key is { } fact) return PaperPrinting.Print(options.Target, host, _ => Task.FromResult(CalculationPaper.Of(planned.Plan!, [fact], choice)));
        Messages.Error(host, reading.Message, "'tautline why FILE --list' lists the facts of a plan.");
        return ExitCode.Problems;
    }

    private static StakeTable Stakes(Planned planned)
    {
        var stakes = StakeLister.Of(planned.Plan!, planned.Units);
        return new(stakes.Unit.Name(), stakes.System ?? "", [.. stakes.Stakes.Select(s => new StakeRow(s.Point, s.Northing, s.Easting, s.Elevation))]);
    }
}
