using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>
/// What 'close' makes of a walk. Nobody's tape comes back to the inch: legs that end within 2 ft of the start and within
/// a hundredth of what was walked were all of them walked, and the last one is led to the start. (Two holes do not fit
/// into 2 ft, so no leg of a yard is lost.) Anything larger is a leg that was left for 'close' to make.
/// </summary>
internal static class TapeClosing
{
    private const double SlipPart = 100;

    private static readonly Length largestSlip = Length.FromFeet(2);

    /// <summary>Misclosures below this are the rounding of typed figures, and not told.</summary>
    internal static readonly Length Untold = Length.FromInches(1.0 / 64);

    /// <param name="within">The distance the book itself states for leading the last leg to the start.</param>
    public static void Close(TapeLine line, TapeBookState book, TapeCursor statement, Length? within)
    {
        var (gap, walked) = (line.End.To(line.Start), line.WalkedMetres);
        var onto = within is { } own ? gap <= own.Metres + 1e-9 : gap <= largestSlip.Metres + 1e-9 && gap * SlipPart <= walked;
        if (line.Legs.Count < (onto ? 3 : 2))
        {
            statement.Problem(TapeTexts.CloseFewLegs, 1, line.Legs.Count);
            return;
        }
        Tell(Outcome(gap, onto, within is not null), gap, walked, line, book, statement);
        var turned = line.Turn is null ? (Direction?)null : line.Facing;
        if (onto) line.LeadToStart();
        else line.WalkTo(line.Start, 0, false);
        CheckTurn(turned, onto ? line.Legs[0] : line.Legs[^1], onto, statement);
        CheckArcs(line, book, statement);
        if (onto && line.Legs[^1].LevelMetres < SiteStage.ShortestLeg.Metres)
            statement.Problem(TapeTexts.LegShort, 1, book.Show(line.Legs[^1].LevelMetres), book.Show(SiteStage.ShortestLeg.Metres));
    }

    /// <summary>Tells an arc that no longer reaches from end to end once they were moved.</summary>
    internal static void CheckArcs(TapeLine line, TapeBookState book, TapeCursor statement)
    {
        foreach (var (arc, chord) in line.Legs.Select(l => (l.Arc, l.From.To(l.To))))
            if (arc is not null && arc.DegreesOver(chord) is null)
                statement.Problem(TapeTexts.ArcTight, 1, book.Show(chord), book.Show(arc.Radius.Metres), book.Show(chord / 2));
    }

    private static TapeText? Outcome(double gap, bool onto, bool stated)
        => onto ? gap > Untold.Metres ? TapeTexts.ClosedOnto : null
            : gap < SiteStage.ShortestLeg.Metres ? TapeTexts.ClosedBad
            : gap < largestSlip.Metres && !stated ? TapeTexts.ClosedShort
            : TapeTexts.ClosedByLeg;

    private static void Tell(TapeText? outcome, double gap, double walked, TapeLine line, TapeBookState book, TapeCursor statement)
    {
        if (outcome is null) return;
        statement.Problem(outcome, 1, book.Show(gap), Compass(line.Start.WayTo(line.End)), book.Show(walked), gap > 0 ? Math.Floor(walked / gap) : 0);
    }

    /// <summary>A turn made before closing says which way the next leg should go.</summary>
    private static void CheckTurn(Direction? turned, WalkedLeg next, bool onto, TapeCursor statement)
    {
        const double cosineOf5Degrees = 0.996194698;
        if (turned is not { } way) return;
        var goes = next.Way;
        if (way.East * goes.East + way.North * goes.North < cosineOf5Degrees)
            statement.Problem(TapeTexts.CloseTurn, 1, onto ? "first leg" : "closing leg");
    }

    /// <summary>The nearest of eight points of the compass.</summary>
    private static string Compass(Direction way)
    {
        const double tangentOf22 = 0.4142135624;
        var (east, north) = (Math.Abs(way.East), Math.Abs(way.North));
        var side = way.East > 0 ? "east" : "west";
        var end = way.North > 0 ? "north" : "south";
        return east < north * tangentOf22 ? end : north < east * tangentOf22 ? side : $"{end}-{side}";
    }
}
