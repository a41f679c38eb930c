using Tautline.Cli.Terminal;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Profile;

/// <summary>What stands below a line that goes over measured ground.</summary>
internal static class LineGround
{
    /// <summary>How the fence goes over measured ground and what is left to do there.</summary>
    public static void Write(LinePlan line, PlanWords words, Paper paper)
    {
        if (line.Fit is not { } fit) return;
        paper.Line();
        var gap = $"gap {words.Short(fit.LeastGap)} to {words.Short(fit.MostGap)} under the fabric";
        paper.Line($"Over measured ground: {fit.Mode.ToString().ToLowerInvariant()}, {gap}, {Held(fit)}.");
        if (line.Grading.Count == 0) return;
        paper.Line("The ground does not suit the fabric here:");
        paper.Labelled(line.Grading.Select((g, i) => ($"{i + 1}", $"{words.Station(g.From)} to {words.Station(g.To)}, {words.Long(g.To - g.From)}: {words.Grading(g)}")));
    }

    private static string Held(FitPlan fit)
    {
        if (fit.Bindings.Count == 0) return "no limit touched";
        var groups = fit.Bindings.GroupBy(b => b.Limit).Select(g => $"{Name(g.Key)} at {PlanWords.Count(g.Count(), "place")}");
        return $"held by {string.Join(", ", groups)}";
    }

    private static string Name(FitLimit limit) => limit switch
    {
        FitLimit.LeastGap => "the least gap",
        FitLimit.MostGap => "the largest gap",
        FitLimit.Bend => "the bend fabric rolls over",
        FitLimit.Rake => "the greatest rake",
        FitLimit.PostLength => "a post's length",
        _ => "a settled top",
    };
}
