using Tautline.Engine.Layout.Fit;

namespace Tautline.Engine.Layout;

/// <summary>Finds the line posts of a fitted line that have to become terminals.</summary>
internal static class FitBreaks
{
    private const double Step = 1e-6;
    private const double SlopeNoise = 1e-6;

    public static List<long> Of(SetLine line)
    {
        if (line.Site.Line.Fit?.Mode == "stepped") return [.. line.Pieces.SelectMany(Steps)];
        return line.Site.Line.Fit?.BreakPosts == "no" ? [] : [.. line.Pieces.SelectMany(Bends)];
    }

    /// <summary>Where one level bay ends lower or higher than the next begins, fabric ends.</summary>
    private static IEnumerable<long> Steps(FitPiece piece)
    {
        var bays = piece.Fitted.Bays;
        for (var i = 1; i < bays.Count; i++)
            if (!piece.Input.Posts[i].Terminal && Math.Abs(bays[i].TopFrom - bays[i - 1].TopTo) > Step) yield return piece.Stations[i];
    }

    /// <summary>
    /// A terminal is worth its price where the ground would have to be graded deeper than the rule says, and where the rail, were it free
    /// to bend, would bend by more than the fabric rolls over. Of neighbours that would both, the sharper one is taken first.
    /// </summary>
    private static IEnumerable<long> Bends(FitPiece piece)
    {
        var over = piece.Spec.Rules.GradingBreakOver.Value;
        var deep = piece.Fitted.Misfits.Where(m => m.Deepest > over).ToList();
        if (deep.Count == 0) yield break;
        var free = GroundFit.Fit(piece.Input with { Limits = piece.Input.Limits with { GreatestBend = 2 * piece.Input.Limits.GreatestRake } });
        var bends = new double[piece.Stations.Count];
        for (var i = 1; i + 1 < bends.Length; i++)
            if (!piece.Input.Posts[i].Terminal) bends[i] = Math.Abs(free.Bays[i].Slope - free.Bays[i - 1].Slope);
        for (var i = 1; i + 1 < bends.Length; i++)
            if (bends[i] > piece.Input.Limits.GreatestBend + SlopeNoise && bends[i] >= bends[i - 1] && bends[i] > bends[i + 1] && Near(piece, i, deep))
                yield return piece.Stations[i];
    }

    /// <summary>Whether something deep lies within two bays of a post.</summary>
    private static bool Near(FitPiece piece, int post, List<Misfit> deep)
    {
        var from = piece.Input.Posts[Math.Max(0, post - 2)].Station;
        var to = piece.Input.Posts[Math.Min(piece.Stations.Count - 1, post + 2)].Station;
        return deep.Any(m => m.To >= from && m.From <= to);
    }
}
