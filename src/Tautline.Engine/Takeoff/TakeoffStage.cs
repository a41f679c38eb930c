using Tautline.Engine.Catalog;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Takeoff;

/// <summary>Sums what the planned lines need into one list, in the order a yard is loaded.</summary>
public static class TakeoffStage
{
    private static readonly string[] order =
    [
        "post", "spoil", "concrete-bag", "grout", "base-plate", "anchor", "dome-cap", "loop-cap", "barb-arm-terminal", "barb-arm-line", "barbed-wire",
        "rail", "sleeve", "rail-end", "rail-clamp", "brace-band", "truss-rod", "tension-wire", "fabric",
        "tension-bar", "tension-band", "carriage-bolt", "post-tie", "rail-tie", "ring", "lacing-ring", "gate-leaf", "cantilever-leaf", "roller", "slide-latch",
        "slide-stop", "hinge-set", "fork-latch",
        "double-latch", "drop-rod", "keeper",
    ];

    public static IReadOnlyList<TakeoffLine> Count(
        IReadOnlyList<LinePlan> plans, IReadOnlyList<HungLine> lines, FenceCatalog catalog, Rules rules, ProblemList problems)
        => [.. Items(plans, lines).Select((item, i) => Line(item, i, RollOf(item, lines), catalog, rules, problems))];

    /// <summary>The items of a plan in the order of its take-off lines.</summary>
    public static IReadOnlyList<TakeoffItem> Items(IReadOnlyList<LinePlan> plans, IReadOnlyList<HungLine> lines)
    {
        var collector = new TakeoffCollector();
        for (var i = 0; i < plans.Count; i++) collector.Add(plans[i], lines[i], i);
        return [.. collector.Items
            .OrderBy(i => Array.IndexOf(order, i.Key.Part))
            .ThenBy(i => i.Key.Section?.OutsideDiameter.Nanometres ?? 0)
            .ThenBy(i => i.Key.Section?.Id, StringComparer.Ordinal)
            .ThenBy(i => i.Key.SizeNm)
            .ThenBy(i => i.Key.Spec?.Value, StringComparer.Ordinal)];
    }

    /// <summary>Length of the rolls an item's fabric comes in, metres; 0 for other items.</summary>
    public static double RollOf(TakeoffItem item, IReadOnlyList<HungLine> lines)
        => item.PurchaseUnit == PurchaseUnit.Roll
            ? lines.SelectMany(l => l.Runs).First(r => r.Run.Spec.Spec.Id == item.Key.Spec).Run.Spec.Roll.Metres
            : 0;

    private static TakeoffLine Line(TakeoffItem item, int index, double roll, FenceCatalog catalog, Rules rules, ProblemList problems)
    {
        var key = new FactKey(FactKind.Net, index);
        var net = TakeoffFormulas.Net<Plain>(item).Value;
        var purchase = TakeoffFormulas.Purchase<Plain>(item, key, net, roll, rules).Value;
        Length? left = item.PurchaseUnit == PurchaseUnit.Roll
            ? new Length(TakeoffFormulas.Left<Plain>(item, key with { Kind = FactKind.Purchase }, purchase, roll).Value)
            : null;
        if (left is { } tail && tail.Nanometres < rules.RollTail.Length.Nanometres)
            problems.Add(ProblemCode.RollTail, new($"takeoff[{index}]"), item.Key.Spec!.Value.Value, tail, rules.RollTail.Length);
        var part = catalog.Part(item.Key.Part);
        return new TakeoffLine(
            index + 1, part.Id, part.Name, item.Key.Section?.Id, item.Key.SizeNm > 0 ? Length.FromNanometres(item.Key.SizeNm) : null,
            item.Key.Spec, net, item.NetUnit, (int)purchase, item.PurchaseUnit,
            TakeoffFormulas.HasMass(item) ? new Mass(TakeoffFormulas.Mass<Plain>(item, key, net).Value) : null,
            item.PurchaseUnit == PurchaseUnit.Bag ? (int)TakeoffFormulas.BagsByTotal<Plain>(key, net, rules).Value : null, left, part.From.Verify);
    }
}
