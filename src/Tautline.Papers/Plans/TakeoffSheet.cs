using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans;

/// <summary>The take-off of a plan on paper.</summary>
public static class TakeoffSheet
{
    private static readonly PaperColumn[] columns =
    [
        new("No.", ColumnAlign.End), new("Part"), new("Size"), new("Net", ColumnAlign.End), new("Buy", ColumnAlign.End),
        new("Weight", ColumnAlign.End), new("Remarks"),
    ];

    /// <summary>Everything on it is read off the plan; nothing is counted here.</summary>
    /// <param name="plan">A plan without errors.</param>
    /// <exception cref="ArgumentException">The plan has errors and therefore no take-off.</exception>
    public static PaperDocument Of(Plan plan, UnitSystem units, PaperFormat format)
    {
        if (plan.HasErrors) throw new ArgumentException("A plan with errors has no take-off to print.", nameof(plan));
        var words = new PlanWords(units);
        var sheet = new PaperSheet(Title(plan))
        {
            Head = [$"Job {plan.Job}", $"Rules {plan.Basis.Rules.Name}: {plan.Basis.Rules.Title}", .. plan.Specs.Select(s => $"Spec {s.Id}: {words.Made(s, plan)}."), .. plan.Lines.Select(l => Line(l, words))],
            Blocks =
            [
                new PaperTable("Take-off", columns, [.. plan.Takeoff.Select(t => Row(t, words))]),
                .. plan.Problems.Where(p => p.Severity != Severity.Note).Select(p => new PaperBlock.Words(Note(p, units))),
            ],
            Cautions = Cautions.All,
        };
        return new PaperDocument(Title(plan)) { Format = format, Sheets = [sheet], Footer = $"Plan hash {PlanFile.Hash(plan)}" };
    }

    private static string Title(Plan plan)
    {
        var name = plan.Basis.Job.Name;
        return $"{(name.Length > 0 ? name : plan.Job.ToString())}: take-off";
    }

    private static string Line(LinePlan line, PlanWords words)
        => $"Line {(line.Name.Length > 0 ? line.Name : line.Id.ToString())}: {words.Long(line.Level)} level, {words.Long(line.Along)} along the ground, "
           + $"{(line.Closed ? "closed" : "open")}.";

    private static string[] Row(Engine.Takeoff.TakeoffLine line, PlanWords words) =>
    [
        $"{line.Number}", line.Name, words.Size(line), words.Net(line), PlanWords.Purchase(line),
        line.Mass is { } mass ? words.Mass(mass) : "", words.Remarks(line),
    ];

    private static string Note(Problem problem, UnitSystem units)
        => $"{problem.Severity}: {ProblemText.Message(problem, units)} {ProblemText.Hint(problem, units)}";
}
