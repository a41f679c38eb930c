using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>Every figure of a plan by its key: which there are, what each is, and why.</summary>
public static class Facts
{
    private static readonly FactKind[] ofSpec =
    [
        FactKind.HalfDiamond, FactKind.AdvanceLow, FactKind.AdvanceHigh, FactKind.WholeRows, FactKind.RailTieSpace, FactKind.RingSpace,
        FactKind.TieEvery, FactKind.RingEvery,
    ];

    private static readonly FactKind[] ofPost =
    [
        FactKind.Stands, FactKind.HoleDiameter, FactKind.HoleDepth, FactKind.AboveGround, FactKind.CutLength, FactKind.OrderLength,
        FactKind.Concrete, FactKind.Spoil, FactKind.Bags, FactKind.PostMass,
    ];

    private static readonly FactKind[] ofBracketed = [FactKind.Brackets, FactKind.Anchors];

    private static readonly FactKind[] ofRun =
    [
        FactKind.RunAlong, FactKind.RunTop, FactKind.Telescoping, FactKind.Bays, FactKind.LargestBay, FactKind.Rail, FactKind.RailPieces, FactKind.Sleeves, FactKind.RailMass,
        FactKind.Wire, FactKind.Fabric, FactKind.PicketsLow, FactKind.PicketsHigh, FactKind.RollTake, FactKind.RailTies, FactKind.Rings,
        FactKind.RunEnds, FactKind.Strand, FactKind.Seam, FactKind.Slats, FactKind.ScreenTies, FactKind.ConcertinaTies,
    ];

    private static readonly FactKind[] ofEnd =
    [
        FactKind.FabricEnd, FactKind.BraceRail, FactKind.Bar, FactKind.Bands, FactKind.Mismatch, FactKind.ColumnsLow, FactKind.Columns, FactKind.ColumnsHigh,
    ];

    private static readonly FactKind[] ofGate = [FactKind.GateStands, FactKind.Opening, FactKind.Centres, FactKind.Leaf, FactKind.Leaves];

    private static readonly FactKind[] ofCantilever = [FactKind.Tail, FactKind.SecondRoller];

    private static readonly FactKind[] ofWork = [FactKind.WorkStands, FactKind.WorkAlong, FactKind.WorkPosts, FactKind.WorkArea, FactKind.WorkVolume];

    private static readonly FactKind[] ofGrading = [FactKind.GradingLength, FactKind.GradingDepth, FactKind.GradingArea, FactKind.GradingVolume];

    private static readonly FactKind[] ofTemporary = [FactKind.Panels, FactKind.PanelStands, FactKind.PanelClamps, FactKind.Ballast];

    /// <summary>The keys of every fact of a plan.</summary>
    public static IEnumerable<FactKey> All(Plan plan)
    {
        for (var i = 0; i < plan.Specs.Count; i++)
            foreach (var kind in ofSpec) yield return new(kind, i);
        for (var l = 0; l < plan.Lines.Count; l++)
            foreach (var key in OfLine(plan.Lines[l], l)) yield return key;
        for (var i = 0; i < plan.Temporary.Count; i++)
            foreach (var kind in ofTemporary) yield return new(kind, i);
        for (var i = 0; i < plan.Takeoff.Count; i++)
            foreach (var key in OfTakeoff(plan.Takeoff[i], i)) yield return key;
    }

    /// <summary>The figure as the plan states it, in SI; nothing where the plan has no such fact.</summary>
    public static double? Value(Plan plan, FactKey key) => FactReader.Read(plan, key);

    /// <summary>
    /// The expression behind a figure: its stage's formula is run again with a recording number. Nothing where the plan has no
    /// such fact.
    /// </summary>
    public static Expr? Why(Plan plan, FactKey key)
        => FactReader.Read(plan, key) is null ? null : FactExplainer.Explain(plan, key).Expr;

    private static IEnumerable<FactKey> OfLine(LinePlan line, int index)
    {
        for (var i = 0; i < line.Posts.Count; i++)
        {
            foreach (var kind in ofPost) yield return new(kind, index, i);
            if (line.Posts[i].GroundHeight is not null)
            {
                yield return new(FactKind.GroundHeight, index, i);
                yield return new(FactKind.TopHeight, index, i);
            }
            if (line.Posts[i].CutOff is not null) yield return new(FactKind.CutOff, index, i);
            if (line.Posts[i].Brackets is not null)
                foreach (var kind in ofBracketed) yield return new(kind, index, i);
            if (line.Posts[i].Kind == Layout.PostKind.Line) yield return new(FactKind.PostTies, index, i);
        }
        for (var i = 0; i < line.Runs.Count; i++)
        {
            foreach (var kind in ofRun) yield return new(kind, index, i);
            for (var bay = 0; bay < line.Runs[i].BayPieces.Count; bay++) yield return new(FactKind.BayPiece, index, i, bay);
            foreach (var kind in ofEnd)
                for (var end = 0; end < 2; end++) yield return new(kind, index, i, end);
        }
        for (var i = 0; i < line.Gates.Count; i++)
        {
            foreach (var kind in ofGate) yield return new(kind, index, i);
            if (line.Gates[i].Tail is not null)
                foreach (var kind in ofCantilever) yield return new(kind, index, i);
            if (line.Gates[i].Track is not null) yield return new(FactKind.Track, index, i);
            if (line.Gates[i].LeafMass is not null) yield return new(FactKind.LeafMass, index, i);
        }
        for (var i = 0; i < line.Works.Count; i++)
            foreach (var kind in ofWork) yield return new(kind, index, i);
        for (var i = 0; i < line.Grading.Count; i++)
            foreach (var kind in ofGrading) yield return new(kind, index, i);
    }

    private static IEnumerable<FactKey> OfTakeoff(TakeoffLine line, int index)
    {
        yield return new(FactKind.Net, index);
        yield return new(FactKind.Purchase, index);
        if (line.Mass is not null) yield return new(FactKind.LineMass, index);
        if (line.BagsByTotal is not null) yield return new(FactKind.BagsByTotal, index);
        if (line.Spare is not null) yield return new(FactKind.Spare, index);
        if (line.CutOffs is not null) yield return new(FactKind.CutOffs, index);
        if (line.Left is not null) yield return new(FactKind.RollsLeft, index);
    }
}
