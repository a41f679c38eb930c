using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Field.Cards;

/// <summary>A gate as it is set. Figures of the plan; the ground under its leaf where that was measured.</summary>
/// <param name="Gaps">Of hinges, latch and, for two leaves, the middle, together; nothing for a leaf that slides past its opening.</param>
/// <param name="NearFace">Tape, level, from the start of the line to the face of the first post.</param>
/// <param name="Reach">From the hinge to the end of the swinging leaf: so wide an arc stays free.</param>
/// <param name="RunBackNeeds">Behind the opening, straight and clear, for a leaf that slides.</param>
/// <param name="RunBackHas">To the end of its leg.</param>
/// <param name="Ground">Nothing where the ground was not measured.</param>
public sealed record GateCard(GatePlan Gate, Length? Gaps, Length NearFace, Length? Reach, Length? RunBackNeeds, Length? RunBackHas, LeafGround? Ground)
{
    public bool Slides => Gate.Kind is not (GateKind.Walk or GateKind.Double);

    public bool RunBackShort => RunBackNeeds is { } needs && RunBackHas is { } has && has.Nanometres < needs.Nanometres;

    /// <summary>Between the leaf's bottom and the highest ground of a place it goes over; below zero it strikes.</summary>
    public Length? Over(Length? highest) => Ground is { } ground && highest is { } high ? ground.LeafBottom - high : null;

    public static GateCard Of(Plan plan, int line, int gate)
    {
        var planned = plan.Lines[line].Gates[gate];
        var site = plan.Basis.Lines[line].Site.Gates.First(g => g.Gate.Id == planned.Id);
        var swings = planned.Kind is GateKind.Walk or GateKind.Double;
        var has = site.RunsBackToEnd ? site.Leg.EndNm - planned.NearFace.Nanometres - planned.Opening.Nanometres : planned.NearFace.Nanometres - site.Leg.StartNm;
        return new(
            planned, swings ? planned.Opening - planned.Leaf * planned.Leaves : null, planned.NearFace, swings ? planned.Leaf : null, swings ? null : planned.Leaf,
            swings ? null : Length.FromNanometres(has), LeafSweep.Of(plan, line, gate));
    }
}
