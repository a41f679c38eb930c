using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.AsBuilt;

/// <summary>A stretch of a line that is done, level stations; a single post where both are one.</summary>
public readonly record struct DoneStretch(Length From, Length To);

/// <summary>One operation of a run: posts done of its posts, or the whole run.</summary>
/// <param name="Done">Never more than <paramref name="Of"/>.</param>
public sealed record OperationProgress(string Operation, int Done, int Of)
{
    /// <summary>See <see cref="ProgressFigure.Percent"/>.</summary>
    public int Percent => ProgressFigure.Whole(Done, Of);
}

/// <param name="From">Station of the run's first post.</param>
/// <param name="To">Of its last; past the line's start where a closed line comes back to it.</param>
/// <param name="Operations">In the order of the work.</param>
public sealed record RunProgress(int Line, int Run, Length From, Length To, IReadOnlyList<OperationProgress> Operations)
{
    public bool Finished => Operations.All(o => o.Done >= o.Of);
}

/// <summary>Where along a line an operation is done, in order of station; none where it was not begun.</summary>
public sealed record LineProgress(int Line, string Operation, IReadOnlyList<DoneStretch> Stretches);

/// <summary>What is counted or measured of the work.</summary>
public enum ProgressKind
{
    /// <summary>Posts set, of all posts of the lines.</summary>
    Posts,

    /// <summary>Top rail of the runs that are framed.</summary>
    Rail,

    /// <summary>Fabric of the runs that are hung.</summary>
    Hung,

    /// <summary>Fabric of the runs that are tied.</summary>
    Tied,

    /// <summary>Gates hung.</summary>
    Gates,
}

/// <summary>A quantity done of the whole. There is no percent of all work: the plan knows no hours, and a foot of fabric is not a hole.</summary>
/// <param name="Done">A count, or metres for rail and fabric; never more than <paramref name="Of"/>.</param>
public sealed record ProgressFigure(ProgressKind Kind, double Done, double Of)
{
    public bool IsLength => Kind is ProgressKind.Rail or ProgressKind.Hung or ProgressKind.Tied;

    /// <summary>Whole percent, rounded down: 100 only once all of it is done.</summary>
    public int Percent => Whole(Done, Of);

    internal static int Whole(double done, double of) => done >= of ? 100 : Math.Clamp((int)(100 * done / of), 0, 99);
}

public sealed record GateProgress(int Line, int Gate, bool Hung);

/// <summary>How far the work is, by run, by station and by quantity, on the plan through what stands.</summary>
/// <param name="Figures">Of those the job has.</param>
/// <param name="Apart">Posts that stand in no run and are not set by the log: no button of the field's screen marks them.</param>
public sealed record BuildProgress(
    IReadOnlyList<RunProgress> Runs, IReadOnlyList<LineProgress> Stations, IReadOnlyList<ProgressFigure> Figures, IReadOnlyList<GateProgress> Gates, int Apart)
{
    public static BuildProgress Of(Plan now, LogState log)
    {
        var rows = Today.Of(now, log).Rows;
        var done = new DonePosts([.. log.Standing.Where(e => e.Done is not null)]);
        var runs = rows.Where(r => r.Operation != Operations.Gate).GroupBy(r => (r.Line, r.Run)).Select(g => Run(now, g.Key.Line, g.Key.Run, g)).ToList();
        var gates = rows.Where(r => r.Operation == Operations.Gate).Select(r => new GateProgress(r.Line, r.Run, r.Finished)).ToList();
        var apart = Enumerable.Range(0, now.Lines.Count).SelectMany(l => InNoRun(now.Lines[l]).Select(p => now.Lines[l].Posts[p])).ToList();
        var apartSet = apart.Count(p => done.Has(Operations.Set, p));
        return new(runs, Along(now, runs, done), Counted(now, runs, gates, apart.Count, apartSet), gates, apart.Count - apartSet);
    }

    private static RunProgress Run(Plan plan, int line, int run, IEnumerable<TodayRow> rows)
    {
        var from = plan.Lines[line].Posts[plan.Lines[line].Runs[run].FromPost].Station;
        return new(line, run, from, from + plan.Lines[line].Runs[run].Level, [.. rows.Select(r => new OperationProgress(r.Operation, r.Done, r.Of))]);
    }

    private static IEnumerable<int> InNoRun(LinePlan line) => Enumerable.Range(0, line.Posts.Count).Except(RunPosts.Of(line).SelectMany(p => p));

    private static List<ProgressFigure> Counted(Plan plan, List<RunProgress> runs, List<GateProgress> gates, int apart, int apartSet)
    {
        double Sum(string? operation, Func<RunPlan, Length> part) => runs
            .Where(r => operation is null || r.Operations.Any(o => o.Operation == operation && o.Done >= o.Of)).Sum(r => part(plan.Lines[r.Line].Runs[r.Run]).Metres);
        var set = runs.Select(r => r.Operations.First(o => o.Operation == Operations.Set)).ToList();
        List<ProgressFigure> figures =
        [
            new(ProgressKind.Posts, set.Sum(o => o.Done) + apartSet, set.Sum(o => o.Of) + apart),
            new(ProgressKind.Rail, Sum(Operations.Frame, r => r.Rail), Sum(null, r => r.Rail)),
            new(ProgressKind.Hung, Sum(Operations.Hang, r => r.Fabric), Sum(null, r => r.Fabric)),
            new(ProgressKind.Tied, Sum(Operations.Tie, r => r.Fabric), Sum(null, r => r.Fabric)),
            new(ProgressKind.Gates, gates.Count(g => g.Hung), gates.Count),
        ];
        return [.. figures.Where(f => f.Of > 0)];
    }

    private static List<LineProgress> Along(Plan plan, List<RunProgress> runs, DonePosts done)
        => [.. from l in Enumerable.Range(0, plan.Lines.Count)
               from operation in Operations.All.Where(o => o != Operations.Gate)
               let pieces = runs.Where(r => r.Line == l).SelectMany(r => Operations.OfPosts(operation) ? OfPosts(plan.Lines[l], r, operation, done) : OfRun(r, operation))
               select new LineProgress(l, operation, Joined(pieces, plan.Lines[l]))];

    private static IEnumerable<DoneStretch> OfRun(RunProgress run, string operation)
        => run.Operations.Any(o => o.Operation == operation && o.Done >= o.Of) ? [new(run.From, run.To)] : [];

    /// <summary>From post to post where both are done; a post alone is a stretch without length.</summary>
    private static IEnumerable<DoneStretch> OfPosts(LinePlan line, RunProgress run, string operation, DonePosts done)
    {
        DoneStretch? open = null;
        var at = line.Runs[run.Run].FromPost;
        for (var bay = 0; bay <= line.Runs[run.Run].Bays; bay++, at = (at + 1) % line.Posts.Count)
        {
            var station = bay == line.Runs[run.Run].Bays ? run.To : line.Posts[at].Station;
            if (done.Has(operation, line.Posts[at])) open = new(open?.From ?? station, station);
            else
            {
                if (open is { } closed) yield return closed;
                open = null;
            }
        }
        if (open is { } last) yield return last;
    }

    private static List<DoneStretch> Joined(IEnumerable<DoneStretch> pieces, LinePlan line)
    {
        List<DoneStretch> joined = [];
        foreach (var piece in pieces.OrderBy(p => p.From.Metres).ThenBy(p => p.To.Metres))
            if (joined.Count > 0 && piece.From.Nanometres <= joined[^1].To.Nanometres) joined[^1] = joined[^1] with { To = Length.Max(joined[^1].To, piece.To) };
            else joined.Add(piece);
        // Where a closed line comes back to its first post that post was told already.
        if (line.Closed && joined.Count > 1 && joined[0].From == Length.Zero && joined[^1] is var last && last.From == last.To && last.To.Nanometres == line.Level.Nanometres) joined.RemoveAt(joined.Count - 1);
        return joined;
    }
}
