using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;

namespace Tautline.Cli.Plan;

/// <summary>The take-off list: what stands in the fence, and what to buy.</summary>
internal static class TakeoffText
{
    public static void Write(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        paper.Heading("Take-off");
        paper.Table(
            [">no.", "part", "size", ">net", ">buy", ">weight", "remarks"],
            plan.Takeoff.Select(IReadOnlyList<string> (t) =>
            [
                $"{t.Number}", t.Name, words.Size(t), words.Net(t), PlanWords.Purchase(t), t.Mass is { } mass ? words.Mass(mass) : "", words.Remarks(t),
            ]));
    }
}
