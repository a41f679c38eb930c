using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>Where the posts of a line go: along the tape, and by coordinates.</summary>
internal static class StakeSheet
{
    public static PaperSheet Of(PacketDesk desk, int line)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        Dictionary<string, StakeRow>? given = desk.Choice.Stakes?.Rows.ToDictionary(r => r.Mark);
        bool high = planned.Posts.Any(p => p.GroundHeight is not null);
        List<PaperColumn> columns = [new(say["paper.post"]), new(say["paper.kind"]), new(say["paper.tape"], ColumnAlign.End), new(say["paper.northing"], ColumnAlign.End), new(say["paper.easting"], ColumnAlign.End)];
        if (high) columns.Add(new(say["paper.ground"], ColumnAlign.End));
        columns.AddRange([new(say["paper.topOver"], ColumnAlign.End), new(say["paper.staked"], ColumnAlign.Tick)]);
        return desk.Sheet(say.Say.Say("paper.stakes", ("line", say.Line(planned))), $"stakes {planned.Id}") with
        {
            Blocks =
            [
                new PaperBlock.Words(say[desk.Choice.Stakes is null ? "paper.stakes.own" : "paper.stakes.grid"]
                    .Replace("{unit}", desk.Choice.Stakes?.Unit ?? "", StringComparison.Ordinal).Replace("{system}", desk.Choice.Stakes?.System ?? "", StringComparison.Ordinal)),
                new PaperTable("", columns, [.. planned.Posts.Select((p, i) => Row(desk, line, i, given, high))]),
            ],
            Cautions = say.Cautions(0),
        };
    }

    private static IReadOnlyList<string> Row(PacketDesk desk, int line, int index, Dictionary<string, StakeRow>? given, bool high)
    {
        (PaperSay say, PostPlan post) = (desk.Say, desk.Plan.Lines[line].Posts[index]);
        string mark = desk.Mark(line, index);
        double per = desk.Choice.Units == UnitSystem.Metric ? 1 : Length.FromFeet(1).Metres;
        StakeRow? stake = given?.GetValueOrDefault(mark);
        string north = PaperSay.Number(stake?.Northing ?? (post.North.Metres / per), "0.00"), east = PaperSay.Number(stake?.Easting ?? (post.East.Metres / per), "0.00");
        double? ground = stake?.Elevation ?? (post.GroundHeight?.Metres / per);
        List<string> row = [mark, say.ShortKind(post.Kind), say.Words.Station(post.Station), north, east];
        if (high) row.Add(ground is { } height ? PaperSay.Number(height, "0.00") : "");
        return [.. row, say.Words.Short(post.AboveGround), ""];
    }
}
