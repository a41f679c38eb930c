using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
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

    /// <summary>What is built holds the fit only where some of it stands otherwise than the fit without it has it: else the fit is that one, to the last digit.</summary>
    private static SetLine OverGround(SiteLine line, Rules rules, ProblemList problems)
    {
        if (!line.Pins.Any(p => p.Built)) return Fitted(line, rules, problems);
        var own = new ProblemList();
        var free = Fitted(line with { Pins = [.. line.Pins.Where(p => !p.Built)] }, rules, own);
        if (!StandsAsPlanned(line, free)) return Fitted(line, rules, problems);
        problems.AddRange(own);
        return free with { Laid = free.Laid with { Terminals = free.Laid.Terminals with { Site = free.Site with { Pins = line.Pins } } } };
    }

    private static bool StandsAsPlanned(SiteLine line, SetLine planned)
        => line.Pins.Where(p => p.Built).All(pin => planned.Posts.Any(post =>
            Math.Abs(post.StationNm - pin.StationNm) <= BuiltFacts.SameStation.Nanometres
            && (pin.Top is not { } top || Math.Abs(post.Rise!.Value.Fabric - top.Metres) <= BuiltFacts.SameTop.Metres)));

    private static SetLine Fitted(SiteLine line, Rules rules, ProblemList problems)
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
