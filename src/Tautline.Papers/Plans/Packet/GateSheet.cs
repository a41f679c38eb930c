using Tautline.Documents.Scenes;
using Tautline.Engine.Plans;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>One gate.</summary>
internal static class GateSheet
{
    public static PaperSheet Of(PacketDesk desk, int line, int index)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        GatePlan gate = planned.Gates[index];
        string named = say["gate." + gate.Kind.ToString().ToLowerInvariant()], kind = char.ToUpperInvariant(named[0]) + named[1..];
        List<(string, string)> facts =
        [
            (say["paper.gate.opening"], say.Words.Long(gate.Opening)), (say["paper.gate.centres"], say.Words.Long(gate.Centres)),
            (say["paper.gate.leaf"], gate.Leaves > 1 ? $"{gate.Leaves} × {say.Words.Long(gate.Leaf)}" : say.Words.Long(gate.Leaf)), (say["paper.gate.nearFace"], say.Words.Station(gate.NearFace)),
            (say["paper.gate.posts"], $"{desk.Mark(line, gate.FromPost)}, {desk.Mark(line, gate.ToPost)}: {gate.Post}"),
        ];
        if (gate.Track is { } track) facts.Add((say["paper.gate.track"], say.Words.Long(track)));
        if (gate.Tail is { } tail) facts.Add((say["paper.gate.tail"], say.Words.Long(tail)));
        if (gate.SecondRoller is { } roller) facts.Add((say["paper.gate.roller"], say.Words.Station(roller)));
        if (gate.LeafMass is { } mass) facts.Add((say["paper.gate.mass"], say.Words.Mass(mass)));
        double room = desk.Choice.Format.RoomWidth;
        return desk.Sheet(say.Say.Say("paper.gate", ("kind", kind), ("width", say.Words.Long(gate.Opening)), ("from", desk.Mark(line, gate.FromPost)), ("to", desk.Mark(line, gate.ToPost))), $"gate {gate.Id}", line) with
        {
            Blocks =
            [
                new PaperBlock.Drawing(GateDrawing.Of(desk.Plan, line, index, Math.Min(room, 620), 270, say.Words, desk.Choice.Say)),
                .. GateDrawing.Fittings(gate).Select((part, i) => new PaperBlock.Words(say.Part(part, part), Mark: $"{i + 1}.")),
                new PaperBlock.Facts(facts, 2),
                new PaperTable(
                    say["paper.gate.set"], [new(say["paper.what"]), new(say["paper.measured"], ColumnAlign.Blank), new("", ColumnAlign.Tick)],
                    [[say["paper.gate.check.opening"], "", ""], [say["paper.gate.check.plumb"], "", ""], [say["paper.gate.check.swing"], "", ""], [say["paper.gate.check.latch"], "", ""], [say["paper.gate.check.clear"], "", ""]]),
                new PaperBlock.Lines([say["paper.sign.crew"], say["paper.sign.date"]]),
            ],
            Cautions = say.Cautions(2, 0),
        };
    }
}
