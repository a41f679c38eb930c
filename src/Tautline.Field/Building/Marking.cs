using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.Log;

namespace Tautline.Field.Building;

/// <summary>What a person says was done, as the payload of an entry: the posts are named one by one, each with its own place.</summary>
public static class Marking
{
    /// <summary>The next so many posts of a run, walking forward: 'twelve posts today'.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one, or more than are left.</exception>
    public static WorkDone Next(Plan plan, TodayRow row, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, row.Left.Count);
        return new() { Operation = row.Operation, Count = count, Posts = [.. row.Left.Take(count).Select(p => AsPlanned(plan, row.Line, p))] };
    }

    /// <summary>A run framed, hung or tied, or a gate hung.</summary>
    public static (WorkDone Done, LogPlace Place) Whole(Plan plan, TodayRow row)
    {
        var line = plan.Lines[row.Line];
        var middle = row.Operation == Operations.Gate
            ? line.Posts[line.Gates[row.Run].FromPost].Station + line.Gates[row.Run].Centres / 2
            : line.Posts[line.Runs[row.Run].FromPost].Station + line.Runs[row.Run].Level / 2;
        return (new() { Operation = row.Operation, Count = 1 }, PlaceAt(plan, row.Line, middle));
    }

    /// <summary>A post where the plan has it.</summary>
    public static PostDone AsPlanned(Plan plan, int line, int post)
    {
        var placed = plan.Basis.Lines[line].Posts[post];
        return At(plan, line, post, Length.FromNanometres(placed.StationNm)) with { Top = placed.Rise is { } rise ? new Length(rise.Fabric) : null };
    }

    /// <summary>A post that was set elsewhere along its line; its top is left to the plan.</summary>
    /// <param name="station">Level, from the start of the line.</param>
    public static PostDone At(Plan plan, int line, int post, Length station)
    {
        var (chain, now) = (plan.Basis.Lines[line].Site.Chain, plan.Lines[line].Posts[post]);
        var leg = chain.LegFrom(station.Nanometres);
        var (east, north) = chain.Point(station.Nanometres);
        return new()
        {
            Leg = leg.Leg?.Id ?? default,
            At = Length.FromNanometres(station.Nanometres - leg.StartNm),
            East = new(east),
            North = new(north),
            Number = now.Number,
            Line = now.Kind == PostKind.Line,
        };
    }

    /// <param name="station">Level, from the start of the line.</param>
    public static LogPlace PlaceAt(Plan plan, int line, Length station)
    {
        var leg = plan.Basis.Lines[line].Site.Chain.LegAt(station.Nanometres);
        return new() { Leg = leg.Leg?.Id ?? default, At = Length.FromNanometres(station.Nanometres - leg.StartNm), Called = plan.Lines[line].Name };
    }
}
