using Tautline.Documents.Scenes;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>Holes and posts of a line: each kind of hole drawn, then every post.</summary>
internal static class PostSheet
{
    private const int MostFootings = 6;

    public static PaperSheet Of(PacketDesk desk, int line)
    {
        (PaperSay say, LinePlan planned) = (desk.Say, desk.Plan.Lines[line]);
        List<List<PostPlan>> kinds = [.. planned.Posts.Where(p => p.Support != Support.Standing)
            .GroupBy(p => (p.Section, p.Support, p.HoleDiameter, p.HoleDepth)).Select(g => g.ToList()).OrderByDescending(g => g.Count)];
        return desk.Sheet(say.Say.Say("paper.posts", ("line", say.Line(planned))), $"posts {planned.Id}") with
        {
            Blocks =
            [
                .. Footings(desk, kinds),
                new PaperTable(
                    say["paper.posts.sums"],
                    [new(say["paper.count"], ColumnAlign.End), new(say["paper.section"]), new(say["paper.hole"], ColumnAlign.End), new(say["paper.order"], ColumnAlign.End), new(say["paper.concreteEach"], ColumnAlign.End), new(say["paper.bagsEach"], ColumnAlign.End)],
                    [.. planned.Posts.Where(p => p.Support != Support.Standing).GroupBy(p => (p.Section, Held: say.Held(p), Order: say.Words.Long(p.OrderLength), Concrete: say.Volume(p.Concrete), p.Bags))
                        .OrderByDescending(g => g.Count()).Select(g => (IReadOnlyList<string>)[PaperSay.Number(g.Count()), g.Key.Section, g.Key.Held, g.Key.Order, g.Key.Concrete, PaperSay.Number(g.Key.Bags)])]),
                new PaperTable(
                    say["paper.posts.all"],
                    [
                        new(say["paper.post"]), new(say["paper.kind"]), new(say["paper.section"]), new(say["paper.hole"], ColumnAlign.End), new(say["paper.cut"], ColumnAlign.End), new(say["paper.order"], ColumnAlign.End),
                        new(say["paper.bags"], ColumnAlign.End), new(say["paper.dug"], ColumnAlign.Tick), new(say["paper.poured"], ColumnAlign.Tick),
                    ],
                    [.. planned.Posts.Select((p, i) => (IReadOnlyList<string>)[
                        desk.Mark(line, i), say.ShortKind(p.Kind), p.Section, say.Held(p), p.Support == Support.Standing ? "" : say.Words.Long(p.CutLength),
                        p.Support == Support.Standing ? "" : say.Words.Long(p.OrderLength), p.Bags > 0 ? PaperSay.Number(p.Bags) : "", "", ""])]),
            ],
            Cautions = say.Cautions(0),
        };
    }

    /// <summary>Two drawings side by side would need a page of columns: one scene holds them all.</summary>
    private static IEnumerable<PaperBlock> Footings(PacketDesk desk, List<List<PostPlan>> kinds)
    {
        double room = desk.Choice.Format.RoomWidth;
        int across = Math.Max(1, Math.Min(3, (int)(room / 165)));
        List<List<PostPlan>> drawn = [.. kinds.Take(MostFootings)];
        for (int at = 0; at < drawn.Count; at += across)
            yield return new PaperBlock.Drawing(SideBySide.Of(
                [.. drawn.Skip(at).Take(across).Select(k => FootingDrawing.Of(desk.Plan, k[0], room / across, 170, desk.Say.Words, desk.Choice.Say))], []),
                at == 0 ? desk.Say["paper.posts.holes"] : "");
    }
}
