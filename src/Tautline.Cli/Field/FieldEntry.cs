using Tautline.Field.Log;

namespace Tautline.Cli.Field;

/// <summary>An entry and what has become of it.</summary>
/// <param name="Stands">False where another took its place or took it back, and for one that only takes another back.</param>
internal sealed record FieldEntry(LogEntry Entry, bool Stands)
{
    /// <summary>Every entry of the log once, in the order it was written.</summary>
    public static IReadOnlyList<FieldEntry> Of(IReadOnlyList<LogEntry> entries, LogState log)
    {
        var standing = log.Standing.Select(Text).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. entries.Select(e => (Entry: e, Text: Text(e))).DistinctBy(e => e.Text).OrderBy(e => e.Entry.Tick).ThenBy(e => e.Entry.Key).ThenBy(e => e.Text, StringComparer.Ordinal)
                .Select(e => new FieldEntry(e.Entry, standing.Contains(e.Text))),
        ];
    }

    /// <summary>The whole of an entry: two are one where this is the same.</summary>
    public static string Text(LogEntry entry) => System.Text.Encoding.UTF8.GetString(LogJson.Write(entry));
}
