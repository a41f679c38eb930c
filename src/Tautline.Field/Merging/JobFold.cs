namespace Tautline.Field.Merging;

/// <summary>
/// The job and its open conflicts after changes in order. Three-way by field: what still has the value a change started from takes the new one; what has it
/// already stays; anything else stays too, and the new value is kept in a conflict. Nothing is thrown away.
/// </summary>
internal sealed class JobFold
{
    private readonly Dictionary<string, string> values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> ranks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dictionary<string, string>> graves = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> edited = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> rounds = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Open> open = new(StringComparer.Ordinal);

    private sealed record Open(string? Base, SortedSet<string> Others, bool OrGone);

    public JobFold(IEnumerable<KeyValuePair<string, string>> root)
    {
        foreach (var (path, value) in root) Set(path, value);
    }

    public JobFold(JobFold other)
    {
        (values, ranks) = (new(other.values, StringComparer.Ordinal), new(other.ranks, StringComparer.Ordinal));
        graves = other.graves.ToDictionary(g => g.Key, g => new Dictionary<string, string>(g.Value, StringComparer.Ordinal), StringComparer.Ordinal);
        edited = other.edited.ToDictionary(e => e.Key, e => new HashSet<string>(e.Value, StringComparer.Ordinal), StringComparer.Ordinal);
        rounds = new(other.rounds, StringComparer.Ordinal);
        open = other.open.ToDictionary(o => o.Key, o => o.Value with { Others = new(o.Value.Others, StringComparer.Ordinal) }, StringComparer.Ordinal);
    }

    /// <summary>The fields in the order they came to be.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Fields => [.. values.OrderBy(v => ranks[v.Key])];

    public IReadOnlyDictionary<string, string> Values => values;

    public int Rank(string path) => ranks[path];

    /// <summary>What the job has by now is no other value, except of an entity, where it means that it can be had back.</summary>
    public IReadOnlyList<Conflict> Conflicts => [.. open.OrderBy(o => o.Key, StringComparer.Ordinal).Select(o => new Conflict(
        o.Key, o.Value.Base, Stands(o.Key), [.. new[] { (string?)null }.Where(_ => o.Value.OrGone).Concat(o.Value.Others).Where(v => v != Stands(o.Key))], rounds.GetValueOrDefault(o.Key))).Where(c => c.Others.Count > 0)];

    /// <summary>
    /// Another text the job began from. What only one of them has is in both; where they differ, neither is known to be the later one, and that is asked.
    /// </summary>
    public void Begin(FieldChange change)
    {
        if (change.OfEntity && change.After is not null) Add(change);
        else if (change is { Before: null, After: not null }) Change(change);
        else if (change is { OfEntity: false, After: not null }) Keep(change.Path, null, change.After);
    }

    public void Apply(JobChange change)
    {
        foreach (var settled in change.Resolves) Apply(settled);
        foreach (var field in change.Fields) Apply(field);
    }

    public void Apply(FieldChange change)
    {
        if (change.OfEntity && change.After is null) Remove(change);
        else if (change.OfEntity) Add(change);
        else if (Grave(change.Path) is { } grave) InGrave(grave, change);
        else Change(change);
    }

    private void Change(FieldChange change)
    {
        var stands = values.GetValueOrDefault(change.Path);
        if (change.Before is { } before && open.TryGetValue(change.Path, out var conflict) && before != conflict.Base) conflict.Others.Remove(before);
        if (stands == change.After) return;
        if (stands == change.Before) Set(change.Path, change.After);
        else Keep(change.Path, change.Before, change.After);
    }

    private void Add(FieldChange change)
    {
        if (Grave(JobFlat.Parent(change.Path)) is { } grave)
        {
            var rest = change.Path[(grave.Length + 1)..];
            Bury(grave, rest, JobFlat.There);
            foreach (var (more, value) in change.Added) Bury(grave, $"{rest}/{more}", value);
            Keep(grave, null, JobFlat.There);
            return;
        }
        var old = graves.GetValueOrDefault(change.Path);
        var others = edited.GetValueOrDefault(change.Path);
        graves.Remove(change.Path);
        edited.Remove(change.Path);
        if (!values.ContainsKey(change.Path)) Set(change.Path, JobFlat.There);
        foreach (var (rest, value) in change.Added)
            if (value == JobFlat.There) Set($"{change.Path}/{rest}", value);
            else Change(new($"{change.Path}/{rest}", null, value));
        if (old is not null && others is not null) Bring(change.Path, old, others);
        if (open.TryGetValue(change.Path, out var asked) && asked.Others.Remove(JobFlat.There) && asked.Others.Count == 0 && !asked.OrGone) open.Remove(change.Path);
    }

    /// <summary>A thing is put in anew that was taken out: what others did to it meanwhile is asked about, and what they put into it comes along.</summary>
    private void Bring(string entity, Dictionary<string, string> old, HashSet<string> others)
    {
        foreach (var rest in others.Order(StringComparer.Ordinal))
        {
            var path = $"{entity}/{rest}";
            var theirs = old.GetValueOrDefault(rest);
            var stands = values.GetValueOrDefault(path);
            if (stands == theirs) continue;
            if (stands is null && theirs is not null && (theirs == JobFlat.There || InThing(rest, others))) Set(path, theirs);
            else Keep(path, null, theirs);
        }
    }

    /// <summary>True for a field of something that came with it.</summary>
    private static bool InThing(string rest, HashSet<string> others)
    {
        for (var at = JobFlat.Parent(rest); at.Length > 0; at = JobFlat.Parent(at))
            if (others.Contains(at)) return true;
        return false;
    }

    private void Remove(FieldChange change)
    {
        if (!values.ContainsKey(change.Path)) return;
        var now = JobDiff.Beneath(values, change.Path);
        if (Same(now, change.Removed)) Bury(change.Path);
        else Keep(change.Path, JobFlat.There, null);
    }

    /// <summary>Somebody changed what another had taken out: it stays out, with the change, and can be had back.</summary>
    private void InGrave(string grave, FieldChange change)
    {
        var rest = change.Path[(grave.Length + 1)..];
        var stands = graves[grave].GetValueOrDefault(rest);
        if (stands == change.After) return;
        if (stands == change.Before) Bury(grave, rest, change.After);
        else Keep(change.Path, change.Before, change.After);
        Keep(grave, JobFlat.There, JobFlat.There);
    }

    /// <summary>
    /// A settlement closes what its author saw, and sets what shall stand. Where another, unseen, settled it otherwise meanwhile, or changed it, both values are kept and asked about
    /// again: who decided later did not know of the other.
    /// </summary>
    private void Apply(Resolution settled)
    {
        var known = rounds.GetValueOrDefault(settled.Path);
        rounds[settled.Path] = known + 1;
        var sawAll = settled.Round == known;
        if (sawAll && open.TryGetValue(settled.Path, out var conflict))
        {
            var others = new SortedSet<string>(conflict.Others.Except(settled.Seen.OfType<string>()), StringComparer.Ordinal);
            var orGone = conflict.OrGone && !settled.Seen.Contains(null);
            if (others.Count == 0 && !orGone) open.Remove(settled.Path);
            else open[settled.Path] = conflict with { Others = others, OrGone = orGone };
        }
        var stands = Stands(settled.Path);
        if (stands == settled.Value) return;
        if (stands != settled.Stood || !sawAll) Keep(settled.Path, settled.Stood, settled.Value);
        else if (Grave(settled.Path) is { } grave && grave != settled.Path) Bury(grave, settled.Path[(grave.Length + 1)..], settled.Value);
        else if (settled.Value == JobFlat.There) Raise(settled.Path);
        else if (stands == JobFlat.There) Bury(settled.Path);
        else Set(settled.Path, settled.Value);
    }

    /// <summary>Another value for a field; where it goes on from one that is kept already it takes that one's place.</summary>
    private void Keep(string path, string? before, string? after)
    {
        var conflict = open.GetValueOrDefault(path) ?? new(before, new(StringComparer.Ordinal), false);
        if (before is not null && before != conflict.Base) conflict.Others.Remove(before);
        if (after is not null) conflict.Others.Add(after);
        open[path] = conflict with { OrGone = conflict.OrGone || after is null };
    }

    private void Set(string path, string? value)
    {
        if (value is null) values.Remove(path);
        else if (values.TryAdd(path, value)) ranks.TryAdd(path, ranks.Count);
        else values[path] = value;
    }

    private void Bury(string entity)
    {
        graves[entity] = JobDiff.Beneath(values, entity).ToDictionary(StringComparer.Ordinal);
        foreach (var rest in graves[entity].Keys) values.Remove($"{entity}/{rest}");
        values.Remove(entity);
    }

    private void Bury(string grave, string rest, string? value)
    {
        if (!edited.TryGetValue(grave, out var rests)) edited[grave] = rests = new(StringComparer.Ordinal);
        rests.Add(rest);
        if (value is null) graves[grave].Remove(rest);
        else graves[grave][rest] = value;
    }

    private void Raise(string entity)
    {
        if (!graves.Remove(entity, out var beneath)) return;
        edited.Remove(entity);
        Set(entity, JobFlat.There);
        foreach (var (rest, value) in beneath) Set($"{entity}/{rest}", value);
    }

    /// <summary>The value of a field, also of one whose entity was taken out.</summary>
    private string? Stands(string path)
        => values.TryGetValue(path, out var value) ? value : Grave(path) is { } grave && grave != path ? graves[grave].GetValueOrDefault(path[(grave.Length + 1)..]) : null;

    /// <summary>The entity that was taken out and that a path lies in.</summary>
    private string? Grave(string path)
    {
        if (graves.Count == 0) return null;
        for (var at = path; at.Length > 0; at = JobFlat.Parent(at))
            if (graves.ContainsKey(at)) return at;
        return null;
    }

    private static bool Same(IReadOnlyList<KeyValuePair<string, string>> a, IReadOnlyList<KeyValuePair<string, string>> b)
        => a.Count == b.Count && a.ToDictionary(StringComparer.Ordinal) is var map && b.All(f => map.GetValueOrDefault(f.Key) == f.Value);
}
