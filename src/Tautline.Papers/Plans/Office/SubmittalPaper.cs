using Tautline.Engine.Catalog;
using Tautline.Engine.Plans;
using Tautline.Engine.Takeoff;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Office;

/// <summary>What is specified, item by item, for approval before anything is ordered, and the limits it is built by with their sources.</summary>
public static class SubmittalPaper
{
    /// <exception cref="ArgumentException">The plan has errors and therefore no items.</exception>
    public static PaperDocument Of(Plan plan, PaperChoice choice)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors has no items to submit.", nameof(plan));
        var say = new PaperSay(choice);
        PaperColumn blank(string key) => new(say[key], ColumnAlign.Blank);
        var sheet = new PaperSheet(say["paper.submittal"])
        {
            Head = [PaperSay.Job(plan)],
            Blocks =
            [
                new PaperBlock.Heading(say["paper.job.spec"]),
                .. plan.Specs.Select(s => new PaperBlock.Words(say.Made(s, plan), Mark: s.Id.Value)),
                new PaperTable(
                    say["paper.submittal.items"],
                    [new(say["paper.no"], ColumnAlign.End), new(say["paper.part"]), new(say["paper.size"]), blank("paper.submittal.maker"), blank("paper.submittal.certificate"), new(say["paper.submittal.approved"], ColumnAlign.Tick)],
                    [.. Items(plan, say).Select((row, i) => (IReadOnlyList<string>)[$"{i + 1}", row.Part, row.Size, "", "", ""])]),
                new PaperTable(
                    say["paper.submittal.limits"], [new(say["paper.check.item"]), new(say["paper.check.tolerance"], ColumnAlign.End), new(say["paper.check.source"])],
                    [.. plan.Basis.Rules.All.Select(l => (IReadOnlyList<string>)[$"{l.Key}: {l.Rule.Meaning}", LimitText.Value(l.Rule, l.Value, choice.Units), SourceText.Text(l.From)])]),
                new PaperBlock.Lines([say["paper.submittal.by"], say["paper.submittal.reviewed"], say["paper.sign.date"]]),
            ],
            Cautions = say.Cautions(3, 4),
        };
        return new(choice.Say.Say("paper.submittal.title", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = [sheet], Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(plan)[..16])) };
    }

    /// <summary>Each part once, whatever lengths it is bought in.</summary>
    private static IEnumerable<(string Part, string Size)> Items(Plan plan, PaperSay say)
        => plan.Takeoff.Where(t => t.PurchaseUnit != PurchaseUnit.AsMeasured)
            .Select(t => (say.Part(t.Part, t.Name), say.Size(t.Part == "post" ? t with { Size = null } : t))).Distinct();
}
