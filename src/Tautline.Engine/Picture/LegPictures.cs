using Tautline.Engine.Editing;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>The lines themselves: legs with their measures, vertices with their turns.</summary>
internal static class LegPictures
{
    public static IReadOnlyList<LinePicture> Lines(PictureTrace trace)
    {
        List<LinePicture> lines = [];
        var (leg, vertex, post) = (0, 0, 0);
        for (var i = 0; i < trace.Shapes.Count; i++)
        {
            var (shape, plan) = (trace.Shapes[i], trace.Planned[i]);
            var posts = plan < 0 ? 0 : trace.Plan.Lines[plan].Posts.Count;
            lines.Add(new(shape.Line.Id, shape.Line.Name, shape.Line.Closed, plan, leg, shape.Legs.Count, vertex, shape.Vertices.Count, post, posts));
            (leg, vertex, post) = (leg + shape.Legs.Count, vertex + shape.Vertices.Count, post + posts);
        }
        return lines;
    }

    public static (IReadOnlyList<LegPicture> Legs, Paths Paths) Legs(PictureTrace trace)
    {
        List<LegPicture> legs = [];
        List<double> all = [], one = [];
        List<int> starts = [0];
        for (var line = 0; line < trace.Shapes.Count; line++)
            for (var i = 0; i < trace.Shapes[line].Legs.Count; i++)
            {
                var path = trace.Shapes[line].Legs[i];
                one.Clear();
                LineTrace.Along(path, 0, path.LevelNm, one);
                all.AddRange(one);
                starts.Add(all.Count / 2);
                legs.Add(Leg(trace, line, i, path));
            }
        return (legs, new Paths(all.ToArray(), starts.ToArray()));
    }

    private static LegPicture Leg(PictureTrace trace, int line, int index, LegPath path)
    {
        var middle = path.At(path.LevelNm / 2);
        var length = trace.Words.Long(Length.FromNanometres(path.LevelNm));
        var words = path.Curve is { } curve ? $"{length}, R {trace.Words.Long(curve.Curve.Radius)}" : length;
        return new(
            line, index, trace.Shapes[line].Vertices[index].Leg?.Id, words, Short(BearingText.Format(path.Heading)), middle.East.Metres, middle.North.Metres,
            path.HeadingAt(path.LevelNm / 2).AzimuthDegrees);
    }

    public static IReadOnlyList<VertexPicture> Vertices(PictureTrace trace)
        => [.. trace.Shapes.SelectMany((s, line) => s.Vertices.Select((v, i) => new VertexPicture(line, i, v.Id, LegPath.PointOf(v).East.Metres, LegPath.PointOf(v).North.Metres, Turn(s, i), Inside(s, i))))];

    private static string Turn(LineShape shape, int vertex)
        => shape.TurnAt(vertex) is not { } turn ? "" : Math.Abs(turn) < 0.005 ? "" : Short(AngleText.Format(turn));

    /// <summary>Whole degrees and minutes without the zeros behind them: there is little room on a drawing.</summary>
    private static string Short(string angle)
        => angle.Replace("°00'00\"", "°", StringComparison.Ordinal).Replace("'00\"", "'", StringComparison.Ordinal);

    private static double Inside(LineShape shape, int vertex)
    {
        if (shape.TurnAt(vertex) is null) return 0;
        var (ahead, back) = (shape.Legs[vertex].Heading, -shape.Legs[shape.LegInto(vertex)].Ahead);
        return (Survey.Way(ahead.East + back.East, ahead.North + back.North) ?? ahead.Left).AzimuthDegrees;
    }
}
