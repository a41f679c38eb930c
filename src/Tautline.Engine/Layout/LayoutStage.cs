using Tautline.Engine.Catalog;
using Tautline.Engine.Problems;
using Tautline.Engine.Site;

namespace Tautline.Engine.Layout;

/// <summary>
/// Lays out every line: terminals, the bays between them, a post at every mark, and over measured ground the top line. Where the top line breaks
/// so sharply that fabric does not roll over it a terminal is put there and the line is laid anew. Terminals are only added, so that ends.
/// </summary>
public static class LayoutStage
{
    private const int MostRounds = 12;

    public static IReadOnlyList<SetLine> Lay(IReadOnlyList<SiteLine> lines, Rules rules, ProblemList problems)
        => [.. lines.Select(l => l.Chain.Ground is null ? Once(l, rules, problems) : OverGround(l, rules, problems))];

    private static SetLine Once(SiteLine line, Rules rules, ProblemList problems)
        => PostStage.Set(BayStage.Divide(TerminalStage.Place(line, rules, problems), rules, problems), rules);

    private static SetLine OverGround(SiteLine line, Rules rules, ProblemList problems)
    {
        for (var round = 1; ; round++)
        {
            var own = new ProblemList();
            var set = FitStage.Fit(Once(line, rules, own));
            var breaks = round < MostRounds ? FitBreaks.Of(set) : [];
            if (breaks.Count == 0)
            {
                problems.AddRange(own);
                FitReports.Tell(set, problems);
                return set;
            }
            line = line with { Breaks = [.. line.Breaks, .. breaks] };
        }
    }
}
