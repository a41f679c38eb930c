using Tautline.Engine.Fabric.Rolls;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>What is laid down where: rolls by their drops, then what each part of the fence takes, then everything that is loaded.</summary>
internal static class LoadSheet
{
    public static PaperSheet Of(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        return desk.Sheet(say["paper.load"], "load") with
        {
            Blocks = [.. Drops(desk), .. Places(desk), Everything(desk)],
            Cautions = say.Cautions(4),
        };
    }

    private static IEnumerable<PaperBlock> Drops(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        if (desk.Plan.Rolls is not { Rolls.Count: > 0 } rolls) yield break;
        yield return new PaperTable(
            say["paper.load.drops"],
            [
                new(say["paper.run.roll"], ColumnAlign.End), new(say["rolls.stock"]), new(say["paper.length"], ColumnAlign.End), new(say["rolls.drop"], ColumnAlign.End), new(say["rolls.first"]),
                new(say["paper.weight"], ColumnAlign.End), new(say["rolls.left"], ColumnAlign.End), new(say["paper.loaded"], ColumnAlign.Tick), new(say["paper.dropped"], ColumnAlign.Tick),
            ],
            [.. rolls.Rolls.Select((r, i) => (IReadOnlyList<string>)[
                $"{i + 1}", r.Id.Stock + (r.Lot.Length > 0 ? $", {r.Lot}" : "") + (r.Missing ? " " + say["rolls.missing"] : r.Certain ? "" : " " + say["rolls.perhaps"]),
                say.Words.Long(Length.FromNanometres(r.LengthNm)), say.Range(r.Drop, say.Words.Station), First(desk, r), say.Words.Mass(new Mass(r.Kilograms)), say.Range(r.LeftLength, say.Words.Long), "", ""])]);
    }

    /// <summary>The run a roll goes into first, as its sheet is named.</summary>
    private static string First(PacketDesk desk, RollUse roll)
    {
        foreach ((int i, LinePlan line) in desk.Plan.Lines.Index())
            foreach (RunPlan run in line.Runs)
                if (roll.FirstPull.StartsWith(RollFeeds.PullId(line, run, 0)[..^1], StringComparison.Ordinal))
                    return $"{desk.Mark(i, run.FromPost)}–{desk.Mark(i, run.ToPost)}";
        return roll.FirstPull;
    }

    private static IEnumerable<PaperBlock> Places(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        foreach (IGrouping<FencePlace, PlaceQuantity> place in PlaceQuantities.Of(desk.Plan).GroupBy(q => q.Place))
            yield return new PaperTable(
                Named(desk, place.Key), [new(say["paper.part"]), new(say["paper.size"]), new(say["paper.net"], ColumnAlign.End), new("", ColumnAlign.Tick)],
                [.. place.Select(q => desk.Plan.Takeoff.First(t => t.Number == q.Item) is var t ? (IReadOnlyList<string>)[say.Part(t.Part, t.Name), say.Size(t), say.Amount(t, q.Net), ""] : [])]);
    }

    private static string Named(PacketDesk desk, FencePlace place)
    {
        PaperSay say = desk.Say;
        if (place.Kind == FencePlaceKind.Temporary) return say["paper.place.temporary"];
        LinePlan line = desk.Plan.Lines[place.Line];
        string where = place.Kind == FencePlaceKind.Run
            ? say.Say.Say("paper.run", ("n", line.Runs[place.Run].Number), ("from", desk.Mark(place.Line, line.Runs[place.Run].FromPost)), ("to", desk.Mark(place.Line, line.Runs[place.Run].ToPost)))
            : say["paper.place." + place.Kind.ToString().ToLowerInvariant()];
        return desk.Plan.Lines.Count > 1 ? $"{say.Line(line)}: {where}" : where;
    }

    private static PaperTable Everything(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        return new PaperTable(
            say["paper.load.all"], [new(say["paper.no"], ColumnAlign.End), new(say["paper.part"]), new(say["paper.size"]), new(say["paper.buy"], ColumnAlign.End), new(say["paper.weight"], ColumnAlign.End), new(say["paper.loaded"], ColumnAlign.Tick)],
            [.. desk.Plan.Takeoff.Select(t => (IReadOnlyList<string>)[$"{t.Number}", say.Part(t.Part, t.Name), say.Size(t), say.Purchase(t), t.Mass is { } mass ? say.Words.Mass(mass) : "", ""])]);
    }
}
