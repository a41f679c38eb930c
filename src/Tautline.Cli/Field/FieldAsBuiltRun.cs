using Tautline.Cli.Output;
using Tautline.Cli.Papers;
using Tautline.Cli.Terminal;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Built;

namespace Tautline.Cli.Field;

/// <param name="Size">Nothing where none was asked for.</param>
/// <param name="Zone">Where the work is; nothing for the machine's.</param>
internal sealed record FieldAsBuiltOptions(string File, string Language, UnitSystem? Units, PaperSize? Size, TimeZoneInfo? Zone, Target Target);

internal static class FieldAsBuiltRun
{
    public static ExitCode Run(FieldAsBuiltOptions options, CliHost host)
    {
        if (!options.Target.Path!.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            Messages.Error(host, $"--out {options.Target.Path}: the as-built is a PDF.", "Let the name end in .pdf.");
            return ExitCode.Usage;
        }
        if (options.Target.Check(host) is not ExitCode.Fine and var refused) return refused;
        var reading = Work.Run(host, "reading", () => FieldSource.Read(options.File));
        Messages.Show(host, reading.Findings);
        if (reading.File is not { } file) return reading.Exit;
        var state = FieldState.Of(file, options.Units, host);
        Messages.Show(host, Messages.Ordered(state.Findings));
        if (state.Built is not { } built) return ExitCode.Problems;
        var clock = new FieldClock(options.Zone ?? host.Clock.LocalTimeZone);
        Messages.Show(host, FieldConflicts.Told(file.Exchange.Shared, new FieldWords(state.Units, clock)));
        var choice = new PaperChoice(state.Units, Phrases.Of(options.Language), new(PaperPrinting.Size(options.Size, state.Units)));
        var printed = PaperPrinting.Print(options.Target, host, _ => Task.FromResult(AsBuiltPaper.Of(built, state.Log, choice, clock.Text)));
        return printed != ExitCode.Fine ? printed : reading.Exit;
    }
}
