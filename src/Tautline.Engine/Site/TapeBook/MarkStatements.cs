using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Gates and no-dig stretches: they stand below the leg they lie on and are measured from its start.</summary>
internal sealed class MarkStatements(TapeBookState book)
{
    private const string GateForm = "gate walk 4' from 20'";
    private const string NoDigForm = "no-dig 31' to 33' 6\" clear 2' \"gas line\"";

    public void Gate(TapeCursor statement)
    {
        var line = Begun(TapeTexts.GateNoLeg, statement);
        if (statement.OneOf("'walk' or 'double'", GateForm, "walk", "double") is not { } kind) return;
        var widthColumn = statement.Column;
        if (statement.Length() is not { } opening) return;
        if (statement.OneOf("'from' or 'centred at'", GateForm, "from", "centred", "centered") is not { } how) return;
        if (how != "from" && statement.OneOf("'at'", "gate double 16' centred at 38'", "at") is null) return;
        var column = statement.Column;
        if (statement.Length() is not { } measured) return;
        statement.End();
        if (opening.Metres == 0) statement.Problem(TapeTexts.GateZero, widthColumn);
        else if (line is { Broken: false }) Add(line, kind, opening, measured, how != "from", statement, column);
    }

    public void NoDig(TapeCursor statement)
    {
        var line = Begun(TapeTexts.NoDigNoLeg, statement);
        var column = statement.Column;
        if (statement.Length() is not { } from || statement.OneOf("'to'", NoDigForm, "to") is null || statement.Length() is not { } to) return;
        var clear = Length.Zero;
        if (statement.Take("clear"))
        {
            if (statement.Length() is not { } read) return;
            clear = read;
        }
        var note = statement.NextIsQuoted ? statement.Name(NoDigForm) ?? "" : "";
        statement.End();
        if (line is { Broken: false }) Add(line, from, to, clear, note, statement, column);
    }

    private TapeLine? Begun(TapeText slip, TapeCursor statement)
    {
        if (book.Open is { Begun: true } line) return line;
        statement.Problem(slip, 1);
        return null;
    }

    private void Add(TapeLine line, string kind, Length opening, Length measured, bool centred, TapeCursor statement, int column)
    {
        var leg = line.Legs[^1];
        var near = leg.Level(measured) - (centred ? opening / 2 : Length.Zero);
        if (near.Nanometres < 0 || Beyond(near + opening, leg))
        {
            statement.Problem(TapeTexts.GateOffLeg, column, book.Show(near.Metres), book.Show((near + opening).Metres), book.Show(leg.LevelMetres));
            return;
        }
        book.Gates.Add(new Gate
        {
            Id = new GateId($"{line.Id.Value}/gate{++line.GateCount}"),
            Leg = line.LegId(line.Legs.Count),
            Kind = kind,
            NearFace = near.Metres < 0 ? Length.Zero : near,
            Opening = opening,
        });
    }

    private void Add(TapeLine line, Length from, Length to, Length clear, string note, TapeCursor statement, int column)
    {
        var leg = line.Legs[^1];
        if (to.Nanometres <= from.Nanometres || Beyond(leg.Level(to), leg))
        {
            statement.Problem(TapeTexts.NoDigRange, column, book.Show(from.Metres), book.Show(to.Metres), book.Show(leg.LevelMetres));
            return;
        }
        book.Obstacles.Add(new Obstacle
        {
            Id = new ObstacleId($"{line.Id.Value}/no-dig{++line.NoDigCount}"),
            Leg = line.LegId(line.Legs.Count),
            Kind = Obstacle.NoDig,
            From = leg.Level(from),
            To = leg.Level(to),
            Clearance = clear,
            Note = note,
        });
    }

    /// <summary>Past the end of the leg by more than 1/1000 mm, the slack the plan allows as well.</summary>
    private static bool Beyond(Length level, WalkedLeg leg) => level.Metres > leg.LevelMetres + 1e-6;
}
