using Tautline.Cli.Terminal;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Cli.Why;

/// <summary>The answer to 'why' for people.</summary>
internal static class WhyText
{
    public static string Write(Engine.Plans.Plan plan, FactKey key, UnitSystem units, Paper paper)
    {
        var answer = WhyAnswer.Of(plan, key, units)!;
        paper.Heading($"{answer.Title} = {answer.Result}");
        if (answer.Symbols.Length > 0) Formula(answer, paper);
        From(plan, answer, paper);
        return paper.ToString();
    }

    private static void Formula(WhyAnswer answer, Paper paper)
    {
        paper.Labelled([(FactNames.Of(answer.Fact.Kind), $"= {answer.Symbols}"), ("", $"= {answer.Numbers}"), ("", $"= {answer.Result}")]);
        foreach (var words in answer.Legend) paper.Line($"  ({words})");
    }

    private static void From(Engine.Plans.Plan plan, WhyAnswer answer, Paper paper)
    {
        if (answer.Rows.Count == 0) return;
        paper.Heading("Where the numbers come from");
        paper.Table(["number", ">value", "from"], answer.Rows.Select(r => (IReadOnlyList<string>)[r.Name, r.Value, Source(plan, r)]));
        if (answer.LeftOut > 0) paper.Line($"  and {answer.LeftOut} more values of the same kinds");
        if (answer.Rows.Any(r => r.Asks.Count > 0)) paper.Line("  'ask' names the fact to ask next.");
    }

    private static string Source(Engine.Plans.Plan plan, WhyRow row) => row.Asks.Count switch
    {
        0 => row.Source.Length > 0 ? row.Source : "the job, or the layout made from it",
        1 => $"ask {FactText.Format(plan, row.Asks[0])}",
        2 => $"ask {FactText.Format(plan, row.Asks[0])}, {FactText.Format(plan, row.Asks[1])}",
        var many => $"ask {FactText.Format(plan, row.Asks[0])} to {FactText.Format(plan, row.Asks[^1])}, {many} of them",
    };
}
