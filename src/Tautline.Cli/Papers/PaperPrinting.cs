using System.Globalization;
using Tautline.Cli.Output;
using Tautline.Cli.Terminal;
using Tautline.Documents.Paper;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;

namespace Tautline.Cli.Papers;

/// <summary>Prints a paper into a file and says how many pages it has.</summary>
internal static class PaperPrinting
{
    public static PaperSize Size(PaperSize? asked, UnitSystem units) => asked ?? (units == UnitSystem.Metric ? PaperSize.A4 : PaperSize.Letter);

    /// <param name="make">Makes the paper; what it is given is called between pieces of the work.</param>
    /// <exception cref="OperationCanceledException">The user cancelled.</exception>
    public static ExitCode Print(Target target, CliHost host, Func<Func<int, int, Task>, Task<PaperDocument>> make)
    {
        using var progress = new ProgressLine(host);
        Func<int, int, Task> Told(string doing) => (n, of) =>
        {
            progress.Cancelled.ThrowIfCancellationRequested();
            progress.Show($"{doing} {n} of {of}");
            return Task.CompletedTask;
        };
        var printed = PdfWriter.WriteAsync(make(Told("sheet")).GetAwaiter().GetResult(), Told("page")).GetAwaiter().GetResult();
        progress.Clear();
        var exit = target.Write(host, printed.Pdf);
        if (exit != ExitCode.Fine) return exit;
        host.Error.Write(string.Create(CultureInfo.InvariantCulture, $"{PlanWords.Count(printed.Pages, "page")}, {printed.Pdf.Length:#,0} bytes\n"));
        if (printed.UnknownCharacters.Length > 0) Messages.Show(host, [Unprinted(printed)]);
        return ExitCode.Fine;
    }

    private static Finding Unprinted(PrintedPaper printed) => new(
        Severity.Warning, "SignsMissing", "", $"The typeface lacks {PlanWords.Count(printed.UnknownCharacters.EnumerateRunes().Count(), "sign")} of this job; the last page names them.", "Write names with letters of the Latin alphabet.");
}
