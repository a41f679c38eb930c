namespace Tautline.Field.Merging;

/// <summary>One field before and after an edit, as canonical text; nothing where it is not there. Of an entity that is added or removed the fields beneath it, by the rest of their path.</summary>
public sealed record FieldChange(string Path, string? Before, string? After)
{
    /// <summary>All that lies beneath an entity that was taken out.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Removed { get; init; } = [];

    /// <summary>All that lies beneath an entity that was put in.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Added { get; init; } = [];

    /// <summary>What a later program wrote besides, by name, as canonical text: carried along.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Extra { get; init; } = [];

    public bool OfEntity => Before == JobFlat.There || After == JobFlat.There;
}

/// <summary>What an edit did to the fields of a job.</summary>
public static class JobDiff
{
    /// <summary>The changes from one list of fields to another; an entity that came or went is one change, with all beneath it.</summary>
    public static IReadOnlyList<FieldChange> Of(IEnumerable<KeyValuePair<string, string>> before, IEnumerable<KeyValuePair<string, string>> after)
    {
        List<KeyValuePair<string, string>> was = [.. before], now = [.. after];
        var old = was.ToDictionary(StringComparer.Ordinal);
        var young = now.ToDictionary(StringComparer.Ordinal);
        var gone = was.Where(f => f.Value == JobFlat.There && !young.ContainsKey(f.Key)).Select(f => f.Key).ToHashSet(StringComparer.Ordinal);
        var come = now.Where(f => f.Value == JobFlat.There && !old.ContainsKey(f.Key)).Select(f => f.Key).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. was.Where(f => gone.Contains(f.Key) && !Within(f.Key, gone)).Select(f => new FieldChange(f.Key, JobFlat.There, null) { Removed = Beneath(was, f.Key) }),
            .. was.Where(f => f.Value != JobFlat.There && !Within(f.Key, gone) && young.GetValueOrDefault(f.Key) != f.Value)
                .Select(f => new FieldChange(f.Key, f.Value, young.GetValueOrDefault(f.Key))),
            .. now.Where(f => come.Contains(f.Key) && !Within(f.Key, come)).Select(f => new FieldChange(f.Key, null, JobFlat.There) { Added = Beneath(now, f.Key) }),
            .. now.Where(f => f.Value != JobFlat.There && !Within(f.Key, come) && !old.ContainsKey(f.Key)).Select(f => new FieldChange(f.Key, null, f.Value)),
        ];
    }

    /// <summary>The fields beneath an entity by the rest of their path, in their order.</summary>
    internal static IReadOnlyList<KeyValuePair<string, string>> Beneath(IEnumerable<KeyValuePair<string, string>> fields, string entity)
        => [.. fields.Where(f => f.Key.StartsWith(entity + "/", StringComparison.Ordinal)).Select(f => new KeyValuePair<string, string>(f.Key[(entity.Length + 1)..], f.Value))];

    private static bool Within(string path, HashSet<string> entities)
    {
        if (entities.Count == 0) return false;
        for (var at = JobFlat.Parent(path); at.Length > 0; at = JobFlat.Parent(at))
            if (entities.Contains(at)) return true;
        return false;
    }
}
