using Tautline.Cli.Terminal;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>The log of a file without what could not be reckoned with.</summary>
/// <param name="Findings">What was left out.</param>
internal sealed record FieldLog(LogState Log, IReadOnlyList<Finding> Findings)
{
    // Half way round the earth, a lifetime, and ten thousand million: what is beyond is no entry of a fence, and could not be reckoned with.
    private const double MostMetres = 20_000_000;
    private const double MostHours = 1_000_000;
    private const long MostCents = 1_000_000_000_000;

    public static FieldLog Of(FieldFile file) => new(
        LogState.Of(file.Exchange.Log.Where(Sound)),
        [
            .. file.Exchange.Log.Where(e => !Sound(e)).Select(e => new Finding(
                Severity.Warning, "FieldEntry", $"{file.Path}, entry {e.Key}", "A measure, hours or a price of this entry is beyond all bounds: it is kept, and not counted here.", "Take it back on the phone.")),
        ]);

    private static bool Sound(LogEntry entry)
        => Sound(entry.Place?.At) && (entry.Done?.Posts ?? []).All(p => Sound(p.At) && Sound(p.East) && Sound(p.North) && Sound(p.Top)) && Math.Abs(entry.Found?.Measured ?? 0) <= MostMetres
           && Math.Abs(entry.Worked?.Hours ?? 0) <= MostHours && Math.Abs((decimal)(entry.Changed?.TotalCents ?? 0)) <= MostCents && Math.Abs((decimal)(entry.Changed?.UnitCents ?? 0)) <= MostCents;

    private static bool Sound(Length? length) => length is not { } l || Math.Abs(l.Metres) <= MostMetres;
}
