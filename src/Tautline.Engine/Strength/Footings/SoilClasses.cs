using Tautline.Engine.Reasons;

namespace Tautline.Engine.Strength.Footings;

/// <summary>A class of soil with its presumed bearing, IBC Table 1806.2.</summary>
/// <param name="Name">As the job document says it.</param>
/// <param name="Lateral">Lateral pressure for each length of depth, Pa/m.</param>
/// <param name="Vertical">Foundation pressure, Pa.</param>
public sealed record SoilClass(string Name, string Words, double Lateral, double Vertical);

/// <summary>IBC Table 1806.2 (2012). Mud, organic soil and fill have no presumed value and are for an engineer.</summary>
public static class SoilClasses
{
    private const double Psf = 0.45359237 * 9.80665 / (0.3048 * 0.3048);

    public static IReadOnlyList<SoilClass> All { get; } =
    [
        Of("bedrock", "class 1, crystalline bedrock", 1200, 12_000),
        Of("rock", "class 2, sedimentary and foliated rock", 400, 4000),
        Of("gravel", "class 3, sandy gravel and gravel (GW, GP)", 200, 3000),
        Of("sand", "class 4, sand, silty or clayey sand and gravel (SW, SP, SM, SC, GM, GC)", 150, 2000),
        Of("clay", "class 5, clay, sandy or silty clay, silt (CL, ML, MH, CH)", 100, 1500),
    ];

    public static SoilClass? Find(string name) => All.FirstOrDefault(s => s.Name == name);

    public static N Lateral<N>(SoilClass soil) where N : struct, INumber<N>
        => N.Listed($"lateral pressure for each foot of depth, {soil.Words}", soil.Lateral, Unit.PressurePerLength, StrengthSources.SoilTable);

    private static SoilClass Of(string name, string words, double psfPerFoot, double psf) => new(name, words, psfPerFoot * Psf / 0.3048, psf * Psf);
}
