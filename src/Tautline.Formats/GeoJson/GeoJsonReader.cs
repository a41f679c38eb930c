using System.Text;
using System.Text.Unicode;
using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>
/// Reads fence lines from GeoJSON (RFC 7946, and files of the 2008 draft once their system is stated): LineString,
/// MultiLineString, Polygon, MultiPolygon, GeometryCollection, alone or in a Feature or FeatureCollection.
/// No input throws; everything wrong is told together in <see cref="ImportResult.Problems"/>.
/// </summary>
public static class GeoJsonReader
{
    /// <summary>Reads the bytes of a file.</summary>
    public static ImportResult Read(ReadOnlyMemory<byte> bytes, ImportOptions? options = null)
    {
        options ??= new();
        var text = WithoutMark(bytes);
        var problems = new ProblemList(options.SourceName, new TextPlaces(text));
        var result = IsReadable(text, options, problems) ? Lines(text, options, problems) : new();
        return result with { Problems = problems.ToImmutable() };
    }

    private static ImportResult Lines(ReadOnlyMemory<byte> text, ImportOptions options, ProblemList problems)
    {
        List<SystemClaim> claims = [];
        if (Parse(text, claims, problems) is not { } root) return new();
        var lines = new LineCleaner(problems).Clean(new LineCollector(problems).Collect(root));
        if (lines.Count == 0) return Nothing(problems);
        var frame = new FrameFinder(lines, claims, options.CoordinateSystem, problems).Find();
        return frame is null ? new() : new OutlineBuilder(lines, frame, options, problems).Build();
    }

    private static ImportResult Nothing(ProblemList problems)
    {
        if (!problems.HasErrors) problems.Add(GeoJsonFindings.NoLines);
        return new();
    }

    private static GeoObject? Parse(ReadOnlyMemory<byte> text, List<SystemClaim> claims, ProblemList problems)
    {
        try
        {
            return GeoJsonParser.Parse(text, claims);
        }
        catch (JsonStop stop)
        {
            problems.Add(stop.Finding, null, stop.Offset);
            return null;
        }
    }

    // A byte order mark is not allowed, but editors write it.
    private static ReadOnlyMemory<byte> WithoutMark(ReadOnlyMemory<byte> bytes) =>
        bytes.Span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? bytes[3..] : bytes;

    private static bool IsReadable(ReadOnlyMemory<byte> text, ImportOptions options, ProblemList problems)
    {
        if (WhyUnreadable(text.Span, options.MaximumBytes) is not { } finding) return true;
        var place = finding.Code == "NotUtf8" ? FirstInvalid(text.Span) : (int?)null;
        problems.Add(finding, null, place);
        return false;
    }

    private static Finding? WhyUnreadable(ReadOnlySpan<byte> text, int most)
    {
        if (text.Length > most) return GeoJsonFindings.TooLarge(text.Length, most);
        if (text.IndexOfAnyExcept(" \t\r\n"u8) < 0) return GeoJsonFindings.Empty;
        if (text.Length > 1 && (text[0] == 0 || text[1] == 0 || text is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])) return GeoJsonFindings.Utf16;
        return Utf8.IsValid(text) ? null : GeoJsonFindings.NotUtf8;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done) at += length;
        return at;
    }
}
