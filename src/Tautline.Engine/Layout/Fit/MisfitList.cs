namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// Measures on the raw ground where it lies too high or too low for the fabric. Between two vertices the depth is straight, so the
/// stretches end exactly where it crosses zero.
/// </summary>
internal sealed class MisfitList
{
    private const double Nothing = 1e-5;
    private const double Joined = 1e-9;

    private readonly FitInput input;
    private readonly bool high;
    private readonly List<Misfit> found = [];
    private double from;
    private double to;
    private double deepest;
    private double area;

    private MisfitList(FitInput input, bool high) => (this.input, this.high) = (input, high);

    public static IReadOnlyList<Misfit> Of(FitInput input, GroundProfile ground, IReadOnlyList<FittedBay> bays)
        => [.. new MisfitList(input, true).Walk(ground, bays).Concat(new MisfitList(input, false).Walk(ground, bays)).OrderBy(m => m.From)];

    private List<Misfit> Walk(GroundProfile ground, IReadOnlyList<FittedBay> bays)
    {
        List<GroundVertex> vertices = [];
        foreach (var bay in bays)
        {
            if ((high ? bay.Cut : bay.Fill) <= Nothing) continue;
            ground.Between(bay.From, bay.To, vertices);
            for (var i = 1; i < vertices.Count; i++) Piece(vertices[i - 1].Station, Depth(bay, vertices[i - 1]), vertices[i].Station, Depth(bay, vertices[i]));
        }
        Close();
        return found;
    }

    private double Depth(FittedBay bay, GroundVertex ground)
    {
        var gap = bay.BottomAt(ground.Station) - ground.Height;
        return high ? input.Limits.LeastGap - gap : gap - input.Limits.MostGap;
    }

    /// <summary>The part above zero of one straight piece of depth.</summary>
    private void Piece(double a, double depthA, double b, double depthB)
    {
        if (depthA <= 0 && depthB <= 0) return;
        if (depthA < 0) (a, depthA) = (a + (b - a) * (depthA / (depthA - depthB)), 0);
        if (depthB < 0) (b, depthB) = (a + (b - a) * (depthA / (depthA - depthB)), 0);
        if (area > 0 && a - to > Joined) Close();
        if (area == 0 && deepest == 0) from = a;
        (to, area) = (b, area + 0.5 * (depthA + depthB) * (b - a));
        deepest = Math.Max(deepest, Math.Max(depthA, depthB));
    }

    private void Close()
    {
        if (deepest > Nothing) found.Add(new Misfit(from, to, high, deepest, area, area * input.TrenchWidth, Remedy()));
        (deepest, area) = (0, 0);
    }

    private Remedies Remedy()
    {
        var small = high ? Remedies.TrimOrBury : Remedies.ClosurePiece;
        return (input.Allowed & small) != 0 ? small : input.Allowed & Remedies.Grading;
    }
}
