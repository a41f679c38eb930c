using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;

namespace Tautline.Cli.Plan;

/// <summary>Net quantities place by place, under the numbers of the take-off.</summary>
internal static class QuantitiesText
{
    private const string NetOnly = "Net quantities, numbered as in the take-off. What is bought is for the whole job: a roll or a stick serves several places.";

    public static void Write(Engine.Plans.Plan plan, QuantitiesBy by, PlanWords words, Paper paper)
    {
        paper.Heading($"Quantities by {(by == QuantitiesBy.Line ? "line" : "run")}");
        paper.Labelled([("net", NetOnly)]);
        foreach (var place in Places.Rows(plan, by).GroupBy(r => r.Place))
        {
            paper.Line();
            paper.Line(Places.Words(plan, place.Key));
            paper.Table([">no.", "part", "size", ">net"], place.Select(r => Row(Places.Item(plan, r), words)));
        }
    }

    private static IReadOnlyList<string> Row(TakeoffLine item, PlanWords words) => [$"{item.Number}", item.Name, words.Size(item), words.Net(item)];
}
