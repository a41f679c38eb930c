using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

public enum HillShape { Ridge, Escarpment, Hill }

/// <summary>A hill that speeds the wind up.</summary>
/// <param name="Height">H, of the hill over the land upwind.</param>
/// <param name="HalfLength">Lh, upwind from the crest to where the ground is half as high.</param>
/// <param name="Distance">x, from the crest to the fence; upwind or downwind of it.</param>
public sealed record Hill(HillShape Shape, double Height, double HalfLength, double Distance, bool Downwind);

/// <summary>Topographic factor Kzt of ASCE 7, 26.8. No complete example with a printed answer was found; the printed K1 pins its first part.</summary>
public static class Topography
{
    private const double FootMetres = 0.3048;

    // k for exposures B, C, D; gamma; mu upwind and downwind.
    private static readonly (double[] K, double Gamma, double MuUp, double MuDown)[] shapes =
    [
        ([1.30, 1.45, 1.55], 3, 1.5, 1.5),
        ([0.75, 0.85, 0.95], 2.5, 1.5, 4),
        ([0.95, 1.05, 1.15], 4, 1.5, 1.5),
    ];

    /// <summary>
    /// Whether the hill counts: H / Lh at least 0.2, and H at least 15 ft in exposure C and D, 60 ft in B. That it stands clear of others upwind
    /// and the fence on its upper half is for a person to see.
    /// </summary>
    public static bool Counts(Hill hill, Exposure exposure)
        => hill.Height / hill.HalfLength >= 0.2 && hill.Height >= (exposure == Exposure.B ? 60 : 15) * FootMetres;

    /// <summary>K1 = k H / Lh, with H / Lh at most 0.5.</summary>
    public static N K1<N>(Hill hill, Exposure exposure) where N : struct, INumber<N>
        => N.Listed("k of the hill", shapes[(int)hill.Shape].K[(int)exposure], Unit.Ratio, StrengthSources.Topography)
           * N.Smaller(Height<N>(hill) / Length<N>(hill), N.Constant(0.5));

    /// <summary>Kzt = (1 + K1 K2 K3)^2 with K2 = 1 - x / (mu Lh) and K3 = exp(-gamma z / Lh); where H / Lh is over 0.5, Lh of K2 and K3 is 2 H.</summary>
    public static N Kzt<N>(Hill hill, Exposure exposure, N z) where N : struct, INumber<N>
    {
        if (!Counts(hill, exposure)) return N.Constant(1);
        var (_, gamma, up, down) = shapes[(int)hill.Shape];
        var lh = N.Larger(Length<N>(hill), N.Constant(2) * Height<N>(hill));
        var mu = N.Listed("mu of the hill", hill.Downwind ? down : up, Unit.Ratio, StrengthSources.Topography);
        var k2 = N.Larger(N.Constant(0), N.Constant(1) - N.Given("distance from the crest", hill.Distance, Unit.Length) / (mu * lh));
        var k3 = N.Exp(N.Constant(0) - N.Listed("gamma of the hill", gamma, Unit.Ratio, StrengthSources.Topography) * z / lh);
        var rise = N.Constant(1) + K1<N>(hill, exposure) * k2 * k3;
        return rise * rise;
    }

    private static N Height<N>(Hill hill) where N : struct, INumber<N> => N.Given("height of the hill", hill.Height, Unit.Length);

    private static N Length<N>(Hill hill) where N : struct, INumber<N> => N.Given("half length of the hill", hill.HalfLength, Unit.Length);
}
