using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;
using Tautline.Engine.Takeoff;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Office;

/// <summary>The take-off in the paper's language, and behind it why each figure is what it is.</summary>
public static class TakeoffPaper
{
    /// <param name="reasons">With the formula of every line, the numbers put in and their sources.</param>
    /// <exception cref="ArgumentException">The plan has errors and therefore no take-off.</exception>
    public static PaperDocument Of(Plan plan, PaperChoice choice, bool reasons)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors has no take-off to print.", nameof(plan));
        var say = new PaperSay(choice);
        var sheet = new PaperSheet(say["paper.takeoff"])
        {
            Head = [.. plan.Specs.Select(s => $"{s.Id}: {say.Made(s, plan)}"), .. plan.Lines.Select(l => Line(l, say))],
            Blocks =
            [
                new PaperTable(
                    "", [new(say["paper.no"], ColumnAlign.End), new(say["paper.part"]), new(say["paper.size"]), new(say["paper.net"], ColumnAlign.End), new(say["paper.buy"], ColumnAlign.End), new(say["paper.weight"], ColumnAlign.End), new(say["paper.remarks"])],
                    [.. plan.Takeoff.Select(t => (IReadOnlyList<string>)[$"{t.Number}", say.Part(t.Part, t.Name), say.Size(t), say.Net(t), say.Purchase(t), t.Mass is { } mass ? say.Words.Mass(mass) : "", say.Remarks(t)])]),
                .. reasons ? [new PaperBlock.NewPage(), new PaperBlock.Words(say["paper.takeoff.why"]), .. plan.Takeoff.SelectMany(t => Why(plan, t, choice, say))] : Array.Empty<PaperBlock>(),
            ],
            Cautions = say.Cautions(3, 4),
        };
        return new(choice.Say.Say("paper.takeoff.title", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = [sheet], Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(plan)[..16])) };
    }

    private static string Line(LinePlan line, PaperSay say)
        => say.Say.Say(line.Closed ? "paper.takeoff.closed" : "paper.takeoff.open", ("line", say.Line(line)), ("level", say.Words.Long(line.Level)), ("along", say.Words.Long(line.Along)));

    private static IEnumerable<PaperBlock> Why(Plan plan, TakeoffLine line, PaperChoice choice, PaperSay say)
    {
        yield return new PaperBlock.Heading($"{line.Number}. {say.Part(line.Part, line.Name)} {say.Size(line)}");
        foreach (FactKind kind in (FactKind[])[FactKind.Net, FactKind.Purchase])
            if (WhyAnswer.Of(plan, new FactKey(kind, line.Number - 1), choice.Units) is { } why)
                foreach (PaperBlock block in CalculationPaper.Blocks(why, say)) yield return block;
    }
}
