using System.Text.Unicode;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites.Texts;

/// <summary>Points and lines of GeoJSON as features, with the parser of outlines.</summary>
internal static class GeoJsonSite
{
    public static SiteFile Read(ReadOnlyMemory<byte> bytes, SiteCollector found)
    {
        var text = bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;
        var problems = new ProblemList(found.Options.SourceName, new TextPlaces(text));
        found.FormatName = "GeoJSON";
        if (!Utf8.IsValid(text.Span)) problems.Add(GeoJsonFindings.NotUtf8);
        else Read(text, found, problems);
        var file = found.File(SiteFormat.GeoJson);
        // A fault of the text says enough; that nothing was found follows from it.
        var own = problems.ToImmutable();
        return file with { Problems = [.. own, .. file.Problems.Where(p => p.Code != "NothingFound" || !problems.HasErrors)] };
    }

    private static void Read(ReadOnlyMemory<byte> text, SiteCollector found, ProblemList problems)
    {
        List<SystemClaim> claims = [];
        try
        {
            var root = GeoJsonParser.Parse(text, claims);
            var collector = new LineCollector(problems) { TellPoints = false };
            var lines = collector.Collect(root);
            found.Claims = Claims(claims);
            foreach (var line in lines) Line(line, found, problems);
            foreach (var point in collector.Points) Point(point, found, problems);
        }
        catch (JsonStop stop)
        {
            problems.Add(stop.Finding, null, stop.Offset);
            found.Clear();
        }
    }

    private static SiteClaims Claims(List<SystemClaim> claims)
    {
        if (claims.Find(c => c.Text is not null && !c.IsWgs84) is { } foreign) return new() { SystemCode = foreign.Code, SystemText = foreign.Text! };
        return Degrees.Claims;
    }

    private static void Line(RawLine line, SiteCollector found, ProblemList problems)
    {
        if (Faulty(line, problems)) found.Skip(line.Closed ? "ring" : "line", SiteFindings.NoPosition);
        else found.Line(Feature(line, line.Closed ? "Polygon" : "LineString", found) with { Closed = line.Closed }, line.Positions.ConvertAll(Vertex));
    }

    private static void Point(RawLine point, SiteCollector found, ProblemList problems)
    {
        if (Faulty(point, problems)) found.Skip("Point", SiteFindings.NoPosition);
        else found.Point(Feature(point, "Point", found) with { Vertices = [Vertex(point.Positions[0])] });
    }

    private static bool Faulty(RawLine line, ProblemList problems)
    {
        foreach (var position in line.Positions)
        {
            if (position.Fault == PositionFault.None) continue;
            problems.Add(GeoJsonFindings.BadPosition(line.Name, position.Fault), line.Feature, position.Offset);
            return true;
        }
        return false;
    }

    private static SiteFeature Feature(RawLine line, string kind, SiteCollector found) => new()
    {
        Number = line.Feature ?? 1,
        Kind = kind,
        Layer = line.Properties.GetValueOrDefault("layer", ""),
        Label = line.Name,
        Tags = line.Properties,
        Vertices = [],
    };

    private static SiteVertex Vertex(RawPosition p) => new(p.X, p.Y, p.Z);
}
