using Tautline.Engine.Comparison;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.AsBuilt;

/// <summary>A change that was agreed and signed.</summary>
/// <param name="Station">Where on its line, level; nothing where its leg is not in the job any more.</param>
public sealed record AgreedChange(LogEntry Entry, Length? Station);

/// <summary>
/// What stands, by the crew's own log, beside what was drawn. It is the crew's record and no survey: a post marked done stands where the plan had it, one that was
/// measured where the tape said. The same whatever the order of the entries.
/// </summary>
/// <param name="Drawn">The plan without what was built.</param>
/// <param name="Now">The plan through what stands.</param>
/// <param name="Posts">All that stand at a line of the job, by line and station.</param>
/// <param name="Lost">Posts whose line was taken out of the job.</param>
/// <param name="ToBuild">Posts of the drawing that do not stand yet.</param>
/// <param name="LeftOut">Posts of the drawing that do not stand, in runs whose posts are all set: the run was divided otherwise.</param>
/// <param name="Takeoff">Take-off lines on which the two plans differ.</param>
/// <param name="Changes">Changes that were agreed and signed, in the order they came.</param>
public sealed record BuiltRecord(
    Plan Drawn, Plan Now, IReadOnlyList<StandingPost> Posts, IReadOnlyList<LostPost> Lost, IReadOnlyList<PostAt> ToBuild, IReadOnlyList<PostAt> LeftOut, BuildProgress Progress,
    IReadOnlyList<TakeoffDifference> Takeoff, IReadOnlyList<AgreedChange> Changes)
{
    /// <summary>Posts that stand and are not where, or not what, they were drawn as.</summary>
    public IEnumerable<StandingPost> Differences => Posts.Where(p => p.Differs);

    /// <summary>Posts the drawing does not have.</summary>
    public IEnumerable<StandingPost> Extra => Posts.Where(p => p.Drawn is null);

    /// <summary>Nothing stands otherwise than it was drawn, as far as anything stands.</summary>
    public bool AsDrawn => !Differences.Any() && Lost.Count == 0 && LeftOut.Count == 0 && Takeoff.Count == 0;

    /// <summary>Of all changes, whole cents of the job's money.</summary>
    public long ChangedCents => checked(Changes.Sum(c => c.Entry.Changed!.TotalCents));

    /// <summary>Nothing is known of work before it is planned: where either plan has errors only the changes are there.</summary>
    public static BuiltRecord Of(Plan drawn, Plan now, LogState log)
    {
        IReadOnlyList<AgreedChange> changes = [.. log.Standing.Where(e => e.Kind == LogEntry.Change && e.Changed is not null).Select(e => new AgreedChange(e, StationOf(now, e.Place)))];
        if (drawn.HasErrors || now.HasErrors) return new(drawn, now, [], [], [], [], new([], [], [], [], 0), [], changes);
        var (posts, lost) = PostPairing.Of(drawn, log);
        var progress = BuildProgress.Of(now, log);
        var built = posts.Where(p => p.Drawn is not null).Select(p => new PostAt(p.Line, p.Drawn!.Value)).ToHashSet();
        var missing = Enumerable.Range(0, drawn.Lines.Count).SelectMany(l => Enumerable.Range(0, drawn.Lines[l].Posts.Count).Select(p => new PostAt(l, p))).Where(p => !built.Contains(p))
            .ToLookup(p => IsSet(drawn, progress, p));
        return new(drawn, now, posts, lost, [.. missing[false]], [.. missing[true]], progress, ReferenceEquals(drawn, now) ? [] : RuleComparison.ComparePlans(drawn, now).Takeoff, changes);
    }

    public static BuiltRecord Of(FieldPlan plan, LogState log) => Of(plan.AsDrawn, plan.Now, log);

    private static Length? StationOf(Plan plan, LogPlace? place)
    {
        if (place is null || plan.HasErrors) return null;
        var leg = plan.Basis.Lines.SelectMany(l => l.Site.Chain.Legs).FirstOrDefault(l => l.Leg?.Id == place.Leg);
        return leg is null ? null : Length.FromNanometres(leg.StartNm) + place.At;
    }

    /// <summary>Whether all posts of the run in which a post was drawn are set as the run is now.</summary>
    private static bool IsSet(Plan drawn, BuildProgress progress, PostAt post)
    {
        var station = drawn.Lines[post.Line].Posts[post.Post].Station;
        var run = progress.Runs.FirstOrDefault(r => r.Line == post.Line && station >= r.From && station <= r.To);
        return run is not null && run.Operations.Any(o => o.Operation == Operations.Set && o.Done >= o.Of);
    }
}
