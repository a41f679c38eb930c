using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Takeoff;

/// <summary>
/// The net quantities of a take-off by the place they stand in. Nothing is worked out anew: each take-off line is a sum of shares,
/// and the shares are summed place by place instead. Purchase quantities have no place, for a roll or a stick serves several.
/// </summary>
public static class PlaceQuantities
{
    /// <summary>
    /// A row for every place and every item it takes, along the lines and then for temporary fence. Over all places, counts sum to the
    /// take-off line exactly, measures within the rounding of a sum. No rows for a plan that reports an error.
    /// </summary>
    public static IReadOnlyList<PlaceQuantity> Of(Plan plan) => Summed(Shares(plan));

    /// <summary>The same with all places of a line together.</summary>
    public static IReadOnlyList<PlaceQuantity> OfLines(Plan plan) => Summed(Shares(plan).Select(s => s with { Place = Whole(s.Place) }));

    private static IEnumerable<PlaceQuantity> Shares(Plan plan)
        => TakeoffStage.Items(plan.Lines, plan.Basis.Lines, plan.Temporary)
            .SelectMany((item, i) => item.Net.Select(share => new PlaceQuantity(PlaceOf(share.Fact, plan), i + 1, share.Times * share.Value)));

    private static IReadOnlyList<PlaceQuantity> Summed(IEnumerable<PlaceQuantity> shares)
        => [.. shares.GroupBy(s => (s.Place, s.Item)).Select(g => new PlaceQuantity(g.Key.Place, g.Key.Item, g.Sum(s => s.Net)))
            .OrderBy(r => r.Place.Kind == FencePlaceKind.Temporary)
            .ThenBy(r => r.Place.Line)
            .ThenBy(r => r.Place.Kind)
            .ThenBy(r => r.Place.Run)
            .ThenBy(r => r.Item)];

    private static FencePlace Whole(FencePlace place)
        => place.Kind == FencePlaceKind.Temporary ? place : new(FencePlaceKind.Line, place.Line);

    private static FencePlace PlaceOf(FactKey fact, Plan plan) => fact.Kind switch
    {
        >= FactKind.Stands and <= FactKind.PostTies => new(PostsOf(plan.Lines[fact.Line].Posts[fact.Item]), fact.Line),
        >= FactKind.RunAlong and <= FactKind.ColumnsHigh => new(FencePlaceKind.Run, fact.Line, fact.Item),
        >= FactKind.GateStands and <= FactKind.Leaves => new(FencePlaceKind.Gates, fact.Line),
        >= FactKind.WorkStands and <= FactKind.GradingVolume => new(FencePlaceKind.Works, fact.Line),
        >= FactKind.Panels and <= FactKind.Ballast => new(FencePlaceKind.Temporary, fact.Line),
        _ => throw new ArgumentOutOfRangeException(nameof(fact), fact.Kind, "a fact of a post, run, end, gate, work or temporary fence adds to a take-off line"),
    };

    private static FencePlaceKind PostsOf(PostPlan post) => post.Kind == PostKind.Line ? FencePlaceKind.LinePosts : FencePlaceKind.Terminals;
}
