using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>What is looked at before anybody says 'done': the tolerance, where it comes from, and room to sign.</summary>
internal static class CheckSheet
{
    private static readonly (string Words, string Rule)[] limits =
    [
        ("paper.check.bay", "bay.max"), ("paper.check.holeDepth", "hole.depth"), ("paper.check.plumb", "post.plumb"), ("paper.check.gapLeast", "gap.min"), ("paper.check.gapMost", "gap.max"),
        ("paper.check.bands", "band.max"), ("paper.check.postTies", "tie.postMax"), ("paper.check.railTies", "tie.railMax"), ("paper.check.rings", "ring.max"),
        ("paper.check.squeeze", "mesh.squeezeMin"), ("paper.check.squeezeMost", "mesh.squeezeMax"), ("paper.check.cure", "cure.days"),
    ];

    public static PaperSheet Of(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        List<IReadOnlyList<string>> rows = [];
        foreach ((string words, string rule) in limits)
            if (desk.Plan.Basis.Rules.Find(rule) is { } limit) rows.Add([say[words], Value(say, limit), Source(say, limit), "", ""]);
        foreach (string words in (string[])["paper.check.caps", "paper.check.splices", "paper.check.coating", "paper.check.stubs", "paper.check.gates", "paper.check.ground"])
            rows.Add([say[words], "", say["paper.practice"], "", ""]);
        return desk.Sheet(say["paper.check"], "checks") with
        {
            Blocks =
            [
                new PaperTable(
                    "", [new(say["paper.check.item"]), new(say["paper.check.tolerance"], ColumnAlign.End), new(say["paper.check.source"]), new(say["paper.check.ok"], ColumnAlign.Tick), new(say["paper.check.remark"], ColumnAlign.Blank)], rows),
                new PaperBlock.Lines([say["paper.sign.crew"], say["paper.sign.inspector"], say["paper.sign.date"]]),
            ],
            Cautions = say.Cautions(1, 3, 4),
        };
    }

    private static string Value(PaperSay say, Limit limit) => limit.Unit == Unit.Length
        ? say.Words.Short(limit.Length) : limit.Key == "cure.days" ? say.Say.Count("paper.days", (int)limit.Value) : LimitText.Value(limit.Rule, limit.Value, say.Words.Units);

    private static string Source(PaperSay say, Limit limit) => limit.From.Verify ? say[limit.From.Confidence == Confidence.CommonPractice ? "paper.practice" : "paper.memory"] : SourceText.Text(limit.From);
}
