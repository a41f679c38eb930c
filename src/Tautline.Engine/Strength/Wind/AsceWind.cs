using Tautline.Engine.Catalog;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Wind;

/// <summary>Editions of ASCE 7. A job is checked by the last two; the older ones are here because published examples are worked by them.</summary>
public enum AsceEdition { Asce705, Asce710, Asce716, Asce722 }

public enum Exposure { B, C, D }

/// <summary>
/// ASCE 7 prints its constants twice, for feet and miles an hour and for metres, rounded apart. Jobs always take the first, so that the units
/// a job is shown in never change a ratio; the second serves to follow metric examples.
/// </summary>
public enum AscePrinting { Customary, Metric }

/// <summary>The wind's path to a place: what ASCE 7 multiplies the speed's pressure by.</summary>
/// <param name="Kz">Exposure and height.</param>
/// <param name="Kzt">Topography.</param>
/// <param name="Kd">Direction; 1 where the edition has it in the force.</param>
/// <param name="Ke">Height of the ground over the sea.</param>
/// <param name="Importance">Of the 2005 edition and older; 1 since.</param>
public readonly record struct PressureFactors<N>(N Kz, N Kzt, N Kd, N Ke, N Importance) where N : struct, INumber<N>;

/// <summary>
/// Velocity pressure by ASCE 7 chapter 26. Symbols: V speed of the hazard map (3-second gust, exposure C, 10 m), z height over the ground,
/// zg and alpha of the exposure's profile. Pressures are at strength level from the 2010 edition on, before it at service level.
/// </summary>
public static class AsceWind
{
    private const double FootMetres = 0.3048;
    private const double PsfPerMphSquared = 0.45359237 * 9.80665 / (FootMetres * FootMetres) / (0.44704 * 0.44704);

    private static readonly (double Alpha, double ZgFeet, double ZgMetres)[] old = [(7.0, 1200, 365.76), (9.5, 900, 274.32), (11.5, 700, 213.36)];

    private static readonly (double Alpha, double ZgFeet, double ZgMetres)[] new22 = [(7.5, 3280, 1000), (9.8, 2460, 750), (11.5, 1935, 590)];

    public static Provenance Source(AsceEdition edition) => edition switch
    {
        AsceEdition.Asce705 => StrengthSources.Asce705,
        AsceEdition.Asce710 => StrengthSources.Asce710,
        AsceEdition.Asce716 => StrengthSources.Asce716,
        _ => StrengthSources.Asce722,
    };

    public static string Name(AsceEdition edition) => Source(edition).Source;

    /// <summary>Whether the factor for direction stands in the velocity pressure; since 2022 it stands in the force.</summary>
    public static bool DirectionInPressure(AsceEdition edition) => edition != AsceEdition.Asce722;

    /// <summary>
    /// Kz = c (z / zg)^(2 / alpha), with z at least 15 ft (4.6 m) and at most zg; c is 2.01, in the 2022 edition 2.41.
    /// </summary>
    public static N Kz<N>(AsceEdition edition, Exposure exposure, N z, AscePrinting printing = AscePrinting.Customary) where N : struct, INumber<N>
    {
        var (alpha, feet, metres) = (edition == AsceEdition.Asce722 ? new22 : old)[(int)exposure];
        var metric = printing == AscePrinting.Metric;
        var from = Source(edition);
        var least = N.Listed("least height of the profile", metric ? 4.6 : 15 * FootMetres, Unit.Length, from);
        var zg = N.Listed("zg", metric ? metres : feet * FootMetres, Unit.Length, from);
        var power = N.Constant(2) / N.Listed("alpha", alpha, Unit.Ratio, edition == AsceEdition.Asce722 && exposure == Exposure.B ? StrengthSources.AlphaB722 : from);
        return N.Listed("c of the profile", edition == AsceEdition.Asce722 ? 2.41 : 2.01, Unit.Ratio, from)
               * N.Power(N.Smaller(N.Larger(z, least), zg) / zg, power);
    }

    /// <summary>
    /// Kz as the table of the 2010 and 2016 editions gives it, straight between its heights; it differs from the formula in the third digit.
    /// Shown beside the formula, which is the one a check takes.
    /// </summary>
    /// <returns>Nothing above the 60 ft the table is kept to.</returns>
    public static N? KzByTable<N>(Exposure exposure, N z) where N : struct, INumber<N>
    {
        ReadOnlySpan<double> heights = [15, 20, 25, 30, 40, 50, 60];
        ReadOnlySpan<double> values = exposure switch
        {
            Exposure.B => [0.57, 0.62, 0.66, 0.70, 0.76, 0.81, 0.85],
            Exposure.C => [0.85, 0.90, 0.94, 0.98, 1.04, 1.09, 1.13],
            _ => [1.03, 1.08, 1.12, 1.16, 1.22, 1.27, 1.31],
        };
        if (z.Value > 60 * FootMetres * (1 + 1e-12)) return null;
        return Between.Table(z, heights, values, FootMetres, Unit.Length, "height", "Kz", StrengthSources.KzTable);
    }

    /// <summary>Ke = exp(-0.0000362 h), h the ground's height over the sea in feet; -0.000119 for metres.</summary>
    public static N Ke<N>(N height, AscePrinting printing = AscePrinting.Customary) where N : struct, INumber<N>
    {
        var fall = N.Listed("fall of the air's density with height", printing == AscePrinting.Metric ? 0.000119 : 0.0000362 / FootMetres, Unit.PerLength, StrengthSources.Elevation);
        return N.Exp(N.Constant(0) - fall * height);
    }

    /// <summary>0.85 for walls, signs and lattices.</summary>
    public static N Kd<N>() where N : struct, INumber<N> => N.Listed("Kd", 0.85, Unit.Ratio, StrengthSources.Directionality);

    /// <summary>0.85 for rigid structures.</summary>
    public static N Gust<N>() where N : struct, INumber<N> => N.Listed("G", 0.85, Unit.Ratio, StrengthSources.Gust);

    /// <summary>q = 0.00256 Kz Kzt Kd Ke V^2 I, psf and mph; 0.613 for pascals and m/s.</summary>
    public static N Pressure<N>(N speed, PressureFactors<N> factors, AsceEdition edition, AscePrinting printing = AscePrinting.Customary) where N : struct, INumber<N>
    {
        var air = N.Listed("half of the air's density", printing == AscePrinting.Metric ? 0.613 : 0.00256 * PsfPerMphSquared, Unit.Density, Source(edition));
        return air * factors.Kz * factors.Kzt * factors.Kd * factors.Ke * factors.Importance * (speed * speed);
    }

    /// <summary>16 psf of projected solid area at strength level is the least wind on other structures, 2010 edition and later.</summary>
    public static N Least<N>() where N : struct, INumber<N>
        => N.Listed("least wind", 16 * PsfPerMphSquared * 0.44704 * 0.44704, Unit.Pressure, StrengthSources.LeastWind);
}
