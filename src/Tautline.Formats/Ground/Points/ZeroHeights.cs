using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>
/// Tells zeros that stand for "no height": all other heights lie on one side of zero, further from it than they lie from each other. Our own practice.
/// </summary>
internal static class ZeroHeights
{
    /// <summary>The points, without those heights.</summary>
    public static List<SurveyPoint> Cleared(List<SurveyPoint> points, ProblemList problems)
    {
        var zeros = points.Count(p => p.Height == 0);
        var others = points.Select(p => p.Height).OfType<double>().Where(h => h != 0).ToList();
        if (zeros == 0 || others.Count == 0) return points;
        var (lowest, highest) = (others.Min(), others.Max());
        if (Math.Max(lowest, -highest) <= highest - lowest) return points;
        problems.AddAtLine(PointFindings.ZeroHeights(zeros, lowest, highest), points.First(p => p.Height == 0).Line);
        return points.ConvertAll(p => p.Height == 0 ? p with { Height = null } : p);
    }
}
