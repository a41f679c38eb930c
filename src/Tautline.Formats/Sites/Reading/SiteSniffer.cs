using System.Text;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Dxf;

namespace Tautline.Formats.Sites.Reading;

/// <summary>Tells a file's format by its first bytes; by its name only where they leave it open.</summary>
internal static class SiteSniffer
{
    public const int Enough = 1024;

    public static SiteFormat Of(ReadOnlySpan<byte> start, string name)
    {
        if (start.StartsWith("PK\x03\x04"u8) || start.StartsWith("PK\x05\x06"u8)) return SiteFormat.Kmz;
        if (start is [0x00, 0x00, 0x27, 0x0A, ..]) return SiteFormat.Shapefile;
        if (start.StartsWith("SQLite format 3\0"u8)) return SiteFormat.GeoPackage;
        Refuse(start);
        var text = Encoding.Latin1.GetString(start);
        var plain = text.Replace("\0", "", StringComparison.Ordinal).TrimStart('\u00EF', '\u00BB', '\u00BF', '\u00FE', '\u00FF', ' ', '\t', '\r', '\n');
        if (plain is ['<', ..]) return SiteFormat.LandXml;
        if (plain is ['{', ..]) return SiteFormat.GeoJson;
        if (plain is ['[', ..] && !name.EndsWith(".txt", StringComparison.OrdinalIgnoreCase)) return SiteFormat.GeoJson;
        return IsDrawing(plain, name) ? SiteFormat.Dxf : SiteFormat.Text;
    }

    /// <summary>A drawing begins with group code 0 and SECTION, perhaps after comments (999).</summary>
    private static bool IsDrawing(string text, string name)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            var code = lines[i].Trim();
            if (code == "0") return lines[i + 1].Trim() is "SECTION" or "EOF" || name.EndsWith(".dxf", StringComparison.OrdinalIgnoreCase);
            if (code != "999") break;
        }
        return name.EndsWith(".dxf", StringComparison.OrdinalIgnoreCase);
    }

    private static void Refuse(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith("AutoCAD Binary DXF"u8)) throw new SiteStop(DxfFindings.Binary);
        if (start.StartsWith("AC10"u8)) throw new SiteStop(DxfFindings.Dwg);
        if (start.StartsWith("%PDF"u8)) throw new SiteStop(SiteFindings.OtherFormat("a PDF", "Ask for the drawing it was printed from, as DXF, or for the points."));
        if (start.StartsWith("LASF"u8)) throw new SiteStop(SiteFindings.OtherFormat("a lidar point cloud (LAS or LAZ)", "Have lines drawn on it and those exported."));
        if (start is [0x49, 0x49, 42 or 43, 0, ..] or [0x4D, 0x4D, 0, 42 or 43, ..])
            throw new SiteStop(SiteFindings.OtherFormat("a TIFF", "If it holds ground, attach it to a job; a picture has no lines."));
        if (start is [0x89, (byte)'P', (byte)'N', (byte)'G', ..] or [0xFF, 0xD8, 0xFF, ..]) throw new SiteStop(SiteFindings.OtherFormat("a picture", "Draw over it on the screen instead."));
        if (start is [0xD0, 0xCF, 0x11, 0xE0, ..]) throw new SiteStop(SiteFindings.OtherFormat("a design or office file of an old program", "Export it as DXF, or as text."));
    }
}

/// <summary>A stream that cannot go back, with the bytes already taken off it in front.</summary>
internal sealed class HeadedStream(ReadOnlyMemory<byte> head, Stream rest) : ForwardStream
{
    private int _at;

    public override int Read(Span<byte> buffer)
    {
        if (_at >= head.Length) return rest.Read(buffer);
        var count = Math.Min(buffer.Length, head.Length - _at);
        head.Span.Slice(_at, count).CopyTo(buffer);
        _at += count;
        return count;
    }
}
