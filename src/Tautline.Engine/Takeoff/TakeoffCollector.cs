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
internal sealed partial class TakeoffCollector
{
    private static readonly HashSet<string> bare =
    [
        "spoil", "concrete-bag", "grout", "anchor", "closure", "old-fence", "old-post", "old-post-cut", "old-concrete", "clearing", "cut", "fill", "trim", "concertina", "screen",
        "slat", "slat-lock", "drop-rod",
    ];

    private readonly Dictionary<ItemKey, TakeoffItem> items = [];

    /// <summary>Colour or coating of the entity being counted; every part of it that shows carries it.</summary>
    private string? finish;

    public IEnumerable<TakeoffItem> Items => items.Values;

    public void Add(LinePlan plan, HungLine line, int index)
    {
        for (var i = 0; i < plan.Posts.Count; i++) Post(plan.Posts[i], line.Posts[i], index, i);
        for (var i = 0; i < plan.Runs.Count; i++) Run(plan.Runs[i], line.Runs[i], line.Site, index, i);
        for (var i = 0; i < plan.Gates.Count; i++)
        {
            var (gate, site) = (plan.Gates[i], line.Site.Gates[i]);
            finish = site.Leg.Spec.Finish;
            Gate(gate, site, index, i);
            if (gate.Roller is not { } roller) continue;
            SecondRoller(plan.Posts[roller], line.Posts[roller], index, roller);
        }
        finish = null;
        for (var i = 0; i < plan.Works.Count; i++) Work(plan.Works[i], index, i);
        for (var i = 0; i < plan.Grading.Count; i++) Grading(plan.Grading[i], index, i);
    }

    private void Post(PostPlan post, PlacedPost placed, int line, int at)
    {
        finish = placed.Spec.Finish;
        if (placed.Support == Support.Standing)
        {
            if (post.Kind == PostKind.Line) Count(new("post-tie", placed.Section), new(FactKind.PostTies, line, at), post.Ties, placed.Spec.Widths);
            return;
        }
        var stands = new FactKey(FactKind.Stands, line, at);
        Pipe(post, placed, line, at, stands);
        Count(new(Top(placed), placed.Section), stands, 1);
        if (post.Kind == PostKind.Line) Count(new("post-tie", placed.Section), new(FactKind.PostTies, line, at), post.Ties, placed.Spec.Widths);
        Hold(post, placed, line, at, stands);
    }

    /// <summary>The roller post behind the first: its post, hole and cap again, and nothing of the fence.</summary>
    private void SecondRoller(PostPlan post, PlacedPost placed, int line, int at)
    {
        var stands = new FactKey(FactKind.Stands, line, at);
        Pipe(post, placed, line, at, stands);
        Count(new("dome-cap", placed.Section), stands, 1);
        Hold(post, placed, line, at, stands);
    }

    private void Pipe(PostPlan post, PlacedPost placed, int line, int at, FactKey stands)
    {
        var item = Count(new("post", placed.Section, post.OrderLength.Nanometres), stands, 1);
        item.Masses.Add(new(new(FactKind.PostMass, line, at), post.Mass.Kilograms, 1, Unit.Mass));
        if (post.CutOff is { } cut) item.CutOffs.Add(new(new(FactKind.CutOff, line, at), cut.Metres, 1, Unit.Length));
    }

    /// <summary>Barb arms take the place of caps.</summary>
    private static string Top(PlacedPost post) => (post.Kind == PostKind.Line, post.Spec.Barb is not null, post.Spec.TopRail) switch
    {
        (true, true, _) => "barb-arm-line",
        (false, true, _) when post.Spec.Barb!.Lean != "up" => "barb-arm-terminal",
        (true, false, true) => "loop-cap",
        _ => "dome-cap",
    };

    private void Hold(PostPlan post, PlacedPost placed, int line, int at, FactKey stands)
    {
        if (placed.Support == Support.Plated)
        {
            Count(new("base-plate", placed.Section), stands, 1);
            Count(new("anchor"), stands, 1, 4);
        }
        if (post.Brackets is { } brackets)
        {
            Count(new("wall-bracket", placed.Section), new(FactKind.Brackets, line, at), brackets);
            Count(new("anchor"), new(FactKind.Anchors, line, at), post.Anchors!.Value);
        }
        if (placed.Support is not (Support.Concrete or Support.Cored)) return;
        Item(new("spoil"), QuantityUnit.Volume, PurchaseUnit.Yard).Net.Add(new(new(FactKind.Spoil, line, at), post.Spoil.CubicMetres, 1, Unit.Volume));
        var cored = placed.Support == Support.Cored;
        var fill = cored ? Item(new("grout"), QuantityUnit.Volume, PurchaseUnit.Sack) : Item(new("concrete-bag"), QuantityUnit.Volume, PurchaseUnit.Bag);
        fill.Net.Add(new(new(FactKind.Concrete, line, at), post.Concrete.CubicMetres, 1, Unit.Volume));
        if (!cored) fill.Bought.Add(new(new(FactKind.Bags, line, at), post.Bags, 1, Unit.Count));
    }

    private void Run(RunPlan run, HungRun hung, SiteLine site, int line, int at)
    {
        var spec = hung.Run.Spec;
        finish = spec.Finish;
        FactKey Fact(FactKind kind) => new(kind, line, at);
        var fabric = Item(new("fabric", null, 0, spec.Spec.Id), QuantityUnit.Length, PurchaseUnit.Roll);
        fabric.Net.Add(new(Fact(FactKind.Fabric), run.Fabric.Metres, spec.Widths, Unit.Length));
        fabric.Bought.Add(new(Fact(FactKind.RollTake), run.RollTake.Metres, spec.Widths, Unit.Length));
        if (spec.Widths > 1) Count(new("lacing-ring"), Fact(FactKind.Seam), run.Seam, spec.Widths - 1);
        if (spec.TopRail && !site.Keeps("rail")) Rail(run, spec, Fact);
        if (spec.BayRails > 0 && !site.Keeps("rail")) BayRails(run, spec, line, at);
        Dress(run, spec, Fact);
        if (spec.Barb is { } barb) Barb(run, barb, Fact);
        if (spec.Wires > 0) Wire(run, spec.Wires, site.Keeps("wire"), Fact);
        if (spec.Rails > 0) Count(new("rail-tie", spec.Rail), Fact(FactKind.RailTies), run.RailTies, spec.Rails);
        for (var end = 0; end < 2; end++) End(run, hung, site, line, at, end);
    }

    private void Rail(RunPlan run, ResolvedSpec spec, Func<FactKind, FactKey> fact)
    {
        var rail = Item(new("rail", spec.Rail), QuantityUnit.Length, PurchaseUnit.Stick);
        rail.Net.Add(new(fact(FactKind.Rail), run.Rail.Metres, 1, Unit.Length));
        Count(new("sleeve", spec.Rail), fact(FactKind.Sleeves), run.Sleeves);
        Count(new("rail-end", spec.Rail), fact(FactKind.RunEnds), 2);
    }

    /// <summary>A middle or bottom rail: a piece for each bay, held by clamps on line posts and by rail ends on terminals.</summary>
    private void BayRails(RunPlan run, ResolvedSpec spec, int line, int at)
    {
        var rail = Item(new("rail", spec.Rail), QuantityUnit.Length, PurchaseUnit.Stick);
        for (var which = 0; which < spec.BayRails; which++) // each rail's pieces on their own: they are packed piece by piece
            for (var bay = 0; bay < run.BayPieces.Count; bay++)
                rail.Net.Add(new(new(FactKind.BayPiece, line, at, bay), run.BayPieces[bay].Metres, 1, Unit.Length));
        Count(new("rail-end", spec.Rail), new(FactKind.RunEnds, line, at), 2, spec.BayRails);
        for (var post = run.FromPost + 1; post < run.FromPost + run.Bays; post++)
            Count(new("rail-clamp", spec.LinePost), new(FactKind.Stands, line, post), 1, spec.BayRails);
    }

    private void Barb(RunPlan run, Barb barb, Func<FactKind, FactKey> fact)
    {
        var wire = Item(new("barbed-wire"), QuantityUnit.Length, PurchaseUnit.Spool);
        wire.Net.Add(new(fact(FactKind.Strand), run.Strand.Metres, 1, Unit.Length));
        wire.Bought.Add(new(fact(FactKind.RunEnds), 2, barb.Strands, Unit.Count));
    }

    private void Wire(RunPlan run, int wires, bool kept, Func<FactKind, FactKey> fact)
    {
        if (!kept) Item(new("tension-wire"), QuantityUnit.Length, PurchaseUnit.Coil).Net.Add(new(fact(FactKind.Wire), run.Wire.Metres, wires, Unit.Length));
        Count(new("ring"), fact(FactKind.Rings), run.Rings, wires);
    }

    /// <summary>
    /// For each braced panel a rod and its band on each post, and a rail with two ends and a band on each post. A middle rail is
    /// the brace rail of its panel and counted as such.
    /// </summary>
    private void Brace(EndPlan end, HungRun hung, Section terminal, FactKey one)
    {
        var spec = hung.Run.Spec;
        var own = spec.Spec.Middle == "rail" ? 0 : 1;
        Count(new("truss-rod"), one, 1);
        Bands("brace-band", terminal, one, 1, 1 + own);
        Bands("brace-band", spec.LinePost, one, 1, 1 + own);
        if (own == 0) return;
        var rail = Item(new("rail", spec.Rail), QuantityUnit.Length, PurchaseUnit.Stick);
        rail.Net.Add(new(one with { Kind = FactKind.BraceRail }, end.BraceRail.Metres, 1, Unit.Length));
        Count(new("rail-end", spec.Rail), one, 1, 2);
    }

    private void End(RunPlan run, HungRun hung, SiteLine site, int line, int at, int end)
    {
        var spec = hung.Run.Spec;
        var plan = end == 0 ? run.Start : run.Finish;
        var placed = end == 0 ? hung.First : hung.Last;
        var post = placed.Section;
        var one = new FactKey(FactKind.FabricEnd, line, at, end);
        if (placed.Woven) Count(new("splice-picket", null, 0, spec.Spec.Id), one, 1, spec.Widths);
        if (!placed.WithoutBar)
        {
            Count(new("tension-bar", null, WholeInches(plan.Bar)), one, 1, spec.Widths);
            Bands("tension-band", post, new(FactKind.Bands, line, at, end), plan.Bands, spec.Widths);
        }
        var held = (site.Keeps("rail") ? 0 : spec.Rails) + (site.Keeps("wire") ? 0 : spec.Wires);
        if (held > 0) Bands("brace-band", post, one, 1, held);
        if (spec.Braced && !placed.Woven) Brace(plan, hung, post, one);
    }

    private void Gate(GatePlan gate, SiteGate site, int line, int at)
    {
        var leaves = new FactKey(FactKind.Leaves, line, at);
        var stands = new FactKey(FactKind.GateStands, line, at);
        if (gate.Kind is GateKind.Cantilever or GateKind.Rolling or GateKind.Overhead)
        {
            Slide(gate, site, line, at);
            return;
        }
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
        if (finish is not null && !bare.Contains(key.Part)) key = key with { Finish = finish };
        if (!items.TryGetValue(key, out var item)) items[key] = item = new TakeoffItem(key, net, purchase, [], [], []);
        return item;
    }

    /// <summary>Bars are bought by the whole inch.</summary>
    private static long WholeInches(Length length) => Decide.Cover(length.Metres, 0.0254) * Length.NmPerInch;
}
