using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Field.Cards;

public enum FabricWord
{
    /// <summary>Nothing was counted yet.</summary>
    Uncounted,

    Enough,

    /// <summary>It hangs on what the advance turns out to be, or on which ends are whole and which half.</summary>
    Perhaps,

    Short,
}

/// <summary>
/// Whether the fabric at hand is enough for a run. Each piece more is one splice more; until it is seen which ends are whole and which half, one picket is allowed for
/// each. Pickets woven in at splices are among those counted: they come from the offcuts.
/// </summary>
/// <param name="Need">Pickets of one width, from the widest advance to the narrowest.</param>
/// <param name="Widths">Laced one above the other.</param>
/// <param name="Have">Pickets counted.</param>
/// <param name="Allowed">Pickets allowed for splices.</param>
/// <param name="ShortBy">Pickets wanting at the most; 0 where it is enough.</param>
/// <param name="Feeds">What the plan hangs, width by width, with its splices; empty where no fabric is stocked.</param>
public sealed record FabricCard(PicketRange Need, int Widths, Length Fabric, int Have, int Allowed, FabricWord Word, int ShortBy, IReadOnlyList<PullFeed> Feeds, IReadOnlyList<RollUse> Rolls)
{
    /// <param name="counted">Pickets of each piece at hand, rolls and remnants alike.</param>
    public static FabricCard Of(Plan plan, int line, int run, IReadOnlyList<int> counted)
    {
        var planned = plan.Lines[line].Runs[run];
        var widths = plan.Specs.First(s => s.Id == planned.Spec).Widths;
        var (have, allowed) = (counted.Sum(), Math.Max(0, counted.Count - widths));
        var (least, most) = (widths * planned.PicketsLow, widths * planned.PicketsHigh + allowed);
        var word = counted.Count == 0 ? FabricWord.Uncounted : have >= most ? FabricWord.Enough : have < least ? FabricWord.Short : FabricWord.Perhaps;
        return new(
            new(planned.PicketsLow, planned.PicketsHigh), widths, planned.Fabric, have, allowed, word, Math.Max(0, most - have), RollFeeds.Of(plan, plan.Lines[line], planned), plan.Rolls?.Rolls ?? []);
    }
}
