using Tautline.Engine.Fabric;
using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Takeoff;

// What not every fence has: gates that slide, slats, screen and concertina, work besides the fence, temporary panels.
internal sealed partial class TakeoffCollector
{
    /// <summary>Panels, stands, clamps and ballast of one temporary fence.</summary>
    public void Add(TemporaryPlan panels, int index)
    {
        finish = null;
        Count(new("temporary-panel"), new(FactKind.Panels, index), panels.Panels);
        Count(new("temporary-stand"), new(FactKind.PanelStands, index), panels.Stands);
        Count(new("temporary-clamp"), new(FactKind.PanelClamps, index), panels.Clamps);
        Count(new("ballast"), new(FactKind.Ballast, index), panels.Ballast);
    }

    /// <summary>A sliding leaf. The second roller post of a cantilever gate stands off the line, like the first in every figure.</summary>
    private void Slide(GatePlan gate, SiteGate site, int line, int at)
    {
        var stands = new FactKey(FactKind.GateStands, line, at);
        var leaf = gate.Kind switch { GateKind.Cantilever => "cantilever-leaf", GateKind.Rolling => "rolling-leaf", _ => "overhead-leaf" };
        var item = Count(new(leaf, null, gate.Leaf.Nanometres, site.Leg.Spec.Spec.Id), stands, 1);
        if (gate.LeafMass is { } mass) item.Masses.Add(new(new(FactKind.LeafMass, line, at), mass.Kilograms, 1, Unit.Mass));
        if (gate.Kind == GateKind.Cantilever) Count(new("roller", site.Post), stands, 1, 4);
        if (gate.Kind == GateKind.Rolling)
        {
            Item(new("ground-track"), QuantityUnit.Length, PurchaseUnit.AsMeasured).Net.Add(new(new(FactKind.Track, line, at), gate.Track!.Value.Metres, 1, Unit.Length));
            Count(new("gate-wheel"), stands, 1, 2);
            Count(new("guide-roller", site.Post), stands, 1, 2);
        }
        if (gate.Kind == GateKind.Overhead)
        {
            Count(new("gate-beam", null, gate.Leaf.Nanometres + gate.Opening.Nanometres), stands, 1);
            Count(new("trolley"), stands, 1, 2);
        }
        Count(new("slide-latch"), stands, 1);
        Count(new("slide-stop"), stands, 1);
    }

    /// <summary>Slats with their lock strip, a screen with its ties, concertina with its own.</summary>
    private void Dress(RunPlan run, ResolvedSpec spec, Func<FactKind, FactKey> fact)
    {
        if (spec.Spec.Slats is { } slats)
        {
            Count(new("slat", null, spec.Height.Nanometres, spec.Spec.Id), fact(FactKind.Slats), run.Slats);
            if (slats.Lock is not null)
                Item(new("slat-lock"), QuantityUnit.Length, PurchaseUnit.AsMeasured).Net.Add(new(fact(FactKind.Fabric), run.Fabric.Metres, 1, Unit.Length));
        }
        if (spec.Spec.Screen is { } screen)
        {
            var cloth = Item(new("screen", null, screen.Height.Nanometres, spec.Spec.Id), QuantityUnit.Length, PurchaseUnit.Roll);
            cloth.Net.Add(new(fact(FactKind.Fabric), run.Fabric.Metres, 1, Unit.Length));
            cloth.Bought.Add(new(fact(FactKind.Fabric), run.Fabric.Metres, 1, Unit.Length));
            Count(new("screen-tie"), fact(FactKind.ScreenTies), run.ScreenTies);
        }
        if (spec.Spec.Concertina is null) return;
        Item(new("concertina", null, 0, spec.Spec.Id), QuantityUnit.Length, PurchaseUnit.Coil).Net.Add(new(fact(FactKind.RunAlong), run.Along.Metres, 1, Unit.Length));
        Count(new("concertina-tie"), fact(FactKind.ConcertinaTies), run.ConcertinaTies);
    }

    /// <summary>Old fence out, ground cleared, openings closed.</summary>
    private void Work(WorkPlan work, int line, int at)
    {
        FactKey Fact(FactKind kind) => new(kind, line, at);
        switch (work.Kind)
        {
            case WorkKind.Clearing:
                Item(new("clearing"), QuantityUnit.Area, PurchaseUnit.AsMeasured).Net.Add(new(Fact(FactKind.WorkArea), work.Area.SquareMetres, 1, Unit.Area));
                return;
            case WorkKind.Removal:
                Removal(work, Fact);
                return;
            default:
                Item(new("closure"), QuantityUnit.Area, PurchaseUnit.AsMeasured).Net.Add(new(Fact(FactKind.WorkArea), work.Area.SquareMetres, 1, Unit.Area));
                return;
        }
    }

    /// <summary>Ground cut or filled, a bottom trimmed or buried, a gap closed; nothing where the job allows none of it.</summary>
    private void Grading(GradingPlan grading, int line, int at)
    {
        FactKey Fact(FactKind kind) => new(kind, line, at);
        if (grading.Remedy == Remedies.Grading)
            Item(new(grading.TooHigh ? "cut" : "fill"), QuantityUnit.Volume, PurchaseUnit.AsMeasured).Net.Add(new(Fact(FactKind.GradingVolume), grading.Volume.CubicMetres, 1, Unit.Volume));
        else if (grading.Remedy == Remedies.TrimOrBury)
            Item(new("trim"), QuantityUnit.Length, PurchaseUnit.AsMeasured).Net.Add(new(Fact(FactKind.GradingLength), (grading.To - grading.From).Metres, 1, Unit.Length));
        else if (grading.Remedy == Remedies.ClosurePiece)
            Item(new("closure"), QuantityUnit.Area, PurchaseUnit.AsMeasured).Net.Add(new(Fact(FactKind.GradingArea), grading.Area.SquareMetres, 1, Unit.Area));
    }

    private void Removal(WorkPlan work, Func<FactKind, FactKey> fact)
    {
        Item(new("old-fence"), QuantityUnit.Length, PurchaseUnit.AsMeasured).Net.Add(new(fact(FactKind.WorkAlong), work.Along.Metres, 1, Unit.Length));
        Item(new(work.Pulled ? "old-post" : "old-post-cut"), QuantityUnit.Each, PurchaseUnit.AsMeasured).Net.Add(new(fact(FactKind.WorkPosts), work.Posts, 1, Unit.Count));
        if (work.Pulled)
            Item(new("old-concrete"), QuantityUnit.Volume, PurchaseUnit.Yard).Net.Add(new(fact(FactKind.WorkVolume), work.OldConcrete.CubicMetres, 1, Unit.Volume));
    }
}
