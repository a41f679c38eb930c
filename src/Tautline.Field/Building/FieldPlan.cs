using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Field.Log;

namespace Tautline.Field.Building;

/// <summary>A job planned around what stands.</summary>
/// <param name="AsDrawn">The plan without what was built: what the office expects.</param>
/// <param name="Now">The plan through what stands; the same as <paramref name="AsDrawn"/> where nothing is built.</param>
public sealed record FieldPlan(Plan AsDrawn, Plan Now, Standing Standing)
{
    public static FieldPlan Of(Job job, FenceCatalog catalog, Rules rules, LogState log)
    {
        var drawn = JobPlanner.Plan(job, catalog, rules, BuiltFacts.None);
        var standing = Standing.Of(drawn, log);
        return new(drawn, standing.Facts.Posts.Count == 0 ? drawn : JobPlanner.Plan(job, catalog, rules, standing.Facts), standing);
    }
}
