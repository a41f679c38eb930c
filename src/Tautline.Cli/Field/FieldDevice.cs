using Tautline.Field.Log;
using Tautline.Field.Merging;

namespace Tautline.Cli.Field;

/// <summary>A device and what came from it. Numbers may be missing between the first and the last: a browser that was closed while it wrote leaves a gap.</summary>
/// <param name="Edits">Changes of the job.</param>
/// <param name="Last">The device's clock at its latest entry, milliseconds since 1970; nothing where it has none.</param>
internal sealed record FieldDevice(string Name, IReadOnlyList<string> People, int Entries, int Edits, long FirstNumber, long LastNumber, long? Last)
{
    public static IReadOnlyList<FieldDevice> Of(Exchange exchange)
    {
        var (entries, edits) = (exchange.Log.ToLookup(e => e.Device), exchange.Shared.Changes.ToLookup(c => c.Key.Device));
        return
        [
            .. entries.Select(g => g.Key).Union(edits.Select(g => g.Key)).Order(StringComparer.Ordinal).Select(d => new FieldDevice(
                d, [.. entries[d].Select(e => e.Person).Concat(edits[d].Select(c => c.Person)).Where(p => p.Length > 0).Distinct().Order(StringComparer.Ordinal)], entries[d].Count(), edits[d].Count(),
                Numbers(d).Min(), Numbers(d).Max(), entries[d].Any() ? entries[d].Max(e => e.At) : null)),
        ];

        IEnumerable<long> Numbers(string device) => entries[device].Select(e => e.Sequence).Concat(edits[device].Select(c => c.Key.Sequence));
    }
}
