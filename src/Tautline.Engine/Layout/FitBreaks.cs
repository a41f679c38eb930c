using Tautline.Engine.Layout.Fit;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Layout;

/// <summary>Finds the line posts of a fitted line that have to become terminals.</summary>
internal static class FitBreaks
{
    private const double Step = 1e-6;
    private const double SlopeNoise = 1e-6;

    public static List<long> Of(SetLine line)
    {
        if (line.Site.Line.Fit?.Mode == "stepped") return [.. line.Pieces.SelectMany(Steps)];
        return line.Site.Line.Fit?.BreakPosts == "no" ? [] : [.. line.Pieces.SelectMany(p => Bends(p).Select(i => Place(line, p, i)))];
    }

    /// <summary>
    /// The terminal stands on the break itself: on the corner of the ground that is furthest from straight between the neighbouring posts. Where
    /// that is too near to another terminal or in a no-dig stretch it stands where the line post stood.
    /// </summary>
    private static long Place(SetLine line, FitPiece piece, int post)
    {
        var ground = line.Site.Chain.Ground!;
        var (from, to) = (piece.Stations[post - 1], piece.Stations[post + 1]);
        var (low, high) = (ground.HeightAt(from), ground.HeightAt(to));
        var (best, furthest) = (piece.Stations[post], 0.0);
        foreach (var vertex in ground.Within(from, to))
        {
            var station = new Length(vertex.Station).Nanometres;
            var off = Math.Abs(vertex.Height - (low + (high - low) * ((station - from) / (double)(to - from))));
            if (off > furthest && IsClear(line, station)) (best, furthest) = (station, off);
        }
        return best;
    }

    private static bool IsClear(SetLine line, long station)
    {
        var least = line.Laid.Terminals.Site.Chain.LegAt(station).Spec.Rules.BayMin.Length.Nanometres;
        return line.Laid.Terminals.Terminals.All(t => Math.Abs(t.StationNm - station) >= least) && line.Site.Chain.LevelNm - station >= least
            && line.Site.ZonesAround.All(z => !z.Reaches(station, least / 2));
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
    private static IEnumerable<int> Bends(FitPiece piece)
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
                yield return i;
    }

    /// <summary>Whether something deep lies within two bays of a post.</summary>
    private static bool Near(FitPiece piece, int post, List<Misfit> deep)
    {
        var from = piece.Input.Posts[Math.Max(0, post - 2)].Station;
        var to = piece.Input.Posts[Math.Min(piece.Stations.Count - 1, post + 2)].Station;
        return deep.Any(m => m.To >= from && m.From <= to);
    }
}
