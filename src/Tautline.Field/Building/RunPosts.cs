using Tautline.Engine.Plans;

namespace Tautline.Field.Building;

/// <summary>Which posts belong to which run: a terminal to the first run it stands at, so that every post is counted once.</summary>
public static class RunPosts
{
    /// <summary>For each run of a line the indices of its posts, walking forward.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Of(LinePlan line)
    {
        HashSet<int> taken = [];
        return [.. line.Runs.Select(run => (IReadOnlyList<int>)[.. Indices(line, run).Where(taken.Add)])];
    }

    /// <summary>The same, a post twice where a second roller post like it stands off the line: so many holes are dug and so many pipes set.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> WithRollers(LinePlan line)
        => [.. Of(line).Select(posts => (IReadOnlyList<int>)[.. posts, .. line.Gates.Select(g => g.Roller).OfType<int>().Where(posts.Contains)])];

    private static IEnumerable<int> Indices(LinePlan line, RunPlan run)
    {
        for (var i = run.FromPost; i != run.ToPost; i = (i + 1) % line.Posts.Count) yield return i;
        yield return run.ToPost;
    }
}
