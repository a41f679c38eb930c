using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Takeoff;

/// <summary>Goes through the planned lines and notes, item by item, which facts add to it.</summary>
internal sealed class TakeoffCollector
{
    private readonly Dictionary<ItemKey, TakeoffItem> items = [];

    public IEnumerable<TakeoffItem> Items => items.Values;

    public void Add(LinePlan plan, HungLine line, int index)
    {
        for (var i = 0; i < plan.Posts.Count; i++) Post(plan.Posts[i], line.Posts[i], index, i);
        for (var i = 0; i < plan.Runs.Count; i++) Run(plan.Runs[i], line.Runs[i], index, i);
        for (var i = 0; i < plan.Gates.Count; i++) Gate(plan.Gates[i], line.Site.Gates[i], index, i);
    }

    private void Post(PostPlan post, PlacedPost placed, int line, int at)
    {
        var stands = new FactKey(FactKind.Stands, line, at);
        var item = Count(new("post", placed.Section, post.OrderLength.Nanometres), stands, 1);
        item.Masses.Add(new(new(FactKind.PostMass, line, at), post.Mass.Kilograms, 1, Unit.Mass));
        var loop = post.Kind == PostKind.Line && placed.Spec.TopRail;
        Count(new(loop ? "loop-cap" : "dome-cap", placed.Section), stands, 1);
        if (post.Kind == PostKind.Line) Count(new("post-tie", placed.Section), new(FactKind.PostTies, line, at), post.Ties);
        var concrete = Item(new("concrete-bag"), QuantityUnit.Volume, PurchaseUnit.Bag);
        concrete.Net.Add(new(new(FactKind.Concrete, line, at), post.Concrete.CubicMetres, 1, Unit.Volume));
        concrete.Bought.Add(new(new(FactKind.Bags, line, at), post.Bags, 1, Unit.Count));
    }

    private void Run(RunPlan run, HungRun hung, int line, int at)
    {
        var spec = hung.Run.Spec;
        FactKey Fact(FactKind kind) => new(kind, line, at);
        var fabric = Item(new("fabric", null, 0, spec.Spec.Id), QuantityUnit.Length, PurchaseUnit.Roll);
        fabric.Net.Add(new(Fact(FactKind.Fabric), run.Fabric.Metres, 1, Unit.Length));
        fabric.Bought.Add(new(Fact(FactKind.RollTake), run.RollTake.Metres, 1, Unit.Length));
        if (spec.TopRail) Rail(run, spec, Fact);
        if (spec.Wires > 0) Wire(run, spec.Wires, Fact);
        for (var end = 0; end < 2; end++) End(run, hung, line, at, end);
    }

    private void Rail(RunPlan run, ResolvedSpec spec, Func<FactKind, FactKey> fact)
    {
        var rail = Item(new("rail", spec.Rail), QuantityUnit.Length, PurchaseUnit.Stick);
        rail.Net.Add(new(fact(FactKind.Rail), run.Rail.Metres, 1, Unit.Length));
        Count(new("sleeve", spec.Rail), fact(FactKind.Sleeves), run.Sleeves);
        Count(new("rail-tie", spec.Rail), fact(FactKind.RailTies), run.RailTies);
        Count(new("rail-end", spec.Rail), fact(FactKind.RunEnds), 2);
    }

    private void Wire(RunPlan run, int wires, Func<FactKind, FactKey> fact)
    {
        Item(new("tension-wire"), QuantityUnit.Length, PurchaseUnit.Coil).Net.Add(new(fact(FactKind.Wire), run.Wire.Metres, wires, Unit.Length));
        Count(new("ring"), fact(FactKind.Rings), run.Rings, wires);
    }

    /// <summary>For each braced panel a rail with two ends, a rod, and four bands: two on the terminal, two on the line post.</summary>
    private void Brace(EndPlan end, HungRun hung, Section terminal, FactKey one)
    {
        var spec = hung.Run.Spec;
        var rail = Item(new("rail", spec.Rail), QuantityUnit.Length, PurchaseUnit.Stick);
        rail.Net.Add(new(one with { Kind = FactKind.BraceRail }, end.BraceRail.Metres, 1, Unit.Length));
        Count(new("rail-end", spec.Rail), one, 1, 2);
        Count(new("truss-rod"), one, 1);
        Bands("brace-band", terminal, one, 1, 2);
        Bands("brace-band", spec.LinePost, one, 1, 2);
    }

    private void End(RunPlan run, HungRun hung, int line, int at, int end)
    {
        var spec = hung.Run.Spec;
        var plan = end == 0 ? run.Start : run.Finish;
        var post = (end == 0 ? hung.First : hung.Last).Section;
        var one = new FactKey(FactKind.FabricEnd, line, at, end);
        Count(new("tension-bar", null, WholeInches(plan.Bar)), one, 1);
        Bands("tension-band", post, new(FactKind.Bands, line, at, end), plan.Bands, 1);
        var held = (spec.TopRail ? 1 : 0) + spec.Wires;
        if (held > 0) Bands("brace-band", post, one, 1, held);
        if (spec.Braced) Brace(plan, hung, post, one);
    }

    private void Gate(GatePlan gate, SiteGate site, int line, int at)
    {
        var leaves = new FactKey(FactKind.Leaves, line, at);
        var stands = new FactKey(FactKind.GateStands, line, at);
        Count(new("gate-leaf", null, gate.Leaf.Nanometres, site.Leg.Spec.Spec.Id), leaves, gate.Leaves);
        Count(new("hinge-set", site.Post), leaves, gate.Leaves, 2);
        if (gate.Kind == GateKind.Walk)
        {
            Count(new("fork-latch", site.Post), stands, 1);
            return;
        }
        Count(new("double-latch"), stands, 1);
        Count(new("drop-rod"), stands, 1);
        Count(new("keeper"), stands, 1, 2);
    }

    /// <summary>Bands of either kind, each with its bolt.</summary>
    private void Bands(string part, Section post, FactKey fact, double value, int times)
    {
        Count(new(part, post), fact, value, times);
        Count(new("carriage-bolt"), fact, value, times);
    }

    private TakeoffItem Count(ItemKey key, FactKey fact, double value, int times = 1)
    {
        var item = Item(key, QuantityUnit.Each, PurchaseUnit.Each);
        item.Net.Add(new(fact, value, times, Unit.Count));
        return item;
    }

    private TakeoffItem Item(ItemKey key, QuantityUnit net, PurchaseUnit purchase)
    {
        if (!items.TryGetValue(key, out var item)) items[key] = item = new TakeoffItem(key, net, purchase, [], [], []);
        return item;
    }

    /// <summary>Bars are bought by the whole inch.</summary>
    private static long WholeInches(Length length) => Decide.Cover(length.Metres, 0.0254) * Length.NmPerInch;
}
