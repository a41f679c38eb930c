using Tautline.Engine.Plans;
using Tautline.Engine.Reasons;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans.Office;

/// <summary>One figure or several, worked out on paper so that a reviewer follows with a pencil: formula, numbers put in, sources, and what those rest on in turn.</summary>
public static class CalculationPaper
{
    /// <summary>More figures than this make no sheet anyone reads.</summary>
    public const int MostFigures = 60;

    /// <param name="facts">What is asked first; the facts their numbers rest on follow, each once.</param>
    public static PaperDocument Of(Plan plan, IReadOnlyList<FactKey> facts, PaperChoice choice)
    {
        var say = new PaperSay(choice);
        List<PaperBlock> blocks = [];
        Queue<FactKey> open = new(facts);
        HashSet<FactKey> told = [.. facts];
        int figures = 0;
        while (open.TryDequeue(out FactKey fact) && figures < MostFigures)
        {
            if (WhyAnswer.Of(plan, fact, choice.Units) is not { } why) continue;
            figures++;
            blocks.AddRange(Blocks(why, say));
            foreach (FactKey next in why.Rows.SelectMany(r => r.Asks.Take(3)).Where(told.Add)) open.Enqueue(next);
        }

        if (open.Count > 0) blocks.Add(new PaperBlock.Words(choice.Say.Say("paper.calculation.more", ("n", open.Count)), true));
        var sheet = new PaperSheet(say["paper.calculation"]) { Head = [PaperSay.Job(plan)], Blocks = blocks, Cautions = say.Cautions(3, 4) };
        return new(choice.Say.Say("paper.calculation.title", ("job", PaperSay.Job(plan)))) { Words = choice.Words, Format = choice.Format, Sheets = [sheet], Footer = choice.Say.Say("paper.footer", ("hash", PlanFile.Hash(plan)[..16])) };
    }

    /// <summary>One answer: names of figures and sources are the calculation's own, in English.</summary>
    internal static IEnumerable<PaperBlock> Blocks(WhyAnswer why, PaperSay say)
    {
        yield return new PaperBlock.Heading($"{why.Title} = {why.Result}");
        if (why.Symbols.Length > 0)
        {
            yield return new PaperBlock.Words($"= {why.Symbols}");
            yield return new PaperBlock.Words($"= {why.Numbers}");
            yield return new PaperBlock.Words($"= {why.Result}", true);
            foreach (string legend in why.Legend) yield return new PaperBlock.Words($"({legend})");
        }

        if (why.Rows.Count > 0)
            yield return new PaperTable(
                "", [new(say["paper.calculation.number"]), new(say["paper.calculation.value"], ColumnAlign.End), new(say["paper.calculation.from"])],
                [.. why.Rows.Select(r => (IReadOnlyList<string>)[r.Name, r.Value, r.Asks.Count > 0 ? say["paper.calculation.worked"] : r.Source.Length > 0 ? r.Source : say["paper.calculation.job"]])]);
        if (why.LeftOut > 0) yield return new PaperBlock.Words(say.Say.Say("paper.calculation.more", ("n", why.LeftOut)));
    }
}
