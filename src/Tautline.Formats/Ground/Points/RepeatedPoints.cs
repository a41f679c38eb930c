using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Points;

/// <summary>Tells points that share a number or a place, and points far from all others. Nothing is changed: two points of one number are two points.</summary>
internal static class RepeatedPoints
{
    private const int FewestForStrays = 8;
    private const double StrayTimes = 50; // our own practice

    public static void Tell(List<SurveyPoint> points, ProblemList problems)
    {
        var names = new Dictionary<string, SurveyPoint>();
        var places = new Dictionary<(double, double), SurveyPoint>();
        var repeated = 0;
        foreach (var point in points)
        {
            if (places.TryAdd((point.North, point.East), point))
            {
                TellName(names, point, problems);
                continue;
            }
            var first = places[(point.North, point.East)];
            if (first.Height is { } old && point.Height is { } height && old != height) problems.AddAtLine(PointFindings.TwoHeights(first, height, old), point.Line);
            else if (first.Height == point.Height) repeated++;
            TellName(names, point, problems);
        }
        if (repeated > 0) problems.Add(PointFindings.RowsRepeated(repeated));
        TellStrays(points, problems);
    }

    private static void TellName(Dictionary<string, SurveyPoint> names, SurveyPoint point, ProblemList problems)
    {
        if (point.Name.Length == 0 || names.TryAdd(point.Name, point)) return;
        var first = names[point.Name];
        if ((first.North, first.East, first.Height) != (point.North, point.East, point.Height))
            problems.AddAtLine(PointFindings.NumberTwice(point.Name, first), point.Line);
    }

    private static void TellStrays(List<SurveyPoint> points, ProblemList problems)
    {
        if (points.Count < FewestForStrays) return;
        var (north, east) = (Middle(points.Select(p => p.North)), Middle(points.Select(p => p.East)));
        var far = points.ConvertAll(p => Math.Max(Math.Abs(p.North - north), Math.Abs(p.East - east)));
        var usual = Middle(far);
        for (var i = 0; i < far.Count; i++)
            if (usual > 0 && far[i] > StrayTimes * usual) problems.AddAtLine(PointFindings.Stray(far[i] / usual), points[i].Line);
    }

    private static double Middle(IEnumerable<double> numbers)
    {
        double[] sorted = [.. numbers.Order()];
        return sorted[sorted.Length / 2];
    }
}
