namespace Tautline.Engine.Reasons;

/// <summary>What kind of figure a fact is. Each has one formula and one place in the plan.</summary>
public enum FactKind
{
    // of a spec
    HalfDiamond, AdvanceLow, AdvanceHigh, WholeRows, RailTieSpace, RingSpace, TieEvery, RingEvery,

    // of a post
    Stands, HoleDiameter, HoleDepth, GroundHeight, TopHeight, AboveGround, CutLength, OrderLength, CutOff, Concrete, Spoil, Bags, PostMass, Brackets, Anchors,
    PostTies,

    // of a run
    RunAlong, RunTop, Telescoping, Bays, LargestBay, Rail, RailPieces, Sleeves, RailMass, Wire, Fabric, PicketsLow, PicketsHigh, RollTake, RailTies, Rings,
    RunEnds, Strand, Seam, Slats, ScreenTies, ConcertinaTies, BayPiece,

    // of a fabric end
    FabricEnd, BraceRail, Bar, Bands, Mismatch, ColumnsLow, Columns, ColumnsHigh,

    // of a gate
    GateStands, Opening, Centres, Leaf, Tail, SecondRoller, Track, LeafMass, Leaves,

    // of work along a line
    WorkStands, WorkAlong, WorkPosts, WorkArea, WorkVolume,

    // of a stretch of ground that does not suit the fabric
    GradingLength, GradingDepth, GradingArea, GradingVolume,

    // of temporary fence
    Panels, PanelStands, PanelClamps, Ballast,

    // of a take-off line
    Net, Purchase, LineMass, BagsByTotal, RollsLeft, CutOffs, Spare,
}

/// <summary>Names one figure of a plan. What the numbers mean depends on the kind; unused ones are zero.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Line">Index of the line in the plan, or of the spec, temporary fence or take-off line for their facts.</param>
/// <param name="Item">Index of the post, run, gate or work on the line.</param>
/// <param name="End">0 for the start of a run, 1 for its far end.</param>
public readonly record struct FactKey(FactKind Kind, int Line, int Item = 0, int End = 0);
