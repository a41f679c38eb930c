using Tautline.Engine.Fabric;
using Tautline.Engine.Layout;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;

namespace Tautline.Engine.Plans;

/// <summary>Runs the formula of one fact again with the recording number, on what the stages left in the plan's basis.</summary>
internal static class FactExplainer
{
    public static Traced Explain(Plan plan, FactKey key) => key.Kind switch
    {
        <= FactKind.RingEvery => OfSpec(plan, key),
        <= FactKind.PostTies => OfPost(plan, key),
        <= FactKind.BayPiece => OfRun(plan, key),
        <= FactKind.ColumnsHigh => OfEnd(plan, key),
        <= FactKind.Leaves => OfGate(plan, key),
        <= FactKind.WorkVolume => OfWork(plan, key),
        <= FactKind.GradingVolume => OfGrading(plan, key),
        <= FactKind.Ballast => OfTemporary(plan, key),
        _ => OfTakeoff(plan, key),
    };

    private static Traced OfSpec(Plan plan, FactKey key)
    {
        var spec = plan.Basis.Specs[key.Line];
        return key.Kind switch
        {
            FactKind.HalfDiamond => MeshFormulas.HalfDiamond<Traced>(spec),
            FactKind.AdvanceLow => MeshFormulas.AdvanceLow<Traced>(spec),
            FactKind.AdvanceHigh => MeshFormulas.AdvanceHigh<Traced>(spec),
            FactKind.WholeRows => MeshFormulas.WholeRows<Traced>(spec),
            FactKind.RailTieSpace => MeshFormulas.TieSpace<Traced>(spec, spec.Rules.TieRailMax),
            FactKind.RingSpace => MeshFormulas.TieSpace<Traced>(spec, spec.Rules.RingMax),
            FactKind.TieEvery => MeshFormulas.Every<Traced>(spec, spec.Rules.TieRailMax),
            _ => MeshFormulas.Every<Traced>(spec, spec.Rules.RingMax),
        };
    }

    private static Traced OfPost(Plan plan, FactKey key)
    {
        var post = plan.Lines[key.Line].Posts[key.Item];
        var f = new PostFigures(plan.Basis.Lines[key.Line].Posts[key.Item], key.Line);
        return key.Kind switch
        {
            FactKind.Stands => Traced.Given("one post", 1, Unit.Count),
            FactKind.HoleDiameter => f.HoleDiameter<Traced>(),
            FactKind.HoleDepth => f.HoleDepth<Traced>(),
            FactKind.GroundHeight => f.GroundHeight<Traced>(),
            FactKind.TopHeight => f.TopHeight<Traced>(post.GroundHeight!.Value.Metres, post.AboveGround.Metres),
            FactKind.AboveGround => f.AboveGround<Traced>(),
            FactKind.CutLength => f.CutLength<Traced>(post.AboveGround.Metres, post.HoleDepth.Metres),
            FactKind.OrderLength => f.OrderLength<Traced>(post.CutLength.Metres, post.CutOff is null ? null : plan.Basis.PostLengths[post.Section]),
            FactKind.CutOff => f.CutOff<Traced>(post.OrderLength.Metres, post.CutLength.Metres),
            FactKind.Concrete => f.Concrete<Traced>(post.HoleDiameter.Metres, post.HoleDepth.Metres),
            FactKind.Spoil => f.Spoil<Traced>(post.HoleDiameter.Metres, post.HoleDepth.Metres),
            FactKind.Bags => f.Bags<Traced>(post.Concrete.CubicMetres),
            FactKind.PostMass => f.Mass<Traced>(post.CutLength.Metres),
            FactKind.Brackets => f.Brackets<Traced>(),
            FactKind.Anchors => f.Anchors<Traced>(post.Brackets!.Value),
            _ => f.Ties<Traced>(),
        };
    }

    private static RunFigures Figures(Plan plan, FactKey key)
    {
        var line = plan.Basis.Lines[key.Line];
        return new RunFigures(line.Runs[key.Item], line.Site.Chain, key.Line, key.Item);
    }

    private static Traced OfRun(Plan plan, FactKey key)
    {
        var run = plan.Lines[key.Line].Runs[key.Item];
        var f = Figures(plan, key);
        var spec = plan.Specs[f.Spec.Index];
        return key.Kind switch
        {
            FactKind.RunAlong => f.Along<Traced>(),
            FactKind.RunTop => f.Top<Traced>(run.Along.Metres),
            FactKind.Telescoping => f.Telescoping<Traced>(),
            FactKind.Bays => f.Bays<Traced>(run.Along.Metres),
            FactKind.LargestBay => f.LargestBay<Traced>(),
            FactKind.Rail => f.Rail<Traced>(run.Top.Metres),
            FactKind.RailPieces => f.RailPieces<Traced>(run.Rail.Metres),
            FactKind.Sleeves => f.Sleeves<Traced>(run.RailPieces),
            FactKind.RailMass => f.RailMass<Traced>(run.Rail.Metres),
            FactKind.Wire => f.Wire<Traced>(run.Top.Metres),
            FactKind.Fabric => f.Fabric<Traced>(run.Top.Metres),
            FactKind.PicketsLow => f.PicketsLow<Traced>(run.RollTake.Metres, spec.AdvanceHigh.Metres),
            FactKind.PicketsHigh => f.PicketsHigh<Traced>(run.RollTake.Metres, spec.AdvanceLow.Metres),
            FactKind.RollTake => f.RollTake<Traced>(run.Fabric.Metres, run.Start.Mismatch.Metres, run.Finish.Mismatch.Metres),
            FactKind.RailTies => f.RailTies<Traced>(run.Fabric.Metres, spec.TieSpace.Metres),
            FactKind.Rings => f.Rings<Traced>(run.Fabric.Metres, spec.RingSpace.Metres),
            FactKind.RunEnds => Traced.Given("two ends", 2, Unit.Count),
            FactKind.Strand => f.Strand<Traced>(run.Top.Metres),
            FactKind.Seam => f.Seam<Traced>(run.Fabric.Metres, spec.RingSpace.Metres),
            FactKind.Slats => f.Slats<Traced>(run.Fabric.Metres),
            FactKind.ScreenTies => f.ScreenTies<Traced>(run.Fabric.Metres),
            FactKind.ConcertinaTies => f.ConcertinaTies<Traced>(run.Along.Metres),
            _ => f.BayPiece<Traced>(key.End),
        };
    }

    private static Traced OfEnd(Plan plan, FactKey key)
    {
        var run = plan.Lines[key.Line].Runs[key.Item];
        var end = key.End == 0 ? run.Start : run.Finish;
        var f = Figures(plan, key);
        var spec = plan.Specs[f.Spec.Index];
        var mismatch = end.Mismatch.Metres;
        return key.Kind switch
        {
            FactKind.FabricEnd => Traced.Given("one fabric end", 1, Unit.Count),
            FactKind.BraceRail => f.BraceRail<Traced>(key.End),
            FactKind.Bar => f.Bar<Traced>(key.End),
            FactKind.Bands => f.Bands<Traced>(key.End, end.Bar.Metres),
            FactKind.Mismatch => f.Mismatch<Traced>(key.End),
            FactKind.ColumnsLow => f.ColumnsAt<Traced>(key.End, mismatch, FactKind.AdvanceHigh, spec.AdvanceHigh.Metres),
            FactKind.Columns => f.Columns<Traced>(key.End, mismatch, spec.AdvanceLow.Metres, spec.AdvanceHigh.Metres),
            _ => f.ColumnsAt<Traced>(key.End, mismatch, FactKind.AdvanceLow, spec.AdvanceLow.Metres),
        };
    }

    private static Traced OfGate(Plan plan, FactKey key)
    {
        var gate = plan.Lines[key.Line].Gates[key.Item];
        var line = plan.Basis.Lines[key.Line];
        var f = new GateFigures(
            line.Site.Gates[key.Item], line.Posts[gate.FromPost], line.Posts[gate.ToPost], gate.Centres.Nanometres)
        { Line = key.Line };
        return key.Kind switch
        {
            FactKind.GateStands => Traced.Given("one gate", 1, Unit.Count),
            FactKind.Opening => f.Opening<Traced>(),
            FactKind.Centres => f.CentreToCentre<Traced>(gate.Opening.Metres),
            FactKind.Leaf => f.Leaf<Traced>(gate.Opening.Metres),
            FactKind.Tail => f.Tail<Traced>(gate.Opening.Metres),
            FactKind.SecondRoller => f.SecondRoller<Traced>(gate.Tail!.Value.Metres),
            FactKind.Track => GateFigures.Track<Traced>(gate.Opening.Metres, gate.Leaf.Metres),
            FactKind.LeafMass => Traced.Given("weight of the leaf", gate.LeafMass!.Value.Kilograms, Unit.Mass),
            _ => Traced.Given("leaves of the gate", gate.Leaves, Unit.Count),
        };
    }

    private static Traced OfWork(Plan plan, FactKey key)
    {
        var work = plan.Lines[key.Line].Works[key.Item];
        var f = new WorkFigures(plan.Basis.Lines[key.Line].Site.Tasks[key.Item], key.Line, key.Item);
        return key.Kind switch
        {
            FactKind.WorkStands => Traced.Given("one piece of work", 1, Unit.Count),
            FactKind.WorkAlong => f.Along<Traced>(),
            FactKind.WorkPosts => f.Posts<Traced>(work.Along.Metres),
            FactKind.WorkArea => f.Area<Traced>(work.Along.Metres),
            _ => f.OldConcrete<Traced>(work.Posts),
        };
    }

    private static Traced OfGrading(Plan plan, FactKey key)
    {
        var f = new GradingFigures(GradingFigures.Of(plan.Basis.Lines[key.Line])[key.Item], key.Line, key.Item);
        return key.Kind switch
        {
            FactKind.GradingLength => f.Length<Traced>(),
            FactKind.GradingDepth => f.Depth<Traced>(),
            FactKind.GradingArea => f.Area<Traced>(),
            _ => f.Volume<Traced>(plan.Lines[key.Line].Grading[key.Item].Area.SquareMetres),
        };
    }

    private static Traced OfTemporary(Plan plan, FactKey key)
    {
        var panels = plan.Temporary[key.Line];
        var f = new TemporaryFigures(plan.Basis.Job.Temporary[key.Line], plan.Basis.Rules, key.Line);
        return key.Kind switch
        {
            FactKind.Panels => f.Panels<Traced>(),
            FactKind.PanelStands => f.Stands<Traced>(panels.Panels),
            FactKind.PanelClamps => f.Clamps<Traced>(panels.Stands),
            _ => f.Ballast<Traced>(panels.Stands),
        };
    }

    private static Traced OfTakeoff(Plan plan, FactKey key)
    {
        var (line, basis) = (plan.Takeoff[key.Line], plan.Basis);
        var item = TakeoffStage.Items(plan.Lines, basis.Lines, plan.Temporary)[key.Line];
        var spec = TakeoffStage.SpecOf(item, basis.Specs);
        var roll = TakeoffStage.PackOf(item, spec);
        var net = key with { Kind = FactKind.Net };
        return key.Kind switch
        {
            FactKind.Net => TakeoffFormulas.Net<Traced>(item),
            FactKind.Purchase => TakeoffFormulas.Purchase<Traced>(item, net, line.Net, roll, basis.Rules),
            FactKind.LineMass => TakeoffFormulas.Mass<Traced>(item, net, line.Net, spec),
            FactKind.BagsByTotal => TakeoffFormulas.BagsByTotal<Traced>(net, line.Net, basis.Rules),
            FactKind.CutOffs => TakeoffFormulas.CutOffs<Traced>(item),
            FactKind.Spare => TakeoffFormulas.Spare<Traced>(net, line.Net, basis.Rules),
            _ => TakeoffFormulas.Left<Traced>(item, key with { Kind = FactKind.Purchase }, line.Purchase, roll),
        };
    }
}
