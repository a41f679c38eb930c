using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Footings;

/// <summary>Strength of concrete with its age, kept warm and moist. Cold slows it; the two sources differ and both are given.</summary>
public static class ConcreteAge
{
    private static readonly Provenance committee = new("ACI 209 form, in a discussion quoting MacGregor", "", "", Confidence.Published);

    private static readonly (int Days, double Share)[] taught = [(1, 0.16), (3, 0.40), (7, 0.65), (14, 0.90), (28, 0.99)];

    /// <summary>Share of the 28-day strength: t / (4 + 0.85 t), with high-early cement t / (2.3 + 0.92 t); t in days.</summary>
    public static N Share<N>(N days, bool highEarly) where N : struct, INumber<N>
        => days / (N.Listed("a", highEarly ? 2.3 : 4, Unit.Ratio, committee) + N.Listed("b", highEarly ? 0.92 : 0.85, Unit.Ratio, committee) * days);

    /// <summary>A rule of thumb taught for ordinary concrete: 16, 40, 65, 90, 99 % at 1, 3, 7, 14, 28 days; of the last day reached.</summary>
    public static double Taught(int days)
    {
        var share = 0.0;
        foreach (var (day, reached) in taught)
            if (days >= day) share = reached;
        return share;
    }
}
