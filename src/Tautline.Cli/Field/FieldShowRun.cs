using Tautline.Cli.Terminal;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Field;

/// <param name="Day">To judge locate tickets by; nothing for the machine's.</param>
/// <param name="Zone">Where the work is; nothing for the machine's.</param>
internal sealed record FieldShowOptions(string File, bool Entries, DateOnly? Day, TimeZoneInfo? Zone, UnitSystem? Units, bool Json);

internal static class FieldShowRun
{
    public static ExitCode Run(FieldShowOptions options, CliHost host)
    {
        var reading = Work.Run(host, "reading", () => FieldSource.Read(options.File));
        if (reading.File is not { } file)
        {
            Messages.Show(host, reading.Findings);
            return reading.Exit;
        }
        var state = FieldState.Of(file, options.Units, host);
        Messages.Show(host, Messages.Ordered([.. reading.Findings, .. state.Findings]));
        var clock = new FieldClock(options.Zone ?? host.Clock.LocalTimeZone);
        var day = options.Day ?? clock.Today(host);
        host.Output.Write(options.Json
            ? FieldShowJson.Write(state, clock, day, options.Entries)
            : new FieldShowText(state, new FieldWords(state.Units, clock), day, Paper.For(host)).Write(options.Entries));
        return reading.Exit > state.Exit ? reading.Exit : state.Exit;
    }
}
