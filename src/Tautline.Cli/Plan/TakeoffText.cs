using Tautline.Cli.Terminal;

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
                $"{t.Number}", t.Name, words.Size(t), words.Net(t), PlanWords.Purchase(t), t.Mass is { } mass ? words.Mass(mass) : "", Remarks(t, words),
            ]));
    }

    private static string Remarks(Engine.Takeoff.TakeoffLine line, PlanWords words)
    {
        List<string> remarks = [];
        if (line.BagsByTotal is { } bags) remarks.Add($"{bags} by total volume");
        if (line.Left is { } left) remarks.Add($"{words.Long(left)} left over");
        if (line.Verify) remarks.Add("verify");
        return string.Join("; ", remarks);
    }
}
