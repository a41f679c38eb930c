using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Desk;

/// <summary>A leg as it is written in a table. The turn is at its start.</summary>
public sealed record LegRow(LegId Id, VertexId From, LineId Line, int Index, string Number, string Turn, string Length, string Slope, string Spec, bool CanTurn)
{
    public Selection At => Selection.Leg(Line, Index);
}

/// <summary>The legs of a line in order, as people write them.</summary>
public sealed record LegTable(Line Line, string Name, string Length, IReadOnlyList<LegRow> Rows)
{
    public static IEnumerable<LegTable> Of(Session session) => session.Job.Lines.OrderBy(l => l.Order).Select(l => Of(l, session.Words));

    private static LegTable Of(Line line, PlanWords words)
    {
        LineShape shape = LineShape.Of(line);
        return new(
            line, line.Name.Length > 0 ? line.Name : line.Id.Value, words.Long(Engine.Quantities.Length.FromNanometres(shape.LevelNm)),
            [.. shape.Legs.Select((_, i) => Row(shape, i, words))]);
    }

    private static LegRow Row(LineShape shape, int index, PlanWords words)
    {
        Vertex from = shape.Vertices[index];
        double? turn = shape.TurnAt(index);
        return new(
            from.Leg?.Id ?? default, from.Id, shape.Line.Id, index, PlanWords.Number(Front.Ordinal(index), "0"), turn is { } degrees ? Short(AngleText.Format(degrees)) : "",
            words.Long(Engine.Quantities.Length.FromNanometres(shape.Legs[index].LevelNm)), SlopeText.Percent(from.Leg?.Grade ?? default, 2),
            (from.Leg?.Spec ?? shape.Line.Spec).Value, turn is not null);
    }

    /// <summary>Whole degrees and minutes are said without the seconds that are none.</summary>
    private static string Short(string turn) => turn.Replace("00\"", "", StringComparison.Ordinal).Replace("°00'", "°", StringComparison.Ordinal);
}
