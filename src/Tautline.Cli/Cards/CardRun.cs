using Tautline.Cli.Terminal;
using Tautline.Engine.Fabric;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Cli.Cards;

internal static class CardRun
{
    private readonly record struct End(int Line, int Run, int Side, string Toward);

    public static ExitCode Run(CardOptions options, CliHost host)
    {
        var planned = Planning.Run(options.Planning, host);
        if (planned.Exit != ExitCode.Fine)
        {
            Messages.Show(host, planned.Findings);
            return planned.Exit;
        }
        Messages.Show(host, planned.FieldFindings);
        var ends = Ends(planned.Plan!, options).ToList();
        if (ends.Count == 0) return NoEnd(planned.Plan!, options, host);
        var paper = Paper.For(host);
        var exit = ExitCode.Fine;
        foreach (var end in ends)
            if (!Cut(planned, end, options, paper, host)) exit = ExitCode.Problems;
        if (options.Top is null) Stack(planned.Plan!, options, paper);
        paper.Heading("Caution");
        paper.Line(Cautions.Tension);
        host.Output.Write(paper.ToString());
        return planned.After(exit);
    }

    private static IEnumerable<End> Ends(Engine.Plans.Plan plan, CardOptions options)
    {
        bool Is(string wanted, int line, int post) => PlanWords.Mark(line, plan.Lines[line].Posts[post]).Equals(wanted, StringComparison.OrdinalIgnoreCase);
        for (var line = 0; line < plan.Lines.Count; line++)
            for (var r = 0; r < plan.Lines[line].Runs.Count; r++)
            {
                var run = plan.Lines[line].Runs[r];
                foreach (var (here, other, side) in new[] { (run.FromPost, run.ToPost, 0), (run.ToPost, run.FromPost, 1) })
                    if (Is(options.Post, line, here) && (options.Toward is null || Is(options.Toward, line, other)))
                        yield return new End(line, r, side, PlanWords.Mark(line, plan.Lines[line].Posts[other]));
            }
    }

    private static ExitCode NoEnd(Engine.Plans.Plan plan, CardOptions options, CliHost host)
    {
        var marks = plan.Lines.SelectMany((l, i) => l.Runs.SelectMany(r => new[] { r.FromPost, r.ToPost }).Distinct().Order().Select(p => PlanWords.Mark(i, l.Posts[p])));
        var toward = options.Toward is null ? "" : $" toward '{options.Toward}'";
        Messages.Error(host, $"No fabric ends at a post '{options.Post}'{toward}.", $"Terminals with fabric are {string.Join(", ", marks.Distinct().Take(40))}.");
        return ExitCode.Problems;
    }

    private static bool Cut(Planned planned, End end, CardOptions options, Paper paper, CliHost host)
    {
        var (plan, words) = (planned.Plan!, new PlanWords(planned.Units));
        paper.Heading($"Cut at {options.Post.ToUpperInvariant()}, fabric toward {end.Toward}");
        if (options is not { Top: { } top, Bottom: { } bottom })
        {
            paper.Line($"  {HangWords.Ahead(plan.Lines[end.Line].Runs[end.Run], end.Side == 0, ", and give them with --top and --bottom")}");
            Card(HangCards.Cut(plan, end.Line, end.Run, end.Side), words, paper);
            if (HangCards.OffcutTo(plan, end.Line, end.Run, end.Side) is { } fits) paper.Line($"  {Fits(plan, fits)}");
            return true;
        }
        var measured = HangCards.Measured(plan, end.Line, end.Run, end.Side, top, bottom);
        foreach (var problem in measured.Problems) Messages.Show(host, [Told(problem, planned.Units)]);
        if (measured.Value is not { } cut) return false;
        paper.Line($"Top and bottom differ by {words.Short(cut.Mismatch)}: {PlanWords.Range(cut.ColumnsLow, cut.ColumnsHigh)} pickets. Begin {PlanWords.Count(cut.StartAfter, "picket")} out from the marked one.");
        Card(HangCards.Measured(plan, end.Line, end.Run, cut), words, paper);
        return true;
    }

    private static string Fits(Engine.Plans.Plan plan, OffcutEnd end)
    {
        var line = plan.Lines[end.Line];
        var run = line.Runs[end.Run];
        var (here, there) = end.End == 0 ? (run.FromPost, run.ToPost) : (run.ToPost, run.FromPost);
        return $"The roll's side of this cut fits at {PlanWords.Mark(end.Line, line.Posts[here])}, toward {PlanWords.Mark(end.Line, line.Posts[there])}"
               + (end.Use == OffcutUse.TopForBottom ? ", turned top for bottom." : ": no second cut there.");
    }

    private static Finding Told(Problem problem, UnitSystem units)
        => new(problem.Severity, problem.Code.ToString(), problem.Place.Path, ProblemText.Message(problem, units), ProblemText.Hint(problem, units));

    private static void Card(CutCard card, PlanWords words, Paper paper)
    {
        foreach (var sentence in card.Words) paper.Line($"  {sentence}");
        if (card.Drawing.Count == 0 || card.Columns < 2) return;
        paper.Line($"  What falls off comes to {words.Short(card.Waste)} of fabric.");
        paper.Line();
        foreach (var row in card.Drawing) paper.Line($"    {row}");
    }

    private static void Stack(Engine.Plans.Plan plan, CardOptions options, Paper paper)
    {
        for (var line = 0; line < plan.Lines.Count; line++)
            for (var post = 0; post < plan.Lines[line].Posts.Count; post++)
                if (PlanWords.Mark(line, plan.Lines[line].Posts[post]).Equals(options.Post, StringComparison.OrdinalIgnoreCase) && HangCards.Stack(plan, line, post) is { } card)
                {
                    paper.Heading($"What slides on {options.Post.ToUpperInvariant()}, in this order; diamonds from the top of the fabric");
                    foreach (var (step, number) in HangWords.Stack(card).Select((s, i) => (s, i + 1))) paper.Line($"  {number}. {step}");
                }
    }
}
