using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Hang;

/// <summary>Which roll goes where.</summary>
internal static class RollText
{
    public static void Write(Engine.Plans.Plan plan, PlanWords words, Paper paper)
    {
        if (plan.Rolls is not { Rolls.Count: > 0 } rolls) return;
        paper.Heading($"Rolls: {PlanWords.Count(rolls.Rolls.Count, "roll")} in hanging order");
        paper.Table(
            [">roll", "stock", "lot", ">length", ">drop at", "first into", ">pickets hung", ">left over", ">weight"],
            rolls.Rolls.Select((r, i) => (IReadOnlyList<string>)[
                $"{i + 1}", r.Id.Stock + (r.Missing ? " (missing)" : r.Certain ? "" : " (perhaps)"), r.Lot, words.Long(Length.FromNanometres(r.LengthNm)), HangRows.Range(r.Drop, words.Station),
                r.FirstPull, PlanWords.Range(r.Hung.Low, r.Hung.High), HangRows.Range(r.LeftLength, words.Long), words.Mass(new Mass(r.Kilograms)),
            ]));
        foreach (var kind in rolls.Kinds)
            paper.Line($"  {words.Long(Length.FromNanometres(kind.AtHigh.BoughtNm))} bought, {PlanWords.Count(kind.AtHigh.Splices, "splice")} at most"
                       + (kind.Bound.Proven ? $"; no plan in {(plan.Basis.Job.HangOrder == "free" ? "any" : "this")} order opens less." : $"; at least {words.Long(Length.FromNanometres(kind.Bound.BoughtNm))} is needed in any order."));
        if (plan.Basis.Job.HangOrder == "free") paper.Line($"  Hang in this order: {string.Join(", ", rolls.Feeds.OrderBy(f => f.HangsAs).Select(f => f.Pull))}.");
        foreach (var load in rolls.Loads.Where(l => l.Over || l.Pieces > 1))
            paper.Line($"  For {load.Pull} {PlanWords.Count(load.Pieces, "piece")} are woven together, {words.Long(Length.FromNanometres(load.LengthNm))}, {words.Mass(new Mass(load.Kilograms))}{(load.Over ? ", more than a machine carries" : "")}.");
        foreach (var back in rolls.Returned) paper.Line($"  Back unopened: {back.Count} of {back.Stock}{(back.Lot.Length > 0 ? $", lot {back.Lot}" : "")}.");
    }
}
