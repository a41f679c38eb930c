using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Picture;

/// <summary>Makes the picture of a plan.</summary>
public static class PictureStage
{
    /// <summary>How far the points of an arc may leave it between them.</summary>
    public static readonly Length Sagitta = Length.FromMillimetres(5);

    /// <summary>Stations that are marked at most; on a longer line every tenth is.</summary>
    private const int MostMarks = 2_000;

    /// <param name="units">Of its words and stations; those of the job where nothing is said.</param>
    public static PlanPicture Of(Plan plan, UnitSystem? units = null)
    {
        var job = plan.Basis.Job;
        var shapes = job.Lines.Select(LineShape.Of).ToList();
        var planned = plan.Lines.Select((l, i) => (l.Id, i)).ToDictionary(l => l.Id, l => l.i);
        var words = new PlanWords(units ?? job.Units);
        var trace = new PictureTrace(plan, shapes, [.. shapes.Select(s => planned.GetValueOrDefault(s.Line.Id, -1))], words);
        var posts = PostPictures.Of(trace);
        var legs = LegPictures.Legs(trace);
        return new PlanPicture
        {
            Lines = LegPictures.Lines(trace),
            LegPaths = legs.Paths,
            Legs = legs.Legs,
            Vertices = LegPictures.Vertices(trace),
            PostsAt = posts.At,
            PostKinds = posts.Kinds,
            Runs = posts.Runs,
            Bays = posts.Bays,
            Pulls = posts.Pulls,
            Drops = posts.Drops,
            Gates = [.. GatePictures.Of(trace)],
            Stretches = [.. StretchPictures.Of(trace)],
            Pins = [.. Pins(trace)],
            Stations = [.. shapes.SelectMany((s, i) => Marks(s, i, words))],
            Ties = [.. shapes.SelectMany(Ties)],
            Problems = [.. ProblemPictures.Of(trace)],
            Extent = Extent(legs.Paths.Points.Span),
        };
    }

    private static IEnumerable<PinPicture> Pins(PictureTrace trace)
    {
        foreach (var pin in trace.Job.Pins)
            if (trace.Leg(pin.Leg) is var (line, leg))
            {
                var path = trace.Shapes[line].Legs[leg];
                var along = Whole.Nm(pin.At);
                var at = path.At(along);
                yield return new(line, pin.Id, pin.Stands, at.East.Metres, at.North.Metres, path.HeadingAt(along).AzimuthDegrees);
            }
    }

    /// <summary>Every hundred feet or fifty metres, as the line's stations are read.</summary>
    private static IEnumerable<MarkPicture> Marks(LineShape shape, int line, PlanWords words)
    {
        var step = words.Units == UnitSystem.Metric ? 50_000_000_000L : 100 * Length.NmPerFoot;
        while (shape.LevelNm / step > MostMarks) step *= 10;
        for (var station = 0L; station <= shape.LevelNm && shape.Legs.Count > 0; station += step)
        {
            var leg = shape.LegAt(station);
            var (at, path) = (station - shape.StartsNm[leg], shape.Legs[leg]);
            var point = path.At(at);
            var text = StationText.Format(Length.FromNanometres(station), words.Units, 0);
            yield return new(line, text, point.East.Metres, point.North.Metres, path.HeadingAt(at).AzimuthDegrees);
        }
    }

    private static IEnumerable<TiePicture> Ties(LineShape shape, int line)
    {
        if (shape.Line.Closed || shape.Legs.Count == 0) yield break;
        var (first, last) = (shape.Legs[0], shape.Legs[^1]);
        if (shape.Line.Start is { } start)
            yield return new(line, start.Kind, first.From.East.Metres, first.From.North.Metres, (-first.Heading).AzimuthDegrees);
        if (shape.Line.Finish is { } finish) yield return new(line, finish.Kind, last.To.East.Metres, last.To.North.Metres, last.Ahead.AzimuthDegrees);
    }

    private static double[] Extent(ReadOnlySpan<double> points)
    {
        if (points.Length == 0) return [0, 0, 0, 0];
        double[] extent = [points[0], points[1], points[0], points[1]];
        for (var i = 0; i < points.Length; i += 2)
        {
            (extent[0], extent[1]) = (Math.Min(extent[0], points[i]), Math.Min(extent[1], points[i + 1]));
            (extent[2], extent[3]) = (Math.Max(extent[2], points[i]), Math.Max(extent[3], points[i + 1]));
        }
        return extent;
    }
}

/// <summary>What the parts of a picture are made from.</summary>
/// <param name="Planned">Index in the plan of each of the job's lines; -1 where it has none.</param>
internal sealed record PictureTrace(Plan Plan, IReadOnlyList<LineShape> Shapes, IReadOnlyList<int> Planned, PlanWords Words)
{
    private readonly Dictionary<LegId, (int Line, int Leg)> legs = LegsOf(Shapes);

    public Job Job => Plan.Basis.Job;

    public (int Line, int Leg)? Leg(LegId id) => legs.TryGetValue(id, out var found) ? found : null;

    private static Dictionary<LegId, (int, int)> LegsOf(IReadOnlyList<LineShape> shapes)
    {
        Dictionary<LegId, (int, int)> legs = [];
        for (var line = 0; line < shapes.Count; line++)
            for (var leg = 0; leg < shapes[line].Legs.Count; leg++)
                if (shapes[line].Vertices[leg].Leg is { Id.Value: not null } known) legs[known.Id] = (line, leg);
        return legs;
    }
}
