using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Field.Building;

public enum StandingFindingKind
{
    /// <summary>The line has gone from where the post stands: the plan goes on without it.</summary>
    NoLine,

    /// <summary>The line runs beside the post by more than a fence may be out of line.</summary>
    OffLine,
}

/// <summary>What differs between what stands and the job.</summary>
/// <param name="Off">From the line, level; zero where no line is near.</param>
public sealed record StandingFinding(StandingFindingKind Kind, LogKey Entry, PostDone Post, Length Off);

/// <summary>What stands by the log, as the job's lines run now. A post keeps its coordinates: where the line was moved its place along the line is another.</summary>
public sealed record Standing(BuiltFacts Facts, IReadOnlyList<StandingFinding> Findings)
{
    /// <summary>Off centreline: UFGS 32 31 13, Part 3, from memory.</summary>
    public static readonly Length OutOfLine = Length.FromInches(0.5);

    /// <summary>Further from every leg a post belongs to no line of the job any more. Chosen here, no source: nearer than any two posts of a fence.</summary>
    public static readonly Length NearLine = Length.FromFeet(2);

    /// <summary>Entries about two places nearer than this are about one post; the later one holds. Chosen here, no source.</summary>
    public static readonly Length OnePost = Length.FromFeet(1);

    /// <param name="plan">Of the job as it is; its own built posts do not matter, only how its lines run.</param>
    public static Standing Of(Plan plan, LogState log)
    {
        List<(BuiltPost Post, PostDone Done)> built = [];
        List<StandingFinding> findings = [];
        foreach (var (entry, post) in Set(log)) Add(plan, entry, post, built, findings);
        return new(new([.. built.Select(b => b.Post)]), findings);
    }

    /// <summary>The line posts that were set, the latest entry last.</summary>
    private static IEnumerable<(LogEntry Entry, PostDone Post)> Set(LogState log)
        => log.Standing.Where(e => e.Done?.Operation == Operations.Set).SelectMany(e => e.Done!.Posts.Where(p => p.Line).Select(p => (e, p)));

    private static void Add(Plan plan, LogEntry entry, PostDone post, List<(BuiltPost Post, PostDone Done)> built, List<StandingFinding> findings)
    {
        if (LineFoot.OnLeg(plan, post) is not { } foot)
        {
            findings.Add(new(StandingFindingKind.NoLine, entry.Key, post, Length.Zero));
            return;
        }
        if (Length.Abs(foot.Off) > OutOfLine) findings.Add(new(StandingFindingKind.OffLine, entry.Key, post, Length.Abs(foot.Off)));
        built.RemoveAll(b => Distance(b.Done, post.East, post.North) < OnePost);
        built.Add((new(new($"{entry.Key}/{built.Count}"), foot.Leg.Leg!.Id, foot.At, post.Top), post));
    }

    private static Length Distance(PostDone post, Length east, Length north)
    {
        var (x, y) = ((post.East - east).Metres, (post.North - north).Metres);
        return new(Math.Sqrt(x * x + y * y));
    }
}
