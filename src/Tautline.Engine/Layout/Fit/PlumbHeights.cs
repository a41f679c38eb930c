namespace Tautline.Engine.Layout.Fit;

/// <summary>
/// The plumb heights a fit holds during a pass, and how they are taken anew after it. What a pass finds may overshoot and swing for ever;
/// so each bay looks at what its last change did and goes only as far as that predicts (a secant step, held between bounds).
/// </summary>
internal sealed class PlumbHeights
{
    private const double LeastShare = 0.15;

    // From here on swings that the bays do not see one by one are damped as well.
    private const int Patient = 12;

    private readonly double[] last;
    private readonly double[] lastOff;
    private int passes;

    public PlumbHeights(double[] first) => (Held, last, lastOff) = (first, new double[first.Length], new double[first.Length]);

    public double[] Held { get; }

    /// <summary>Largest difference between what is held and what a pass found, metres.</summary>
    public double Off(double[] found)
    {
        var off = 0.0;
        for (var i = 0; i < found.Length; i++) off = Math.Max(off, Math.Abs(found[i] - Held[i]));
        return off;
    }

    /// <summary>Moves on towards what a pass found.</summary>
    public void Take(double[] found)
    {
        passes++;
        for (var i = 0; i < found.Length; i++)
        {
            var off = found[i] - Held[i];
            var share = passes == 1 ? 1 : Share(Held[i] - last[i], off - lastOff[i]);
            (last[i], lastOff[i]) = (Held[i], off);
            Held[i] += (passes > Patient ? 0.5 : 1) * share * off;
        }
    }

    private static double Share(double moved, double changed)
        => moved * changed < 0 ? Math.Clamp(-moved / changed, LeastShare, 1) : 1;
}
