using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What may stand behind the length of a leg, and the points that legs and lines are led to.</summary>
/// <param name="Grade">Rise over run, level where left out.</param>
internal sealed record LegClauses(double Grade, Direction? Bearing)
{
    private const string PointForm = "10' east 20' north";

    /// <summary>Slope and bearing of a leg, in either order; null where one of them cannot be read.</summary>
    public static LegClauses? Read(TapeLine line, TapeCursor statement)
    {
        double? grade = null;
        Direction? bearing = null;
        while (statement.Next is "up" or "down" or "level" or "bearing")
        {
            var (word, column) = (statement.Next, statement.Column);
            if (word == "bearing" ? bearing is not null : grade is not null) statement.ProblemHere(TapeTexts.ClauseTwice, word);
            if (word == "bearing" && line.Turn is { } turn) statement.ProblemHere(TapeTexts.TurnAndBearing, turn.Line);
            statement.Skip();
            if (word == "bearing" ? (bearing = statement.Bearing()) is null : (grade = ReadGrade(word, statement)) is null) return null;
            if (grade is not (null or 0) && word != "bearing" && line.Along is null) statement.Problem(TapeTexts.MeasureMissing, column);
        }
        return new LegClauses(grade ?? 0, bearing);
    }

    /// <summary>A point by its distances east or west and north or south of the job's origin.</summary>
    public static TapePoint? Point(TapeCursor statement)
    {
        if (Coordinate(statement, "east", "west") is not { } east) return null;
        return Coordinate(statement, "north", "south") is { } north ? new TapePoint(east, north) : null;
    }

    private static double? ReadGrade(string word, TapeCursor statement)
        => word == "level" ? 0 : statement.Slope() is { } slope ? word == "up" ? slope : -slope : null;

    private static double? Coordinate(TapeCursor statement, string plus, string minus)
    {
        if (statement.Length() is not { } length) return null;
        if (statement.OneOf($"'{plus}' or '{minus}'", PointForm, plus, minus) is not { } side) return null;
        return side == plus ? length.Metres : -length.Metres;
    }
}
