using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;

namespace Tautline.Formats.Csv;

/// <summary>Names of the places that net quantities are split by.</summary>
public static class Places
{
    public static IReadOnlyList<PlaceQuantity> Rows(Plan plan, QuantitiesBy by)
        => by == QuantitiesBy.Line ? PlaceQuantities.OfLines(plan) : PlaceQuantities.Of(plan);

    /// <summary>The take-off line with only what stands in the place; the rest of it is of the whole job.</summary>
    public static TakeoffLine Item(Plan plan, PlaceQuantity row) => plan.Takeoff[row.Item - 1] with { Net = row.Net };

    public static string Kind(FencePlace place) => place.Kind switch
    {
        FencePlaceKind.Line => "line",
        FencePlaceKind.Run => "run",
        FencePlaceKind.Terminals => "terminals",
        FencePlaceKind.LinePosts => "line-posts",
        FencePlaceKind.Gates => "gates",
        FencePlaceKind.Works => "work",
        _ => "temporary",
    };

    public static LineId? Line(Plan plan, FencePlace place)
        => place.Kind == FencePlaceKind.Temporary ? null : plan.Lines[place.Line].Id;

    public static int? Run(Plan plan, FencePlace place)
        => place.Kind == FencePlaceKind.Run ? plan.Lines[place.Line].Runs[place.Run].Number : null;

    public static TemporaryId? Temporary(Plan plan, FencePlace place)
        => place.Kind == FencePlaceKind.Temporary ? plan.Temporary[place.Line].Id : null;

    /// <summary>'Line main, run 2', 'Line main, line posts', 'Temporary fence yard'.</summary>
    public static string Words(Plan plan, FencePlace place) => place.Kind switch
    {
        FencePlaceKind.Temporary => $"Temporary fence {Temporary(plan, place)}",
        FencePlaceKind.Line => $"Line {Line(plan, place)}",
        FencePlaceKind.Run => $"Line {Line(plan, place)}, run {Run(plan, place)}",
        _ => $"Line {Line(plan, place)}, {Kind(place).Replace('-', ' ')}",
    };
}
