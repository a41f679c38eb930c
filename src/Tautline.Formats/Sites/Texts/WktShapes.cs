using System.Collections.Immutable;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites.Texts;

/// <summary>Shapes as well-known text (OGC 06-103r4), one a line: POINT, LINESTRING, POLYGON and their MULTI kinds; an SRID in front is taken as an EPSG number.</summary>
internal static class WktShapes
{
    private static readonly string[] Kinds = ["POINT", "LINESTRING", "POLYGON", "MULTIPOINT", "MULTILINESTRING", "MULTIPOLYGON"];

    /// <summary>True where the first line with anything is such a shape.</summary>
    public static bool Read(ImmutableArray<string> lines, SiteCollector found)
    {
        var first = lines.FirstOrDefault(l => !string.IsNullOrWhiteSpace(l));
        if (first is null || KindOf(Bare(first, out _)) is null) return false;
        int? code = null;
        for (var i = 0; i < lines.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i])) continue;
            var text = Bare(lines[i], out var srid);
            code ??= srid;
            if (KindOf(text) is not { } kind || !Shape(kind, text, i + 1, found))
            {
                found.Problems.AddAtLine(TextFindings.BadWkt, i + 1);
                found.Skip("shape", "not well-known text");
            }
        }
        if (code is { } number && number != 0) found.Claims = new() { SystemCode = number, SystemText = $"SRID {number}", Degrees = number == 4326 };
        return true;
    }

    private static string Bare(string line, out int? srid)
    {
        srid = null;
        var text = line.Trim();
        if (!text.StartsWith("SRID=", StringComparison.OrdinalIgnoreCase) || text.IndexOf(';') is not (> 5 and var end)) return text;
        srid = int.TryParse(text.AsSpan(5, end - 5), out var code) ? code : null;
        return text[(end + 1)..].Trim();
    }

    private static string? KindOf(string text)
    {
        var word = new string([.. text.TakeWhile(char.IsAsciiLetter)]).ToUpperInvariant();
        return Kinds.Contains(word) && text.Contains('(', StringComparison.Ordinal) ? word : null;
    }

    private static bool Shape(string kind, string text, int line, SiteCollector found)
    {
        var (number, part) = (found.NextNumber(), 0);
        var open = text.IndexOf('(');
        var measured = text[..open].Contains('M', StringComparison.OrdinalIgnoreCase) && !text[..open].TrimEnd().EndsWith("POINT", StringComparison.OrdinalIgnoreCase) && text[..open].TrimEnd().EndsWith(" M", StringComparison.OrdinalIgnoreCase);
        List<List<SiteVertex>> lists = [];
        foreach (var piece in text[open..].Split('('))
        {
            var body = piece.Split(')')[0].Trim();
            if (body.Length == 0) continue;
            List<SiteVertex> vertices = [];
            foreach (var tuple in body.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                var numbers = tuple.Split(' ', StringSplitOptions.RemoveEmptyEntries);
                if (numbers.Length is < 2 or > 4) return false;
                var (x, y, z) = (SiteXml.Parse(numbers[0]), SiteXml.Parse(numbers[1]), numbers.Length > 2 && !measured ? SiteXml.Parse(numbers[2]) : double.NaN);
                if (!double.IsFinite(x) || !double.IsFinite(y)) return false;
                vertices.Add(new(x, y, z));
            }
            lists.Add(vertices);
        }
        if (lists.Count == 0 || text.Count('('.Equals) != text.Count(')'.Equals)) return false;
        foreach (var vertices in lists)
        {
            if (vertices.Count == 0) return false;
            var feature = new SiteFeature { Number = number, Part = ++part, Kind = kind, Line = line, Closed = kind.EndsWith("POLYGON", StringComparison.Ordinal), Vertices = [] };
            if (!kind.EndsWith("POINT", StringComparison.Ordinal)) found.Line(feature, vertices);
            else foreach (var vertex in vertices) found.Point(feature with { Vertices = [vertex] });
        }
        return true;
    }
}
