using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Posts;

/// <summary>How strength is compared with load: allowable strength (ASD) or factored loads (LRFD).</summary>
public enum DesignMethod { Asd, Lrfd }

/// <summary>Steel by AISC 360: flexure F8 (round), F7 (square), shear G5, compression E3, threaded rods J3.</summary>
public static class SteelFormulas
{
    private const double Psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    /// <summary>29,000 ksi.</summary>
    public static N Modulus<N>() where N : struct, INumber<N> => N.Listed("E of steel", 29_000_000 * Psi, Unit.Pressure, StrengthSources.Steel);

    /// <summary>D/t up to which a pipe reaches its full plastic moment: 0.07 E / Fy.</summary>
    public static N CompactLimit<N>(N yield, N modulus) where N : struct, INumber<N> => N.Constant(0.07) * modulus / yield;

    /// <summary>
    /// Nominal moment of a pipe, F8, D/t below 0.45 E / Fy: compact Fy Z; to 0.31 E / Fy (0.021 E / (D/t) + Fy) S; beyond 0.33 E / (D/t) S. Never more
    /// than Fy Z, so that the rows meet.
    /// </summary>
    public static N PipeMoment<N>(N slenderness, N yield, N modulus, N elastic, N plastic) where N : struct, INumber<N>
    {
        var limit = yield.Value / modulus.Value * slenderness.Value;
        if (limit <= 0.07) return yield * plastic;
        if (limit <= 0.31) return N.Smaller(yield * plastic, (N.Constant(0.021) * modulus / slenderness + yield) * elastic);
        return N.Constant(0.33) * modulus / slenderness * elastic;
    }

    /// <summary>
    /// Nominal moment where a maker states the elastic modulus and the slenderest flat part: Fy S to 0.38 root(E / Fy); falling straight to 0.7 Fy S at root(E / Fy);
    /// then 0.69 E S / (b/t)^2, at most that. The plastic modulus is not used: a thin lip buckles first.
    /// </summary>
    public static N OpenMoment<N>(N slenderness, N yield, N modulus, N elastic) where N : struct, INumber<N>
    {
        var root = N.Root(modulus / yield);
        var (compact, slender) = (N.Constant(0.38) * root, root);
        if (slenderness.Value <= compact.Value) return yield * elastic;
        if (slenderness.Value <= slender.Value)
            return yield * elastic * (N.Constant(1) - N.Constant(0.3) * ((slenderness - compact) / (slender - compact)));
        return N.Smaller(N.Constant(0.7) * yield, N.Constant(0.69) * modulus / (slenderness * slenderness)) * elastic;
    }

    /// <summary>
    /// Nominal moment of a square tube by F7 on its elastic modulus: Fy S while b/t is at most 1.12 root(E / Fy), beyond in proportion less. A thin wall is told
    /// of by the check.
    /// </summary>
    public static N SquareMoment<N>(N slenderness, N yield, N modulus, N elastic) where N : struct, INumber<N>
    {
        var compact = N.Constant(1.12) * N.Root(modulus / yield);
        return slenderness.Value <= compact.Value ? yield * elastic : yield * elastic * (compact / slenderness);
    }

    /// <summary>Nominal shear of a pipe, G5: Fcr A / 2 with Fcr the smaller of 0.6 Fy and 0.78 E / (D/t)^1.5.</summary>
    public static N PipeShear<N>(N slenderness, N yield, N modulus, N area) where N : struct, INumber<N>
    {
        var critical = N.Smaller(N.Constant(0.6) * yield, N.Constant(0.78) * modulus / (slenderness * N.Root(slenderness)));
        return critical * area / N.Constant(2);
    }

    /// <summary>What of the nominal flexural strength counts: 1 / 1.67 for ASD, 0.90 for LRFD.</summary>
    public static N Flexural<N>(DesignMethod method) where N : struct, INumber<N> => Factor<N>(method, 0.90, 1.67, StrengthSources.FlexureFactor);

    /// <summary>What of the nominal shear strength counts: 1 / 1.67, 0.90.</summary>
    public static N Shearing<N>(DesignMethod method) where N : struct, INumber<N> => Factor<N>(method, 0.90, 1.67, StrengthSources.ShearFactor);

    /// <summary>What of the nominal compression counts: 1 / 1.67, 0.90.</summary>
    public static N Compressive<N>(DesignMethod method) where N : struct, INumber<N> => Factor<N>(method, 0.90, 1.67, StrengthSources.Columns);

    /// <summary>What of the nominal tension of a threaded rod counts: 1 / 2, 0.75.</summary>
    public static N OfRod<N>(DesignMethod method) where N : struct, INumber<N> => Factor<N>(method, 0.75, 2.00, StrengthSources.Rods);

    /// <summary>Nominal compression, E3, pinned ends: 0.658^(Fy/Fe) Fy A to 4.71 root(E/Fy), beyond 0.877 Fe A; Fe = pi^2 E / (L/r)^2.</summary>
    public static N Compression<N>(N length, N gyration, N yield, N modulus, N area) where N : struct, INumber<N>
    {
        var slenderness = length / gyration;
        var euler = N.Constant(Math.PI) * N.Constant(Math.PI) * modulus / (slenderness * slenderness);
        var stocky = slenderness.Value <= 4.71 * Math.Sqrt(modulus.Value / yield.Value);
        return stocky ? N.Power(N.Constant(0.658), yield / euler) * yield * area : N.Constant(0.877) * euler * area;
    }

    /// <summary>Nominal tension of a threaded rod, J3: 0.75 Fu on its nominal area.</summary>
    public static N Rod<N>(N diameter, N ultimate) where N : struct, INumber<N>
        => N.Constant(0.75) * ultimate * (N.Constant(Math.PI) / N.Constant(4) * (diameter * diameter));

    private static N Factor<N>(DesignMethod method, double phi, double omega, Provenance from) where N : struct, INumber<N>
        => method == DesignMethod.Lrfd ? N.Listed("phi", phi, Unit.Ratio, from) : N.Constant(1) / N.Listed("omega", omega, Unit.Ratio, from);
}
