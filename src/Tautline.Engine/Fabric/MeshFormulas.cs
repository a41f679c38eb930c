using Tautline.Engine.Catalog;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Fabric;

/// <summary>
/// The mesh: wire d, clear opening o, picket advance a, half a diamond's height c, with 1/a^2 + 1/c^2 = 4/(o + d)^2, from the
/// distance (o + d) between the centre lines of parallel wires. Before a roll is calibrated a and c are ranges.
/// </summary>
public static class MeshFormulas
{
    private static readonly Provenance steel = new("handbook value, from memory", "", "", Confidence.FromMemory);

    private static readonly Provenance twoInch = new("the mesh the widest advance is stated for", "", "", Confidence.Calculated);

    /// <summary>Half a diamond's height by the published count over the height it was woven in: too large, since the height holds both selvages.</summary>
    public static N HalfDiamond<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Given("height of one width of fabric", spec.Woven.Height.Metres, Unit.Length)
           / (N.Constant(2) * N.Listed("diamonds over the height", spec.Woven.Diamonds, Unit.Count, spec.Diamonds.From));

    public static N AdvanceLow<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => spec.Calibration is null ? Advance(WireCentres<N>(spec), HalfDiamond<N>(spec)) : Measured<N>(spec);

    public static N AdvanceHigh<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => spec.Calibration is null ? N.Larger(AdvanceLow<N>(spec), Widest<N>(spec)) : Measured<N>(spec);

    /// <summary>Half a diamond's height at an advance; the mesh relation is the same read either way.</summary>
    public static N HalfDiamondAt<N>(ResolvedSpec spec, N advance) where N : struct, INumber<N> => Advance(WireCentres<N>(spec), advance);

    /// <summary>
    /// What ten pickets of this mesh can measure: the range of the spec before any calibration, and 15 % beyond. Further out it is
    /// a slip of counting, not a loose roll.
    /// </summary>
    public static (Length Low, Length High) TenPickets(ResolvedSpec spec)
    {
        var open = spec with { Calibration = null };
        return (new Length(10 * 0.85 * AdvanceLow<Plain>(open).Value), new Length(10 * 1.15 * AdvanceHigh<Plain>(open).Value));
    }

    /// <summary>Rows a bias can cross at: the whole diamonds of the count.</summary>
    public static N WholeRows<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Fit(N.Listed("diamonds over the height", spec.Diamonds.Diamonds, Unit.Count, spec.Diamonds.From), N.Constant(1));

    /// <summary>The largest whole number of diamonds, each two advances wide, within a limit, times the smallest diamond.</summary>
    public static N TieSpace<N>(ResolvedSpec spec, Limit limit) where N : struct, INumber<N>
        => Every<N>(spec, limit) * (N.Constant(2) * AdvanceLow<N>(spec));

    /// <summary>How many diamonds that is, at least one.</summary>
    public static N Every<N>(ResolvedSpec spec, Limit limit) where N : struct, INumber<N>
        => N.Larger(N.Constant(1), N.Fit(N.Rule(limit), N.Constant(2) * AdvanceHigh<N>(spec)));

    /// <summary>
    /// Weight of a length of one width, bare: parallel wires (o + d) apart run both ways over the height, so wire over length is
    /// 2 height / (o + d) whatever the advance; selvages and coating come on top.
    /// </summary>
    public static N Weight<N>(ResolvedSpec spec) where N : struct, INumber<N>
    {
        var wire = N.Listed("wire", spec.Fabric.Wire.Metres, Unit.Length, spec.Fabric.From);
        var bare = N.Constant(2) * N.Given("height of one width of fabric", spec.Woven.Height.Metres, Unit.Length) / WireCentres<N>(spec);
        return bare * (N.Constant(Math.PI) / N.Constant(4) * (wire * wire)) * N.Listed("density of steel", 7850, new Unit(-3, 1), steel);
    }

    /// <summary>The widest advance to reckon with, scaled from 2-in mesh by the distance of the wires.</summary>
    private static N Widest<N>(ResolvedSpec spec) where N : struct, INumber<N>
    {
        var reference = N.Listed("2-in mesh", 0.0508, Unit.Length, twoInch) + N.Listed("9-ga wire", 0.0037592, Unit.Length, twoInch);
        return N.Rule(spec.Rules.MeshAdvanceHigh) * (WireCentres<N>(spec) / reference);
    }

    private static N Measured<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Given("ten pickets of the roll", spec.Calibration!.TenPickets.Metres, Unit.Length) / N.Constant(10);

    private static N WireCentres<N>(ResolvedSpec spec) where N : struct, INumber<N>
        => N.Listed("mesh", spec.Fabric.Mesh.Metres, Unit.Length, spec.Fabric.From)
           + N.Listed("wire", spec.Fabric.Wire.Metres, Unit.Length, spec.Fabric.From);

    /// <summary>a = s*c / root(4c^2 - s^2), the mesh relation solved for the advance; s is the distance of the wires.</summary>
    private static N Advance<N>(N s, N c) where N : struct, INumber<N>
        => s * c / N.Root(N.Constant(4) * (c * c) - s * s);
}
