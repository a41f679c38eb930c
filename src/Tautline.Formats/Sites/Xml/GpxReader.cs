using System.Collections.Immutable;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Xml;

/// <summary>Reads waypoints, routes and track segments of GPX 1.0 and 1.1 (Topografix schemas). Segments and tracks are never joined.</summary>
internal sealed class GpxReader
{
    private readonly SiteXml _xml;
    private readonly SiteCollector _found;

    private GpxReader(SiteXml xml, SiteCollector found) => (_xml, _found) = (xml, found);

    public static void Read(SiteXml xml, SiteCollector found)
    {
        if (xml.Root != "gpx") throw new SiteStop(SiteFindings.WrongRoot(xml.Root, "gpx"));
        found.FormatName = $"GPX {xml.Attribute("version")}".TrimEnd();
        found.Claims = Degrees.Claims;
        new GpxReader(xml, found).Document();
    }

    private void Document()
    {
        _xml.Each(child =>
        {
            switch (child)
            {
                case "wpt": WayPoint(); break;
                case "rte": Path("rte", "routes"); break;
                case "trk": Path("trk", "tracks"); break;
            }
        });
        _found.Problems.Add(GpxFindings.HandHeld);
    }

    private void WayPoint()
    {
        var line = _xml.Line;
        var (vertex, tags) = Point(withTags: true);
        var feature = new SiteFeature
        {
            Number = _found.NextNumber(),
            Kind = "wpt",
            Layer = "waypoints",
            Label = tags.GetValueOrDefault("name", ""),
            Vertices = [vertex],
            Line = line,
            Tags = tags.Remove("name"),
        };
        if (Degrees.AreDegrees(vertex)) _found.Point(feature);
        else BadPoint("wpt", line);
    }

    private void Path(string kind, string layer)
    {
        var (name, number, part, line) = ("", _found.NextNumber(), 1, _xml.Line);
        List<(List<SiteVertex> Vertices, int Line)> lines = [];
        List<SiteVertex> route = [];
        _xml.Inside = kind == "trk" ? "a track" : "a route";
        _xml.Each(child =>
        {
            switch (child)
            {
                case "name": name = _xml.Text(); break;
                case "rtept": route.Add(Point(withTags: false).Vertex); break;
                case "trkseg":
                    var (segment, at) = (new List<SiteVertex>(), _xml.Line);
                    _xml.Each(point => { if (point == "trkpt") segment.Add(Point(withTags: false).Vertex); });
                    lines.Add((segment, at));
                    break;
            }
        });
        _xml.Inside = "";
        if (kind == "rte") lines.Add((route, line));
        if (lines.Count == 0) _found.Skip(kind, "it is empty");
        foreach (var (vertices, at) in lines)
        {
            var what = kind == "trk" ? "trkseg" : "rte";
            if (vertices.Count == 0) _found.Skip(what, "it is empty");
            else if (!vertices.TrueForAll(Degrees.AreDegrees)) BadPoint(what, at);
            else if (_found.Line(new() { Number = number, Part = part++, Kind = what, Layer = layer, Label = name, Line = at, Vertices = [] }, vertices)) GpxJumps.Tell(vertices, name, at, _found.Problems);
        }
    }

    private void BadPoint(string kind, int line)
    {
        _found.Problems.AddAtLine(GpxFindings.BadPoint(kind), line);
        _found.Skip(kind, SiteFindings.NoPosition);
    }

    private (SiteVertex Vertex, ImmutableSortedDictionary<string, string> Tags) Point(bool withTags)
    {
        var (latitude, longitude, height) = (_xml.Number("lat"), _xml.Number("lon"), double.NaN);
        var tags = SiteFeature.NoTags;
        _xml.Each(child =>
        {
            if (child == "ele") height = _xml.TextNumber();
            else if (withTags && child is "name" or "desc" or "cmt" or "sym" or "type") tags = withTags ? tags.SetItem(child, _xml.Text()) : tags;
        });
        return (new(longitude, latitude, height), tags);
    }
}

/// <summary>Tells places of a track that nobody walked: a point far out and back at once. Limits are our own practice.</summary>
internal static class GpxJumps
{
    private const double FarOut = 5; // times the middle step
    private const double LeastMetres = 25;
    private const double LeastRise = 10;

    public static void Tell(List<SiteVertex> track, string name, int line, ProblemList problems)
    {
        if (track.Count < 4) return;
        var steps = new double[track.Count - 1];
        for (var i = 0; i < steps.Length; i++) steps[i] = Degrees.Distance(track[i], track[i + 1]);
        var middle = Middle(steps);
        List<int> jumps = [], rises = [];
        for (var i = 1; i < track.Count - 1; i++)
        {
            // Out and back: the way round by this point is much longer than the way past it.
            var past = Degrees.Distance(track[i - 1], track[i + 1]);
            if (Math.Min(steps[i - 1], steps[i]) > Math.Max(FarOut * middle, LeastMetres) || (steps[i - 1] + steps[i] > 4 * past && Math.Min(steps[i - 1], steps[i]) > Math.Max(2 * middle, LeastMetres))) jumps.Add(i + 1);
            var (up, down) = (track[i].Z - track[i - 1].Z, track[i].Z - track[i + 1].Z);
            if (Math.Min(Math.Abs(up), Math.Abs(down)) >= LeastRise && Math.Sign(up) == Math.Sign(down)) rises.Add(i + 1);
        }
        if (jumps.Count > 0) problems.AddAtLine(GpxFindings.Jumps(name, jumps), line);
        if (rises.Count > 0) problems.AddAtLine(GpxFindings.HeightJumps(name, rises), line);
    }

    private static double Middle(double[] values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}

internal static class GpxFindings
{
    public static readonly Finding HandHeld = new(
        ProblemSeverity.Information, "HandHeld", "Positions of a hand-held receiver are off by some metres, and which zero its heights count from is not told.",
        "Good for finding the place and for a first length; measure before posts are set out.");

    public static Finding BadPoint(string kind) => new(
        ProblemSeverity.Error, "BadPoint", $"A point of this {kind} has no latitude within 90 and longitude within 180 degrees. All of it is left out.", "Export the track again.");

    public static Finding Jumps(string name, List<int> points) => new(
        ProblemSeverity.Warning, "Jumps", $"The track '{name}' jumps out and back at {Points(points)}; the steps there are far longer than the others.", "Nobody walked that: leave these points out before using its length.");

    public static Finding HeightJumps(string name, List<int> points) => new(
        ProblemSeverity.Warning, "HeightJumps", $"The heights of the track '{name}' jump at {Points(points)}.", "Do not take grades from it there.");

    private static string Points(List<int> points) =>
        $"point{(points.Count == 1 ? "" : "s")} {string.Join(", ", points.Take(8))}{(points.Count > 8 ? SiteFindings.Text($" and {points.Count - 8} more") : "")}";
}
