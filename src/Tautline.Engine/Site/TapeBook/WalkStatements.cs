using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>The statements that walk a line: where it starts, its legs and turns, what changes on the way, and how it closes.</summary>
internal sealed class WalkStatements(TapeBookState book)
{
    private readonly ArcWalk arcs = new(book);

    public void Line(TapeCursor statement)
    {
        var column = statement.Column;
        var name = statement.AtEnd ? null : statement.Name("line \"north side\"");
        book.Begin(name, statement.Line, name is null ? 1 : column);
        statement.End();
    }

    public void Start(TapeCursor statement)
    {
        var line = NotBegun("start", statement);
        if (LegClauses.Point(statement) is not { } point) return;
        if (!line.Begun) line.Start = point;
        statement.End();
    }

    public void Facing(TapeCursor statement)
    {
        var line = NotBegun("facing", statement);
        if (statement.Bearing() is not { } way) return;
        if (!line.Begun) line.Face(way);
        statement.End();
    }

    public void Turn(TapeCursor statement)
    {
        var line = OpenFor(statement);
        var column = statement.Column;
        if (line is null) return;
        if (!line.Begun) statement.ProblemHere(TapeTexts.TurnNoLeg);
        else if (line.Turn is { } first) statement.ProblemHere(TapeTexts.TurnTwice, first.Line);
        if (statement.Turn() is { } degrees && line.Begun) line.Turn = new TapeTurn(degrees, statement.Line, column);
    }

    public void Leg(TapeCursor statement)
    {
        if (OpenFor(statement) is not { } line) return;
        SettleSpec(line, statement);
        if (statement.Take("to") ? LegTo(line, statement) : LegBy(line, statement)) statement.End();
        else line.Break();
    }

    public void Arc(TapeCursor statement)
    {
        if (OpenFor(statement) is not { } line) return;
        SettleSpec(line, statement);
        if (arcs.Read(line, statement)) statement.End();
        else line.Break();
    }

    public void Height(TapeCursor statement)
    {
        if (book.Specs.Count == 0) statement.Problem(TapeTexts.HeightNoSpec, 1);
        else if (book.Open is null) statement.Problem(TapeTexts.HeightNoLine, 1);
        if (statement.Length() is not { } height || book.Specs.Count == 0 || book.Open is not { } line) return;
        SettleSpec(line, statement);
        if (line.Spec is { } spec) line.Spec = book.Specs.WithHeight(spec, height, TapeLength.Write(height, book.Units));
        statement.End();
    }

    public void Close(TapeCursor statement)
    {
        if (OpenFor(statement) is not { } line) return;
        Length? within = null;
        if (statement.Take("within") && (within = statement.Length()) is null) return;
        statement.End();
        if (!line.Broken) TapeClosing.Close(line, book, statement, within);
        line.Turn = null;
        line.ClosedAt = statement.Line;
    }

    public void Adjust(TapeCursor statement)
    {
        statement.End();
        if (book.Open is { ClosedAt: not null } line) TapeAdjusting.Adjust(line, book, statement);
        else statement.Problem(TapeTexts.AdjustOpen, 1);
    }

    /// <summary>The line being walked, begun where the book names none; null, and told, where it is closed.</summary>
    private TapeLine? OpenFor(TapeCursor statement)
    {
        var line = book.Open ?? book.Begin(null, statement.Line, 1);
        if (line.ClosedAt is not { } closed) return line;
        statement.Problem(TapeTexts.LineClosed, 1, line.Name, closed);
        return null;
    }

    private TapeLine NotBegun(string word, TapeCursor statement)
    {
        var line = book.Open ?? book.Begin(null, statement.Line, 1);
        if (line.Begun) statement.Problem(TapeTexts.StartLate, 1, word, line.Name);
        return line;
    }

    /// <summary>Gives the line the only spec there is, or tells what is missing.</summary>
    private void SettleSpec(TapeLine line, TapeCursor statement)
    {
        line.Spec ??= book.Specs.Only;
        if (line.Spec is not null || line.Begun) return;
        if (book.Specs.Count == 0) statement.Problem(TapeTexts.SpecMissing, 1, line.Name);
        else statement.Problem(TapeTexts.SpecOpen, 1, book.Specs.Count, line.Name, book.Specs.Known);
    }

    private bool LegTo(TapeLine line, TapeCursor statement)
    {
        var column = statement.Column;
        if (line.Turn is { } turn) statement.ProblemHere(TapeTexts.TurnAndBearing, turn.Line);
        if (LegClauses.Point(statement) is not { } point || LegClauses.Read(line, statement) is not { } end) return false;
        if (end.Bearing is not null) statement.Problem(TapeTexts.ClauseUnknown, column, "bearing", "leg to", "The point gives the way.");
        if (TooShort(line.End.To(point), statement, column)) return false;
        line.WalkTo(point, end.Grade, line.Along == true);
        return true;
    }

    private bool LegBy(TapeLine line, TapeCursor statement)
    {
        var column = statement.Column;
        if (statement.Length() is not { } length || LegClauses.Read(line, statement) is not { } end) return false;
        if (end.Bearing is { } way)
        {
            line.Turn = null;
            line.Face(way);
        }
        if (TooShort(length.Metres, statement, column)) return false;
        var along = line.Along == true;
        line.Walk(along ? length.Metres / Math.Sqrt(1 + end.Grade * end.Grade) : length.Metres, end.Grade, along);
        return true;
    }

    private bool TooShort(double metres, TapeCursor statement, int column)
    {
        if (new Length(metres).Nanometres >= SiteStage.ShortestLeg.Nanometres) return false;
        statement.Problem(TapeTexts.LegShort, column, book.Show(metres), book.Show(SiteStage.ShortestLeg.Metres));
        return true;
    }
}
