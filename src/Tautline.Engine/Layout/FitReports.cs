using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Layout;

/// <summary>Tells what a fit over the ground could not keep and what it leaves to be done.</summary>
internal static class FitReports
{
    private const int MostTold = 20;

    public static void Tell(SetLine line, ProblemList problems)
    {
        TellGap(line, problems);
        foreach (var piece in line.Pieces)
        {
            foreach (var broken in piece.Fitted.Violations.OrderByDescending(v => v.Amount).Take(MostTold)) Tell(line, broken, problems);
            if (!piece.Fitted.Certificate.Sound) problems.Add(ProblemCode.FitUnsound, TerminalStage.At(line.Site, piece.Stations[0]));
        }
        TellGrading(line, problems);
        foreach (var station in line.Site.Breaks.Order()) TellBreak(line, station, problems);
    }

    private static void TellGap(SetLine line, ProblemList problems)
    {
        if (line.Site.Line.Fit?.Gap is not { } asked || line.Pieces.Count == 0) return;
        var limits = line.Pieces[0].Input.Limits;
        if (asked.Metres < limits.LeastGap - 1e-9 || asked.Metres > limits.MostGap + 1e-9)
            problems.Add(ProblemCode.FitGap, new("", line.Site.Line.Id), asked, new Length(limits.LeastGap), new Length(limits.MostGap));
    }

    private static void Tell(SetLine line, FitViolation broken, ProblemList problems)
    {
        var place = TerminalStage.At(line.Site, Length.FromMetres(broken.Station).Nanometres);
        if (broken.Limit is FitLimit.Bend or FitLimit.Rake) problems.Add(ProblemCode.FitSlope, place, Name(broken.Limit), broken.Amount * 100);
        else problems.Add(ProblemCode.FitBroken, place, Name(broken.Limit), new Length(broken.Amount));
    }

    private static string Name(FitLimit limit) => limit switch
    {
        FitLimit.LeastGap => "the least gap under the fabric",
        FitLimit.MostGap => "the largest gap under the fabric",
        FitLimit.Bend => "the bend fabric rolls over",
        FitLimit.Rake => "the greatest rake",
        FitLimit.PostLength => "the length of its post",
        _ => "a settled top",
    };

    private static void TellGrading(SetLine line, ProblemList problems)
    {
        var all = line.Pieces.SelectMany(p => p.Fitted.Misfits).ToList();
        if (all.Count == 0) return;
        var deepest = all.MaxBy(m => m.Deepest)!;
        problems.Add(
            ProblemCode.GradingWanted, TerminalStage.At(line.Site, Length.FromMetres(deepest.From).Nanometres), all.Count, new Length(deepest.Deepest),
            new Length(all.Sum(m => m.To - m.From)));
    }

    private static void TellBreak(SetLine line, long station, ProblemList problems)
        => problems.Add(line.Site.Line.Fit?.Mode == "stepped" ? ProblemCode.StepTerminal : ProblemCode.GroundBreakTerminal, TerminalStage.At(line.Site, station));
}
