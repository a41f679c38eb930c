using System.Globalization;
using Tautline.Engine.Editing;
using Tautline.Engine.Problems;
using Tautline.Engine.Site;

namespace Tautline.Engine.Picture;

/// <summary>Problems that have a place: a station of a line, or what their path in the job names.</summary>
internal static class ProblemPictures
{
    /// <summary>Ground in the wrong unit gives thousands of a kind; a drawing needs no more.</summary>
    private const int Most = 1_000;

    public static IEnumerable<ProblemPicture> Of(PictureTrace trace)
    {
        var shown = 0;
        for (var i = 0; i < trace.Plan.Problems.Count && shown < Most; i++)
        {
            if (Where(trace, trace.Plan.Problems[i].Place) is not { } point) continue;
            shown++;
            yield return new(i, trace.Plan.Problems[i].Severity, point.East.Metres, point.North.Metres);
        }
    }

    private static SitePoint? Where(PictureTrace trace, Place place)
    {
        if (place is { Line: { } id, Station: { } station })
            foreach (var shape in trace.Shapes)
                if (shape.Line.Id == id && shape.Vertices.Count > 0) return shape.Point(Math.Clamp(Whole.Nm(station), 0, shape.LevelNm));
        return Named(trace, place.Path ?? "");
    }

    private static SitePoint? Named(PictureTrace trace, string path)
    {
        var job = trace.Job;
        return Index(path, "gates[") is { } g && g < job.Gates.Count ? Along(trace, job.Gates[g].Leg, job.Gates[g].NearFace)
            : Index(path, "obstacles[") is { } o && o < job.Obstacles.Count ? Along(trace, job.Obstacles[o].Leg, job.Obstacles[o].From)
            : Index(path, "pins[") is { } p && p < job.Pins.Count ? Along(trace, job.Pins[p].Leg, job.Pins[p].At)
            : Index(path, "works[") is { } w && w < job.Works.Count ? Along(trace, job.Works[w].Leg, job.Works[w].From)
            : Index(path, "lines[") is { } l && l < job.Lines.Count ? OnLine(trace, l, path) : null;
    }

    private static SitePoint? OnLine(PictureTrace trace, int line, string path)
    {
        var vertices = trace.Job.Lines[line].Vertices;
        if (vertices.Count == 0) return null;
        var dot = path.IndexOf(".vertices[", StringComparison.Ordinal);
        var vertex = dot < 0 ? 0 : Index(path[(dot + 1)..], "vertices[") ?? 0;
        return LegPath.PointOf(vertices[Math.Min(vertex, vertices.Count - 1)]);
    }

    private static SitePoint? Along(PictureTrace trace, Jobs.LegId id, Quantities.Length at)
    {
        if (trace.Leg(id) is not var (line, leg)) return null;
        var path = trace.Shapes[line].Legs[leg];
        return path.At(Math.Clamp(Whole.Nm(at), 0, path.LevelNm));
    }

    /// <summary>The number in brackets behind a name at the head of a path.</summary>
    private static int? Index(string path, string name)
    {
        if (!path.StartsWith(name, StringComparison.Ordinal)) return null;
        var end = path.IndexOf(']', StringComparison.Ordinal);
        return end > 0 && int.TryParse(path.AsSpan(name.Length, end - name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : null;
    }
}
