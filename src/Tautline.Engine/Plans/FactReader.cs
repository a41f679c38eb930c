using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>Reads a fact off a plan.</summary>
internal static class FactReader
{
    public static double? Read(Plan plan, FactKey key) => key.Kind switch
    {
        <= FactKind.RingEvery => At(plan.Specs, key.Line) is { } spec ? OfSpec(spec, key.Kind) : null,
        <= FactKind.PostTies => At(plan.Lines, key.Line) is { } line && At(line.Posts, key.Item) is { } post ? OfPost(post, key.Kind) : null,
        <= FactKind.BayPiece => Run(plan, key) is { } run ? OfRun(run, key) : null,
        <= FactKind.ColumnsHigh => key.End is 0 or 1 && Run(plan, key) is { } run ? OfEnd(key.End == 0 ? run.Start : run.Finish, key.Kind) : null,
        <= FactKind.Leaves => At(plan.Lines, key.Line) is { } line && At(line.Gates, key.Item) is { } gate ? OfGate(gate, key.Kind) : null,
        <= FactKind.WorkVolume => At(plan.Lines, key.Line) is { } line && At(line.Works, key.Item) is { } work ? OfWork(work, key.Kind) : null,
        <= FactKind.GradingVolume => At(plan.Lines, key.Line) is { } line && At(line.Grading, key.Item) is { } grading ? OfGrading(grading, key.Kind) : null,
        <= FactKind.Ballast => At(plan.Temporary, key.Line) is { } panels ? OfTemporary(panels, key.Kind) : null,
        _ => At(plan.Takeoff, key.Line) is { } item ? OfTakeoff(item, key.Kind) : null,
    };

    private static RunPlan? Run(Plan plan, FactKey key) => At(plan.Lines, key.Line) is { } line ? At(line.Runs, key.Item) : null;

    private static T? At<T>(IReadOnlyList<T> list, int index) where T : class => index >= 0 && index < list.Count ? list[index] : null;

    private static double? OfSpec(SpecPlan spec, FactKind kind) => kind switch
    {
        FactKind.HalfDiamond => spec.HalfDiamond.Metres,
        FactKind.AdvanceLow => spec.AdvanceLow.Metres,
        FactKind.AdvanceHigh => spec.AdvanceHigh.Metres,
        FactKind.WholeRows => spec.WholeRows,
        FactKind.RailTieSpace => spec.TieSpace.Metres,
        FactKind.RingSpace => spec.RingSpace.Metres,
        FactKind.TieEvery => spec.TieEvery,
        _ => spec.RingEvery,
    };

    private static double? OfPost(PostPlan post, FactKind kind) => kind switch
    {
        FactKind.Stands => 1,
        FactKind.HoleDiameter => post.HoleDiameter.Metres,
        FactKind.HoleDepth => post.HoleDepth.Metres,
        FactKind.GroundHeight => post.GroundHeight?.Metres,
        FactKind.TopHeight => post.TopHeight?.Metres,
        FactKind.AboveGround => post.AboveGround.Metres,
        FactKind.CutLength => post.CutLength.Metres,
        FactKind.OrderLength => post.OrderLength.Metres,
        FactKind.CutOff => post.CutOff?.Metres,
        FactKind.Concrete => post.Concrete.CubicMetres,
        FactKind.Spoil => post.Spoil.CubicMetres,
        FactKind.Bags => post.Bags,
        FactKind.PostMass => post.Mass.Kilograms,
        FactKind.Brackets => post.Brackets,
        FactKind.Anchors => post.Anchors,
        _ => post.Kind == Layout.PostKind.Line ? post.Ties : null,
    };

    private static double? OfRun(RunPlan run, FactKey key) => key.Kind switch
    {
        FactKind.RunAlong => run.Along.Metres,
        FactKind.RunTop => run.Top.Metres,
        FactKind.Telescoping => run.Telescoping.Metres,
        FactKind.Bays => run.Bays,
        FactKind.LargestBay => run.LargestBay.Metres,
        FactKind.Rail => run.Rail.Metres,
        FactKind.RailPieces => run.RailPieces,
        FactKind.Sleeves => run.Sleeves,
        FactKind.RailMass => run.RailMass.Kilograms,
        FactKind.Wire => run.Wire.Metres,
        FactKind.Fabric => run.Fabric.Metres,
        FactKind.PicketsLow => run.PicketsLow,
        FactKind.PicketsHigh => run.PicketsHigh,
        FactKind.RollTake => run.RollTake.Metres,
        FactKind.RailTies => run.RailTies,
        FactKind.Rings => run.Rings,
        FactKind.RunEnds => 2,
        FactKind.Strand => run.Strand.Metres,
        FactKind.Seam => run.Seam,
        FactKind.Slats => run.Slats,
        FactKind.ScreenTies => run.ScreenTies,
        FactKind.ConcertinaTies => run.ConcertinaTies,
        _ => key.End >= 0 && key.End < run.BayPieces.Count ? run.BayPieces[key.End].Metres : null,
    };

    private static double? OfEnd(EndPlan end, FactKind kind) => kind switch
    {
        FactKind.FabricEnd => 1,
        FactKind.BraceRail => end.BraceRail.Metres,
        FactKind.Bar => end.Bar.Metres,
        FactKind.Bands => end.Bands,
        FactKind.Mismatch => end.Mismatch.Metres,
        FactKind.ColumnsLow => end.ColumnsLow,
        FactKind.Columns => end.Columns,
        _ => end.ColumnsHigh,
    };

    private static double? OfGate(GatePlan gate, FactKind kind) => kind switch
    {
        FactKind.GateStands => 1,
        FactKind.Opening => gate.Opening.Metres,
        FactKind.Centres => gate.Centres.Metres,
        FactKind.Leaf => gate.Leaf.Metres,
        FactKind.Tail => gate.Tail?.Metres,
        FactKind.SecondRoller => gate.SecondRoller?.Metres,
        FactKind.Track => gate.Track?.Metres,
        FactKind.LeafMass => gate.LeafMass?.Kilograms,
        _ => gate.Leaves,
    };

    private static double? OfWork(WorkPlan work, FactKind kind) => kind switch
    {
        FactKind.WorkStands => 1,
        FactKind.WorkAlong => work.Along.Metres,
        FactKind.WorkPosts => work.Posts,
        FactKind.WorkArea => work.Area.SquareMetres,
        _ => work.OldConcrete.CubicMetres,
    };

    private static double? OfGrading(GradingPlan grading, FactKind kind) => kind switch
    {
        FactKind.GradingLength => (grading.To - grading.From).Metres,
        FactKind.GradingDepth => grading.Depth.Metres,
        FactKind.GradingArea => grading.Area.SquareMetres,
        _ => grading.Volume.CubicMetres,
    };

    private static double? OfTemporary(TemporaryPlan panels, FactKind kind) => kind switch
    {
        FactKind.Panels => panels.Panels,
        FactKind.PanelStands => panels.Stands,
        FactKind.PanelClamps => panels.Clamps,
        _ => panels.Ballast,
    };

    private static double? OfTakeoff(TakeoffLine line, FactKind kind) => kind switch
    {
        FactKind.Net => line.Net,
        FactKind.Purchase => line.Purchase,
        FactKind.LineMass => line.Mass?.Kilograms,
        FactKind.BagsByTotal => line.BagsByTotal,
        FactKind.RollsLeft => line.Left?.Metres,
        FactKind.CutOffs => line.CutOffs?.Metres,
        _ => line.Spare,
    };
}
