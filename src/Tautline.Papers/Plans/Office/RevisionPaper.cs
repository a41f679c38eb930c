using Tautline.Engine.Catalog;
using Tautline.Engine.Comparison;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Office;

/// <summary>What has changed from one revision of a job to the next: the figures of the job, and every take-off line that differs.</summary>
public static class RevisionPaper
{
    /// <exception cref="ArgumentException">One of the plans has errors.</exception>
    public static PaperDocument Of(Plan before, Plan after, PaperChoice choice)
    {
        if (before.HasErrors || after.HasErrors) throw new ArgumentException("A plan with errors cannot be compared.", nameof(after));
        var say = new PaperSay(choice);
        RuleComparison compared = RuleComparison.ComparePlans(before, after);
        var sheet = new PaperSheet(say["paper.revision"])
        {
            Head = [$"A: {PaperSay.Job(before)}, {PlanFile.Hash(before)[..12]}", $"B: {PaperSay.Job(after)}, {PlanFile.Hash(after)[..12]}"],
            Blocks =
            [
                new PaperTable(
                    say["paper.revision.figures"], [new(say["paper.what"]), new("A", ColumnAlign.End), new("B", ColumnAlign.End), new(say["paper.revision.change"], ColumnAlign.End)],
                    [.. Totals(before, after, say).Concat(compared.Figures.Where(f => f.Differs).Select(f => Row(f, say)))]),
                new PaperTable(
                    say["paper.revision.takeoff"],
                    [new(say["paper.part"]), new(say["paper.size"]), new("A", ColumnAlign.End), new("B", ColumnAlign.End), new(say["paper.revision.change"], ColumnAlign.End), new(say["paper.revision.buyA"], ColumnAlign.End), new(say["paper.revision.buyB"], ColumnAlign.End)],
                    [.. compared.Takeoff.Select(d => Row(d, say))]),
            ],
            Cautions = say.Cautions(4),
        };
        return new(choice.Say.Say("paper.revision.title", ("job", PaperSay.Job(after)))) { Words = choice.Words, Format = choice.Format, Sheets = [sheet], Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(after)[..16])) };
    }

    private static IEnumerable<IReadOnlyList<string>> Totals(Plan before, Plan after, PaperSay say)
    {
        (PlanTotals a, PlanTotals b) = (PlanTotals.Of(before), PlanTotals.Of(after));
        if (a.Fence != b.Fence) yield return [say["paper.job.fence"], say.Words.Long(a.Fence), say.Words.Long(b.Fence), Signed(b.Fence.Metres - a.Fence.Metres, m => say.Words.Long(new Length(m)))];
        if (a.Gates != b.Gates) yield return [say["paper.job.gates"], PaperSay.Number(a.Gates), PaperSay.Number(b.Gates), Signed(b.Gates - a.Gates, n => PaperSay.Number(n))];
    }

    private static IReadOnlyList<string> Row(FigureDifference figure, PaperSay say)
    {
        string Show(double value) => figure.Unit == Unit.Length ? say.Words.Long(new Length(value)) : figure.Unit == Unit.Volume ? say.Volume(new Volume(value)) : PaperSay.Number(value);
        return [say["figure." + figure.Figure], Show(figure.A), Show(figure.B), Signed(figure.B - figure.A, Show)];
    }

    private static IReadOnlyList<string> Row(TakeoffDifference change, PaperSay say)
    {
        TakeoffLine item = change.Item;
        double a = change.A?.Net ?? 0, b = change.B?.Net ?? 0;
        return [say.Part(item.Part, item.Name), say.Size(item), change.A is null ? "–" : say.Net(change.A), change.B is null ? "–" : say.Net(change.B), Signed(b - a, n => say.Amount(item, n)), change.A is null ? "–" : say.Purchase(change.A), change.B is null ? "–" : say.Purchase(change.B)];
    }

    private static string Signed(double change, Func<double, string> show) => Math.Abs(change) < 1e-9 ? "=" : (change > 0 ? "+" : "−") + show(Math.Abs(change));
}
