using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Reads a curved leg: hand, radius, and how far it goes by its length, its turn or the point it ends at.</summary>
internal sealed class ArcWalk(TapeBookState book)
{
    private const string Form = "arc right radius 40' length 62'";

    /// <summary>True where the leg was walked.</summary>
    public bool Read(TapeLine line, TapeCursor statement)
    {
        if (statement.OneOf("'right' or 'left'", Form, "right", "left") is not { } hand) return false;
        if (statement.OneOf("'radius'", Form, "radius") is null || Radius(statement) is not { } radius) return false;
        if (statement.OneOf("'length', 'turn' or 'to'", Form, "length", "turn", "to") is not { } how) return false;
        var arc = new TapeArc(radius, hand);
        return how == "to" ? WalkTo(arc, line, statement) : WalkBy(arc, how, line, statement);
    }

    private static Length? Radius(TapeCursor statement)
    {
        var column = statement.Column;
        if (statement.Length() is not { } radius) return null;
        if (radius.Nanometres > 0) return radius;
        statement.Problem(TapeTexts.ArcRadius, column);
        return null;
    }

    private bool WalkBy(TapeArc arc, string how, TapeLine line, TapeCursor statement)
    {
        var column = statement.Column;
        Length? length = null;
        double? turn = null;
        if (how == "length" ? (length = statement.Length()) is null : (turn = statement.Angle()) is null) return false;
        if (LegClauses.Read(line, statement) is not { } end) return false;
        if (end.Bearing is { } way)
        {
            line.Turn = null;
            line.Face(way);
        }
        var level = line.Along == true ? length?.Metres / Math.Sqrt(1 + end.Grade * end.Grade) : length?.Metres;
        if (turn is null && TooShort(level!.Value, column, statement)) return false;
        var degrees = turn ?? arc.Degrees(level!.Value);
        if (TooLong(arc, degrees, column, statement)) return false;
        if (TooShort(arc.Walk(default, new TapeWay(TapeWay.North, 0), degrees).To.To(default), column, statement)) return false;
        line.WalkArc(arc, degrees, end.Grade, line.Along == true);
        return true;
    }

    private bool WalkTo(TapeArc arc, TapeLine line, TapeCursor statement)
    {
        var column = statement.Column;
        if (line.Turn is { } turn) statement.ProblemHere(TapeTexts.TurnAndBearing, turn.Line);
        if (LegClauses.Point(statement) is not { } point || LegClauses.Read(line, statement) is not { } end) return false;
        if (end.Bearing is not null) statement.Problem(TapeTexts.ClauseUnknown, column, "bearing", "arc ... to", "The point gives the way.");
        if (TooShort(line.End.To(point), column, statement)) return false;
        if (arc.DegreesOver(line.End.To(point)) is null)
        {
            statement.Problem(TapeTexts.ArcTight, column, book.Show(line.End.To(point)), book.Show(arc.Radius.Metres), book.Show(line.End.To(point) / 2));
            return false;
        }
        line.WalkArcTo(arc, point, end.Grade, line.Along == true);
        return true;
    }

    private bool TooLong(TapeArc arc, double degrees, int column, TapeCursor statement)
    {
        if (degrees < TapeArc.HalfCircle) return false;
        statement.Problem(TapeTexts.ArcHalf, column, Math.Round(degrees, 2), book.Show(arc.Radius.Metres * Math.PI));
        return true;
    }

    private bool TooShort(double metres, int column, TapeCursor statement)
    {
        if (new Length(metres).Nanometres >= SiteStage.ShortestLeg.Nanometres) return false;
        statement.Problem(TapeTexts.LegShort, column, book.Show(metres), book.Show(SiteStage.ShortestLeg.Metres));
        return true;
    }
}
