using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>A spec with everything it leaves open settled from the catalogue and the rules.</summary>
public sealed record ResolvedSpec(
    int Index, Spec Spec, FabricRow Fabric, DiamondRow Diamonds, Section LinePost, Section TerminalPost, Section Rail, bool TopRail,
    bool BottomWire, bool Braced, RollCalibration? Calibration, Rules Rules)
{
    public Length Height => Spec.Height;

    /// <summary>Tension wires of a run: one at the top where there is no rail, one at the bottom where the spec has it.</summary>
    public int Wires => (TopRail ? 0 : 1) + (BottomWire ? 1 : 0);

    /// <summary>Length of the rolls, the job's own or the rule set's.</summary>
    public Length Roll => Spec.Roll ?? Rules.RollLength.Length;
}
