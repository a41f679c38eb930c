using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Field.Building;

/// <summary>One operation on one run, or on one gate.</summary>
/// <param name="Run">Index of the run in its line; of the gate where the operation is <see cref="Operations.Gate"/>.</param>
/// <param name="Left">Of posts the indices of those that are still to do, walking forward.</param>
public sealed record TodayRow(string Operation, int Line, int Run, int Of, int Done, IReadOnlyList<int> Left)
{
    public bool Finished => Done >= Of;
}

/// <summary>What is done and what is next, by run. An entry about a place that is on no line any more is kept and told.</summary>
/// <param name="Astray">Work on places the job does not have any more.</param>
public sealed record Today(IReadOnlyList<TodayRow> Rows, IReadOnlyList<LogEntry> Astray)
{
    /// <summary>What a crew would do next on a run: the first operation in order that is not finished.</summary>
    public TodayRow? Next(int line, int run) => Rows.FirstOrDefault(r => r.Line == line && r.Run == run && r.Operation != Operations.Gate && !r.Finished);

    public static Today Of(Plan plan, LogState log)
    {
        var work = log.Standing.Where(e => e.Done is not null).ToList();
        var done = new DonePosts(work);
        var rows = plan.Lines.SelectMany((line, l) => Runs(plan, line, l, work, done).Concat(Gates(plan, line, l, work))).ToList();
        return new(rows, [.. work.Where(e => IsAstray(plan, e))]);
    }

    private static IEnumerable<TodayRow> Runs(Plan plan, LinePlan line, int l, IReadOnlyList<LogEntry> work, DonePosts done)
    {
        var posts = RunPosts.Of(line);
        for (var r = 0; r < line.Runs.Count; r++)
            foreach (var operation in Operations.All.Where(o => o != Operations.Gate))
                yield return Operations.OfPosts(operation) ? OfPosts(operation, line, l, r, posts[r], done) : OfRun(operation, plan, l, r, work);
    }

    private static TodayRow OfPosts(string operation, LinePlan line, int l, int r, IReadOnlyList<int> posts, DonePosts done)
    {
        List<int> left = [.. posts.Where(p => !done.Has(operation, line.Posts[p]))];
        return new(operation, l, r, posts.Count, posts.Count - left.Count, left);
    }

    private static TodayRow OfRun(string operation, Plan plan, int l, int r, IReadOnlyList<LogEntry> work)
    {
        var (run, posts) = (plan.Lines[l].Runs[r], plan.Lines[l].Posts);
        var from = posts[run.FromPost].Station;
        return new(operation, l, r, 1, work.Any(e => e.Done!.Operation == operation && On(plan, l, e, from, from + run.Level)) ? 1 : 0, []);
    }

    private static IEnumerable<TodayRow> Gates(Plan plan, LinePlan line, int l, IReadOnlyList<LogEntry> work)
        => line.Gates.Select((gate, g) => (gate, g, from: line.Posts[gate.FromPost].Station)).Select(x => new TodayRow(
            Operations.Gate, l, x.g, 1, work.Any(e => e.Done!.Operation == Operations.Gate && On(plan, l, e, x.from, x.from + x.gate.Centres)) ? 1 : 0, []));

    /// <summary>Whether an entry's place lies within two stations of a line, its ends left out: they belong to two runs.</summary>
    private static bool On(Plan plan, int line, LogEntry entry, Length from, Length to)
        => entry.Place is { } place && StationOf(plan, line, place) is { } station && station > from && station < to;

    /// <summary>Where a place is along a line as it runs now; nothing where its leg is not of this line.</summary>
    internal static Length? StationOf(Plan plan, int line, LogPlace place)
        => plan.Basis.Lines[line].Site.Chain.Legs.FirstOrDefault(l => l.Leg?.Id == place.Leg) is { } leg ? Length.FromNanometres(leg.StartNm) + place.At : null;

    private static bool IsAstray(Plan plan, LogEntry entry)
        => entry.Done!.Posts.Count == 0 && entry.Place is { } place && !Enumerable.Range(0, plan.Lines.Count).Any(l => StationOf(plan, l, place) is not null);
}

/// <summary>Posts that were worked on, found by where they stand. What is set was drilled, and what is drilled was staked.</summary>
internal sealed class DonePosts(IReadOnlyList<LogEntry> work)
{
    private static readonly Length same = Length.FromInches(6);

    private readonly IReadOnlyList<(int Rank, PostDone Post)> posts =
        [.. work.SelectMany(e => e.Done!.Posts.Select(p => (Rank(e.Done.Operation), p)))];

    public bool Has(string operation, PostPlan post) => posts.Any(p => p.Rank >= Rank(operation) && Near(p.Post, post));

    private static int Rank(string operation) => operation switch { Operations.Set => 3, Operations.Drill => 2, Operations.Stake => 1, _ => 0 };

    private static bool Near(PostDone done, PostPlan post)
    {
        var (x, y) = ((done.East - post.East).Metres, (done.North - post.North).Metres);
        return x * x + y * y < same.Metres * same.Metres;
    }
}
