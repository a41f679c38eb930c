using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>
/// What 'adjust' makes of a closed line: instead of the last leg alone all legs take the misclosure, each by its length
/// (compass rule). Gates and stretches stay where they were measured from the starts of their legs.
/// </summary>
internal static class TapeAdjusting
{
    public static void Adjust(TapeLine line, TapeBookState book, TapeCursor statement)
    {
        if (line.AdjustedAt is { } first) statement.Problem(TapeTexts.AdjustTwice, 1, line.Name, first);
        else if (line.WalkedTo is { } end) Spread(line, end, book, statement);
        // Where no leg count or no misclosure was to be had, 'close' has told it.
        else if (!line.Broken && line.Legs.Count > 2) statement.Problem(TapeTexts.AdjustLeg, 1, line.Name);
        line.AdjustedAt ??= statement.Line;
    }

    private static void Spread(TapeLine line, TapePoint end, TapeBookState book, TapeCursor statement)
    {
        if (end == line.Start) return;
        IReadOnlyList<TapePoint> walked = [.. line.Legs.SkipLast(1).Select(l => l.To), end];
        var corners = Adjusted(line.Start, walked);
        line.Move(corners);
        Tell(line.Start.To(end), walked, corners, book, statement);
        TapeClosing.CheckArcs(line, book, statement);
        if (line.Legs.Min(l => l.LevelMetres) is var least && least < SiteStage.ShortestLeg.Metres)
            statement.Problem(TapeTexts.LegShort, 1, book.Show(least), book.Show(SiteStage.ShortestLeg.Metres));
    }

    /// <summary>Where the legs end after the compass rule.</summary>
    private static List<TapePoint> Adjusted(TapePoint start, IReadOnlyList<TapePoint> walked)
    {
        var legs = walked.Select((to, i) => Leg(i == 0 ? start : walked[i - 1], to)).ToList();
        var traverse = TraverseReader.FromHeadings(new SitePoint(new Length(start.East), new Length(start.North)), legs);
        // The statements above let through only legs of 6 in to 1000 km, at least three of them.
        var courses = traverse.Value?.Adjust().Courses ?? throw new InvalidOperationException("A walk that closes is no traverse.");
        return [.. courses.Select(c => new TapePoint(c.To.East.Metres, c.To.North.Metres))];
    }

    private static HeadingLeg Leg(TapePoint from, TapePoint to) => new(from.WayTo(to), new Length(from.To(to)));

    private static void Tell(
        double gap, IReadOnlyList<TapePoint> walked, IReadOnlyList<TapePoint> corners, TapeBookState book, TapeCursor statement)
    {
        if (gap < TapeClosing.Untold.Metres) return;
        // The last end is the first corner, which stays.
        var moved = walked.SkipLast(1).Zip(corners).Select((pair, i) => $"v{i + 2} {book.Show(pair.First.To(pair.Second))}");
        statement.Problem(TapeTexts.Adjusted, 1, book.Show(gap), walked.Count, string.Join(", ", moved));
    }
}
