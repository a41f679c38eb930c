using Tautline.Documents.Words;
using Tautline.Engine.Plans;
using Tautline.Field.Inspecting;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Packet;

/// <summary>What is looked at before anybody says 'done', from the one list the phone shows too: the tolerance, where it comes from, and room to sign.</summary>
internal static class CheckSheet
{
    public static PaperSheet Of(PacketDesk desk)
    {
        PaperSay say = desk.Say;
        HashSet<string> wanted = Wanted(desk.Plan);
        return desk.Sheet(say["paper.check"], "checks") with
        {
            Blocks =
            [
                .. InspectionList.Of(desk.Plan.Basis.Rules).Where(i => wanted.Contains(i.Key)).GroupBy(i => i.Stage).Select(stage => Stage(say, stage.Key, stage)),
                new PaperBlock.Lines([say["paper.sign.crew"], say["paper.sign.inspector"], say["paper.sign.date"]]),
            ],
            Cautions = say.Cautions(1, 3, 4),
        };
    }

    /// <summary>Checks of what the job has: no rings where no wire is, no gates where there are none.</summary>
    private static HashSet<string> Wanted(Plan plan)
    {
        HashSet<string> keys = new(StringComparer.Ordinal);
        foreach ((int l, LinePlan line) in plan.Lines.Index())
        {
            for (int r = 0; r < line.Runs.Count; r++) keys.UnionWith(InspectionList.OfRun(plan, l, r).Select(i => i.Key));
            for (int g = 0; g < line.Gates.Count; g++) keys.UnionWith(InspectionList.OfGate(plan, l, g).Select(i => i.Key));
        }

        return keys;
    }

    private static PaperTable Stage(PaperSay say, InspectionStage stage, IEnumerable<CheckItem> items) => new(
        say["inspect.stage." + Inspection.Name(stage)],
        [new(say["paper.check.item"]), new(say["paper.check.tolerance"], ColumnAlign.End), new(say["paper.check.source"]), new(say["paper.check.ok"], ColumnAlign.Tick), new(say["paper.check.remark"], ColumnAlign.Blank)],
        [.. items.Select(i => (IReadOnlyList<string>)[Name(say, i), Tolerance(say, i), Source(say, i), "", ""])]);

    private static string Name(PaperSay say, CheckItem item) => say["inspect.check." + item.Key] + (item.Optional ? " " + say["inspect.optional"] : "");

    private static string Tolerance(PaperSay say, CheckItem item) => ToleranceText.Of(say.Say, item.Least?.Value, item.Most?.Value, item.Measure switch
    {
        CheckMeasure.Degrees => ToleranceText.Degrees,
        CheckMeasure.Days => days => say.Say.Count("paper.days", (int)Math.Ceiling(days)),
        _ => metres => ToleranceText.Length(say.Words, metres),
    }, item.FromPlan);

    private static string Source(PaperSay say, CheckItem item) => string.Join("; ", new[] { item.Least?.From, item.Most?.From, item.From }
        .Where(f => f is not null).Take(item.Least is null && item.Most is null ? 3 : 2).Select(f => ToleranceText.Source(say.Say, f!)).Distinct());
}
