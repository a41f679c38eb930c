using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Picture;

/// <summary>Obstacles, work and grading along the lines.</summary>
internal static class StretchPictures
{
    public static IEnumerable<StretchPicture> Of(PictureTrace trace)
    {
        foreach (var o in trace.Job.Obstacles)
            if (trace.Leg(o.Leg) is var (line, leg)) yield return Obstacle(trace, o, line, leg);
        foreach (var w in trace.Job.Works)
            if (trace.Leg(w.Leg) is var (line, leg))
                yield return new(
                    "work", w.Kind, w.Id.Value, line, w.Note.Length > 0 ? w.Note : w.Kind, Path(trace, line, leg, w.From, w.To), [], Whole.Tame(w.Width ?? Length.Zero).Metres);
        for (var line = 0; line < trace.Shapes.Count; line++)
        {
            if (trace.Planned[line] is not (>= 0 and var plan)) continue;
            var gradings = trace.Plan.Lines[plan].Grading;
            for (var i = 0; i < gradings.Count; i++)
                yield return new(
                    "grading", gradings[i].TooHigh ? "cut" : "fill", i.ToString(System.Globalization.CultureInfo.InvariantCulture), line, trace.Words.Grading(gradings[i]),
                    LineTrace.Between(trace.Shapes[line], gradings[i].From.Nanometres, gradings[i].To.Nanometres), [], 0);
        }
    }

    private static StretchPicture Obstacle(PictureTrace trace, Obstacle o, int line, int leg)
    {
        var clear = Whole.Tame(o.Clearance);
        var words = o.Note.Length > 0 ? o.Note : o.Kind;
        return new(
            "obstacle", o.Kind, o.Id.Value, line, words, Path(trace, line, leg, o.From, o.To),
            clear.Metres > 0 ? Path(trace, line, leg, o.From - clear, o.To + clear) : [], Whole.Tame(o.Width ?? Length.Zero).Metres);
    }

    private static List<double> Path(PictureTrace trace, int line, int leg, Length from, Length to)
    {
        var start = trace.Shapes[line].StartsNm[leg];
        return LineTrace.Between(trace.Shapes[line], start + Whole.Nm(from), start + Whole.Nm(to));
    }
}
