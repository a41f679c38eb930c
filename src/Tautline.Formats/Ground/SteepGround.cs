using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>
/// Tells ground that is too steep to be true, as it is when the heights are in feet and were read as metres. The limits are our own practice: of the
/// four real grids they were tried on the steepest has 7 % of its ground above 100 %; read with heights 3.28 times too large, three of the
/// four have 21 % and more, the fourth 5 %. So a warning means a close look, and no warning is no proof.
/// </summary>
internal static class SteepGround
{
    /// <summary>A warning where more than this share of the ground is steeper than 100 %.</summary>
    public const double LargestShare = 0.15;

    /// <summary>Metres; below the shore of the Dead Sea.</summary>
    public const double LowestSite = -450;

    /// <summary>Metres; above the highest summit.</summary>
    public const double HighestSite = 9000;

    /// <summary>By how much slopes grow when heights and plan, as numbers, are each taken in their unit.</summary>
    public static double Factor(LinearUnit plan, LinearUnit heights) => heights.ToMetres(1) / plan.ToMetres(1);

    /// <param name="slopes">Of the ground.</param>
    /// <param name="plan">The unit the plan is read in.</param>
    /// <param name="heights">The unit the heights are read in.</param>
    /// <param name="problems">Gets what there is to say.</param>
    /// <param name="factor">By how much the slopes are to be multiplied; null when they are of the numbers as the file has them.</param>
    public static void Tell(Slopes slopes, LinearUnit plan, LinearUnit heights, ProblemList problems, double? factor = null)
    {
        if (slopes.IsEmpty) return;
        var times = factor ?? Factor(plan, heights);
        var (share, middle) = (slopes.SteeperThan(1, times), slopes.Middle() * times);
        double? asFeet = heights == LinearUnit.Metre ? slopes.SteeperThan(1, times * LinearUnit.Foot.ToMetres(1)) : null;
        problems.Add(share <= LargestShare ? GroundFindings.Steepness(middle, share) : GroundFindings.TooSteep(share, plan, heights, asFeet));
    }
}
