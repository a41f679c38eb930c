using System.Security.Cryptography;
using System.Text;
using Tautline.Engine.Jobs;
using Tautline.Field.Log;

namespace Tautline.Field.Merging;

/// <summary>
/// A job that several devices work on: the texts it began from and every change since, both sets that only grow. What it is now is a fold of them in order, so
/// whoever knows the same sets has the same job and the same open conflicts, however they came. A server that gives an order will only carry them.
/// </summary>
public sealed class SharedJob
{
    private readonly SortedDictionary<string, Job> roots;
    private readonly SortedDictionary<string, JobChange> changes;
    private readonly SortedDictionary<string, string> extra;
    private JobFold? fold;

    private SharedJob(SortedDictionary<string, Job> roots, SortedDictionary<string, JobChange> changes, SortedDictionary<string, string> extra, JobFold? fold = null)
        => (this.roots, this.changes, this.extra, this.fold) = (roots, changes, extra, fold);

    public JobId Id => roots.Values.First().Id;

    public IReadOnlyCollection<Job> Roots => roots.Values;

    /// <summary>In the order they are folded.</summary>
    public IEnumerable<JobChange> Changes => changes.OrderBy(c => c.Value.Tick).ThenBy(c => c.Value.Key).ThenBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value);

    /// <summary>What a later program wrote beside both, by name, as canonical text: carried along.</summary>
    public IReadOnlyCollection<KeyValuePair<string, string>> Extra => extra;

    /// <summary>Numbers of a device that two different changes carry, as after a restored backup: both are in the job.</summary>
    public IReadOnlyList<LogKey> NumbersTwice => [.. changes.Values.GroupBy(c => c.Key).Where(g => g.Count() > 1).Select(g => g.Key).Order()];

    public int Count => changes.Count;

    /// <summary>The greatest tick of all changes.</summary>
    public long Seen => changes.Values.Select(c => c.Tick).DefaultIfEmpty(0).Max();

    public IReadOnlyList<Conflict> Conflicts => Fold.Conflicts;

    /// <summary>The fields of the job as it is now.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Fields => Fold.Fields;

    /// <summary>SHA-256 of the job as it is now, in small hexadecimal digits: the name of the revision.</summary>
    public string Revision => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Text(Fold.Values.OrderBy(v => v.Key, StringComparer.Ordinal)))));

    /// <summary>The job as it is now. What the merged fields do not add up to is told like any slip of a job file.</summary>
    public JobReading Head => JobFlat.Job(Fold.Values, Fold.Rank);

    public static SharedJob Begin(Job job) => new(new(StringComparer.Ordinal) { [Text(JobFlat.Of(job))] = job }, new(StringComparer.Ordinal), new(StringComparer.Ordinal));

    /// <summary>With everything another knows. The order and the number of times do not matter.</summary>
    /// <exception cref="ArgumentException">The other is of another job.</exception>
    public SharedJob Merge(SharedJob other) => With(other.roots, other.changes, other.extra);

    /// <exception cref="ArgumentException">One of the texts is of another job.</exception>
    public SharedJob With(IEnumerable<Job> moreRoots, IEnumerable<JobChange> moreChanges, IEnumerable<KeyValuePair<string, string>>? moreExtra = null) => With(
        moreRoots.Select(r => new KeyValuePair<string, Job>(Text(JobFlat.Of(r)), r)), moreChanges.Select(c => new KeyValuePair<string, JobChange>(ExchangeText.Of(c), c)), moreExtra ?? []);

    private SharedJob With(IEnumerable<KeyValuePair<string, Job>> moreRoots, IEnumerable<KeyValuePair<string, JobChange>> moreChanges, IEnumerable<KeyValuePair<string, string>> moreExtra)
    {
        List<KeyValuePair<string, Job>> newRoots = [.. moreRoots.Where(r => !roots.ContainsKey(r.Key))];
        List<KeyValuePair<string, JobChange>> newChanges = [.. moreChanges.Where(c => !changes.ContainsKey(c.Key))];
        // Of two texts under one name that this program cannot read the greater is carried on, whoever merges.
        List<KeyValuePair<string, string>> newExtra = [.. moreExtra.Where(e => !extra.TryGetValue(e.Key, out var known) || string.CompareOrdinal(known, e.Value) < 0)];
        if (newRoots.FirstOrDefault(r => r.Value.Id != Id) is { Value: { } stranger }) throw new ArgumentException($"'{stranger.Id.Value}' is another job than '{Id.Value}': two jobs are not joined", nameof(moreRoots));
        if (newRoots.Count == 0 && newChanges.Count == 0 && newExtra.Count == 0) return this;
        SortedDictionary<string, Job> allRoots = new(roots, StringComparer.Ordinal);
        SortedDictionary<string, JobChange> all = new(changes, StringComparer.Ordinal);
        SortedDictionary<string, string> allExtra = new(extra, StringComparer.Ordinal);
        foreach (var (text, root) in newRoots) allRoots.TryAdd(text, root);
        foreach (var (text, change) in newChanges) all.TryAdd(text, change);
        foreach (var (name, value) in newExtra) allExtra[name] = value;
        return new(allRoots, all, allExtra);
    }

    /// <summary>What was done to the job on this device since it last was as <see cref="Head"/>; itself where nothing was.</summary>
    /// <param name="clock">The device's clock, milliseconds since 1970.</param>
    public SharedJob Record(Job now, LogKey key, long clock, string person, params IReadOnlyList<Resolution> resolves)
        => Record(JobDiff.Of(Fields, JobFlat.Of(now)), key, clock, person, resolves);

    internal SharedJob Record(IReadOnlyList<FieldChange> fields, LogKey key, long clock, string person, IReadOnlyList<Resolution> resolves)
    {
        if (fields.Count == 0 && resolves.Count == 0) return this;
        var change = new JobChange(key, Stamp.Next(clock, Seen), person, fields, resolves);
        // It is the last in order, so the fold goes on from here.
        var next = new JobFold(Fold);
        next.Apply(change);
        return new(roots, new(changes, StringComparer.Ordinal) { [ExchangeText.Of(change)] = change }, extra, next);
    }

    private JobFold Fold => fold ??= Folded();

    private JobFold Folded()
    {
        var first = JobFlat.Of(roots.Values.First());
        var made = new JobFold(first);
        foreach (var other in roots.Values.Skip(1))
            foreach (var field in JobDiff.Of(first, JobFlat.Of(other))) made.Begin(field);
        foreach (var change in Changes) made.Apply(change);
        return made;
    }

    private static string Text(IEnumerable<KeyValuePair<string, string>> fields) => string.Join('\n', fields.Select(f => $"{f.Key}\t{f.Value}"));
}
