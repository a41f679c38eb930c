using Tautline.Engine.Fabric.Rolls;

namespace Tautline.Engine.Plans;

/// <summary>Finds what feeds a run in the plan of rolls.</summary>
public static class RollFeeds
{
    /// <summary>The name of a run's pull in the plan of rolls; of laced widths the upper one is 0.</summary>
    public static string PullId(LinePlan line, RunPlan run, int width)
        => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{line.Id.Value}/{run.Number}/{width + 1}");

    /// <summary>What feeds a run, width by width.</summary>
    public static IReadOnlyList<PullFeed> Of(Plan plan, LinePlan line, RunPlan run)
    {
        if (plan.Rolls is not { } rolls) return [];
        var prefix = PullId(line, run, 0)[..^1];
        return [.. rolls.Feeds.Where(f => f.Pull.StartsWith(prefix, StringComparison.Ordinal))];
    }
}
