using Tautline.Engine.Jobs;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;

namespace Tautline.Engine.Site;

/// <summary>Reads how a line is asked to go over the ground.</summary>
internal static class FitReader
{
    private static readonly Dictionary<string, Remedies> remedies = new(StringComparer.Ordinal)
    {
        [LineFit.LongerPost] = Remedies.LongerPost,
        [LineFit.Trim] = Remedies.TrimOrBury,
        [LineFit.Closure] = Remedies.ClosurePiece,
        [LineFit.Grading] = Remedies.Grading,
    };

    public static void Check(Line line, string path, ProblemList problems)
    {
        if (line.Fit is not { } fit) return;
        SpecStage.Choice(fit.Mode, $"{path}.mode", problems, "smooth", "follow", "stepped");
        SpecStage.Choice(fit.BreakPosts, $"{path}.breakPosts", problems, "yes", "no");
        for (var i = 0; i < (fit.Remedies?.Count ?? 0); i++) SpecStage.Choice(fit.Remedies![i], $"{path}.remedies[{i}]", problems, [.. remedies.Keys]);
        if (fit.Gap is { } gap && !(Math.Abs(gap.Metres) < 10)) problems.Add(ProblemCode.NotFinite, new($"{path}.gap", line.Id));
    }

    public static FitMode Mode(LineFit? fit) => fit?.Mode switch { "follow" => FitMode.Follow, "stepped" => FitMode.Stepped, _ => FitMode.Smooth };

    /// <summary>Longer posts and grading where the job does not say.</summary>
    public static Remedies Allowed(LineFit? fit)
    {
        if (fit?.Remedies is not { } named) return Remedies.LongerPost | Remedies.Grading;
        var allowed = Remedies.None;
        foreach (var name in named) allowed |= remedies.GetValueOrDefault(name);
        return allowed;
    }
}
