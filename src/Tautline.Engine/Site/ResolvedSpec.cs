using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>A spec with everything it leaves open settled from the catalogue and the rules.</summary>
public sealed record ResolvedSpec(
    int Index, Spec Spec, FabricRow Fabric, DiamondRow Diamonds, Section LinePost, Section TerminalPost, Section Rail, bool TopRail,
    bool BottomWire, bool Braced, RollCalibration? Calibration, Rules Rules)
{
    /// <summary>Height of the fabric: the spec's, less the barb's foot where the spec states the overall height.</summary>
    public required Length Height { get; init; }

    /// <summary>Equal widths of fabric laced one above the other; 1 for a fence of one width.</summary>
    public int Widths => Spec.Laced ?? 1;

    /// <summary>Height of one width of fabric.</summary>
    public Length Width => Height / Widths;

    /// <summary>The fabric this one is trimmed from; nothing where it is hung as it comes.</summary>
    public DiamondRow? CutFrom { get; init; }

    /// <summary>Height and count of diamonds of one width as it was woven.</summary>
    public DiamondRow Woven => CutFrom ?? Diamonds with { Height = Width };

    /// <summary>Rails cut bay by bay: a middle one, and one at the bottom in place of the wire.</summary>
    public int BayRails => (Spec.Middle == "rail" ? 1 : 0) + (Spec.Bottom == "rail" ? 1 : 0);

    /// <summary>All rails of a run.</summary>
    public int Rails => (TopRail ? 1 : 0) + BayRails;

    public Barb? Barb => Spec.Barb;

    /// <summary>Upper and lower edge of each width as it comes; a trimmed one is cut below.</summary>
    public string Selvage => SpecDress.Selvage(Spec, Woven.Height);

    /// <summary>The colour that every part carries; nothing for bare metal.</summary>
    public string? Finish => Spec.Colour ?? (Spec.Coating is "aluminum" or "polymer" ? Spec.Coating : null);

    /// <summary>Tension wires of a run: one at the top where there is no rail, one at the bottom where the spec has it.</summary>
    public int Wires => (TopRail ? 0 : 1) + (BottomWire ? 1 : 0);

    /// <summary>Length of the rolls, the job's own or the rule set's.</summary>
    public Length Roll => Spec.Roll ?? Rules.RollLength.Length;
}
