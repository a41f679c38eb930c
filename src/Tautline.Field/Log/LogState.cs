namespace Tautline.Field.Log;

/// <summary>Something about the log that a person should know.</summary>
public enum LogFindingKind
{
    /// <summary>Two entries took the place of one: both stand until somebody takes one back.</summary>
    CorrectedTwice,

    /// <summary>Two different entries carry one number of one device, as after a restored backup: both stand.</summary>
    NumberTwice,

    /// <summary>An entry of a kind this program does not know: kept, and not counted.</summary>
    UnknownKind,
}

public sealed record LogFinding(LogFindingKind Kind, LogKey Entry);

/// <summary>
/// What stands of a log: the fold of the set of its entries, whatever their order and however often each is given. An entry that another supersedes stands no more;
/// of two that supersede one both stand.
/// </summary>
/// <param name="Standing">Ordered by tick, then device and number.</param>
public sealed record LogState(IReadOnlyList<LogEntry> Standing, IReadOnlyList<LogFinding> Findings)
{
    /// <summary>The greatest tick there is; the next entry goes after it.</summary>
    public long Seen { get; private init; }

    public static LogState Of(IEnumerable<LogEntry> entries)
    {
        var set = entries.GroupBy(e => (e.Key, Text: Convert.ToBase64String(LogJson.Write(e)))).Select(g => g.First()).ToList();
        var byKey = set.ToLookup(e => e.Key);
        var corrections = set.Where(e => Corrects(e, byKey)).ToLookup(e => e.Supersedes!.Value);
        var standing = set.Where(e => !corrections.Contains(e.Key) && !e.TakesBack).OrderBy(e => e.Tick).ThenBy(e => e.Key).ThenBy(e => e.Text, StringComparer.Ordinal).ToList();
        List<LogFinding> findings =
        [
            .. corrections.Where(c => c.Count(e => !corrections.Contains(e.Key)) > 1).Select(c => new LogFinding(LogFindingKind.CorrectedTwice, c.Key)),
            .. byKey.Where(g => g.Count() > 1).Select(g => new LogFinding(LogFindingKind.NumberTwice, g.Key)),
            .. standing.Where(e => !LogEntry.Kinds.Contains(e.Kind)).Select(e => new LogFinding(LogFindingKind.UnknownKind, e.Key)),
        ];
        return new(standing, [.. findings.OrderBy(f => f.Kind).ThenBy(f => f.Entry)]) { Seen = set.Select(e => e.Tick).DefaultIfEmpty(0).Max() };
    }

    /// <summary>An entry cannot take the place of a later one, so that no two take each other's.</summary>
    private static bool Corrects(LogEntry entry, ILookup<LogKey, LogEntry> byKey)
        => entry.Supersedes is { } old && byKey[old].All(o => (o.Tick, o.Key).CompareTo((entry.Tick, entry.Key)) < 0);
}
