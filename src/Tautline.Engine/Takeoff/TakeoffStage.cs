using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Site;

namespace Tautline.Engine.Takeoff;

/// <summary>Sums what the planned lines need into one list, in the order a yard is loaded.</summary>
public static class TakeoffStage
{
    private static readonly string[] order =
    [
        "clearing", "cut", "fill", "old-fence", "old-post", "old-post-cut", "old-concrete", "temporary-panel", "temporary-stand", "temporary-clamp", "ballast",
        "post", "spoil", "concrete-bag", "grout", "base-plate", "wall-bracket", "anchor", "dome-cap", "loop-cap", "barb-arm-terminal", "barb-arm-line", "barbed-wire",
        "rail", "sleeve", "rail-end", "rail-clamp", "brace-band", "truss-rod", "tension-wire", "fabric", "splice-picket", "trim", "closure",
        "tension-bar", "tension-band", "carriage-bolt", "post-tie", "rail-tie", "ring", "lacing-ring", "slat", "slat-lock", "screen", "screen-tie", "concertina", "concertina-tie", "gate-leaf", "cantilever-leaf", "rolling-leaf", "overhead-leaf", "ground-track", "gate-beam", "gate-wheel", "trolley", "guide-roller", "roller", "slide-latch",
        "slide-stop", "hinge-set", "fork-latch",
        "double-latch", "drop-rod", "keeper",
    ];

    public static IReadOnlyList<TakeoffLine> Count(
        IReadOnlyList<LinePlan> plans, IReadOnlyList<HungLine> lines, IReadOnlyList<TemporaryPlan> temporary, FenceCatalog catalog, Rules rules, ProblemList problems)
    {
        var specs = lines.SelectMany(l => l.Site.Chain.Legs).Select(l => l.Spec).DistinctBy(s => s.Spec.Id).ToList();
        return [.. Items(plans, lines, temporary).Select((item, i) => Line(item, i, SpecOf(item, specs), catalog, rules, problems))];
    }

    /// <summary>The items of a plan in the order of its take-off lines.</summary>
    public static IReadOnlyList<TakeoffItem> Items(
        IReadOnlyList<LinePlan> plans, IReadOnlyList<HungLine> lines, IReadOnlyList<TemporaryPlan> temporary)
    {
        var collector = new TakeoffCollector();
        for (var i = 0; i < temporary.Count; i++) collector.Add(temporary[i], i);
        for (var i = 0; i < plans.Count; i++) collector.Add(plans[i], lines[i], i);
        return [.. collector.Items
            .OrderBy(i => Array.IndexOf(order, i.Key.Part))
            .ThenBy(i => i.Key.Section?.OutsideDiameter.Nanometres ?? 0)
            .ThenBy(i => i.Key.Section?.Id, StringComparer.Ordinal)
            .ThenBy(i => i.Key.SizeNm)
            .ThenBy(i => i.Key.Spec?.Value, StringComparer.Ordinal)
            .ThenBy(i => i.Key.Finish, StringComparer.Ordinal)];
    }

    /// <summary>The spec an item belongs to, where two could differ.</summary>
    public static ResolvedSpec? SpecOf(TakeoffItem item, IReadOnlyList<ResolvedSpec> specs)
        => item.Key.Spec is { } id ? specs.First(s => s.Spec.Id == id) : null;

    /// <summary>Length of the rolls or coils an item comes in as its spec says, metres; 0 for other items.</summary>
    public static double PackOf(TakeoffItem item, ResolvedSpec? spec) => item.Key.Part switch
    {
        "fabric" => spec!.Roll.Metres,
        "screen" => (spec!.Spec.Screen!.Roll ?? Length.FromFeet(50)).Metres,
        "concertina" => spec!.Spec.Concertina!.Covers.Metres,
        _ => 0,
    };

    private static TakeoffLine Line(TakeoffItem item, int index, ResolvedSpec? spec, FenceCatalog catalog, Rules rules, ProblemList problems)
    {
        var key = new FactKey(FactKind.Net, index);
        var roll = PackOf(item, spec);
        var net = TakeoffFormulas.Net<Plain>(item).Value;
        var purchase = TakeoffFormulas.Purchase<Plain>(item, key, net, roll, rules).Value;
        Length? left = item.PurchaseUnit == PurchaseUnit.Roll
            ? new Length(TakeoffFormulas.Left<Plain>(item, key with { Kind = FactKind.Purchase }, purchase, roll).Value)
            : null;
        if (item.Key.Part == "fabric" && left is { } tail && tail.Nanometres < rules.RollTail.Length.Nanometres)
            problems.Add(ProblemCode.RollTail, new($"takeoff[{index}]"), item.Key.Spec!.Value.Value, tail, rules.RollTail.Length);
        var part = catalog.Part(item.Key.Part);
        return new TakeoffLine(
            index + 1, part.Id, part.Name, item.Key.Section?.Id, item.Key.SizeNm > 0 ? Length.FromNanometres(item.Key.SizeNm) : null,
            item.Key.Spec, net, item.NetUnit, (int)purchase, item.PurchaseUnit,
            TakeoffFormulas.HasMass(item) ? new Mass(TakeoffFormulas.Mass<Plain>(item, key, net, spec).Value) : null,
            item.PurchaseUnit == PurchaseUnit.Bag ? (int)TakeoffFormulas.BagsByTotal<Plain>(key, net, rules).Value : null, left, item.Key.Finish,
            TakeoffFormulas.HasSpare(item) ? (int)TakeoffFormulas.Spare<Plain>(key, net, rules).Value : null, part.From.Verify)
        {
            CutOffs = item.CutOffs.Count > 0 ? new Length(TakeoffFormulas.CutOffs<Plain>(item).Value) : null,
        };
    }
}
