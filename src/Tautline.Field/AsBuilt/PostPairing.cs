using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Building;
using Tautline.Field.Log;

namespace Tautline.Field.AsBuilt;

/// <summary>
/// Which post as drawn each post that stands is taken for: the closest two of a line first, then the closest two of those left, none twice, and none further apart
/// than half the greatest bay the rules allow. What stands further from every drawn post than that, or finds its own taken, is one the drawing does not have.
/// </summary>
internal static class PostPairing
{
    /// <summary>Two posts nearer than this are one, for two pipes cannot stand there: no pipe of a fence is thinner.</summary>
    private static readonly Length onePipe = Length.FromInches(1);

    /// <param name="drawn">The plan without what was built.</param>
    public static (IReadOnlyList<StandingPost> Posts, IReadOnlyList<LostPost> Lost) Of(Plan drawn, LogState log)
    {
        List<LostPost> lost = [];
        List<Found> found = [];
        foreach (var (entry, post) in log.Standing.Where(e => e.Done?.Operation == Operations.Set).SelectMany(e => e.Done!.Posts.Select(p => (e, p))))
            if (LineFoot.Of(drawn, post) is not { } foot) lost.Add(new(entry, post));
            else
            {
                found.RemoveAll(f => f.Foot.Line == foot.Line && Distance(f.Post, post.East, post.North) < (f.Post.Line == post.Line ? Standing.OnePost : onePipe));
                found.Add(new(entry, post, foot));
            }
        var sorted = found.OrderBy(f => f.Foot.Line).ThenBy(f => f.Foot.Station.Metres).ThenBy(f => f.Foot.Off.Metres).ThenBy(f => f.Entry.Key).ToList();
        return ([.. Enumerable.Range(0, drawn.Lines.Count).SelectMany(l => Paired(drawn, l, [.. sorted.Where(f => f.Foot.Line == l)]))], lost);
    }

    private static IEnumerable<StandingPost> Paired(Plan plan, int line, List<Found> found)
    {
        var posts = plan.Lines[line].Posts;
        var drawnOf = new int?[found.Count];
        HashSet<int> taken = [];
        foreach (var (f, p, _) in Near(plan, posts, found).OrderBy(n => n.Apart.Nanometres).ThenBy(n => OtherKind(found[n.Found], posts[n.Post])).ThenBy(n => n.Post).ThenBy(n => n.Found))
            if (drawnOf[f] is null && taken.Add(p)) drawnOf[f] = p;
        return found.Select((f, i) => new StandingPost(
            f.Entry, f.Post, line, f.Foot.Station, f.Foot.Off, drawnOf[i], drawnOf[i] is { } p ? Along(plan.Lines[line], f.Foot.Station - posts[p].Station) : Length.Zero,
            drawnOf[i] is { } q && OtherKind(f, posts[q])));
    }

    private static IEnumerable<(int Found, int Post, Length Apart)> Near(Plan plan, IReadOnlyList<PostPlan> posts, List<Found> found)
    {
        var most = plan.Basis.Rules.BayMax.Length / 2;
        for (var f = 0; f < found.Count; f++)
            for (var p = 0; p < posts.Count; p++)
            {
                var apart = Distance(found[f].Post, posts[p].East, posts[p].North);
                // A post of the other kind is this one only where it stands in its place.
                if (apart <= most && (apart < Standing.OnePost || !OtherKind(found[f], posts[p]))) yield return (f, p, apart);
            }
    }

    private static bool OtherKind(Found found, PostPlan post) => found.Post.Line != (post.Kind == PostKind.Line);

    /// <summary>On a closed line the short way round.</summary>
    private static Length Along(LinePlan line, Length along)
        => !line.Closed ? along : along > line.Level / 2 ? along - line.Level : along < -line.Level / 2 ? along + line.Level : along;

    private static Length Distance(PostDone post, Length east, Length north)
    {
        var (x, y) = ((post.East - east).Metres, (post.North - north).Metres);
        return new(Math.Sqrt(x * x + y * y));
    }

    private sealed record Found(LogEntry Entry, PostDone Post, LineFoot Foot);
}
