using System.Text;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Reading;

/// <summary>Tells a ground file's format by its first bytes.</summary>
internal static class FormatSniffer
{
    public const int Enough = 1024;

    private static readonly string[] GridKeys = ["ncols", "nrows", "xllcorner", "xllcenter", "yllcorner", "yllcenter", "cellsize", "nodata_value", "dx", "dy"];

    /// <summary>The format, or why the file is not read.</summary>
    public static (GroundFormat Format, Finding? Refused) Of(ReadOnlySpan<byte> start)
    {
        if (start is [0x49, 0x49, 42 or 43, 0, ..] or [0x4D, 0x4D, 0, 42 or 43, ..]) return (GroundFormat.GeoTiff, null);
        if (Refusal(start) is { } refused) return (default, refused);
        var text = Encoding.Latin1.GetString(start).TrimStart('\u00EF', '\u00BB', '\u00BF', ' ', '\t', '\r', '\n');
        // UTF-16 has a zero in every other byte; markup in it is told by the reader of XML.
        if (text.Replace("\0", "", StringComparison.Ordinal).TrimStart('\u00FE', '\u00FF') is ['<', ..]) return (GroundFormat.LandXml, null);
        var first = text.Split([' ', '\t', '\r', '\n'], 2)[0];
        var grid = GridKeys.Contains(first, StringComparer.OrdinalIgnoreCase);
        return (grid ? GroundFormat.AsciiGrid : GroundFormat.SurveyPoints, null);
    }

    private static Finding? Refusal(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith("PK\x03\x04"u8)) return GroundFindings.OtherFormat("a ZIP archive", "Unpack it and read what is inside.");
        if (start.StartsWith("LASF"u8))
            return GroundFindings.OtherFormat("a lidar point cloud (LAS or LAZ)", "Have a ground grid or a triangulated surface made of it.");
        if (start.StartsWith("AC10"u8)) return GroundFindings.OtherFormat("a DWG drawing", "Have the surface exported as LandXML, or the points as text.");
        if (start.StartsWith("%PDF"u8)) return GroundFindings.OtherFormat("a PDF", "Ask for the points or the surface it was drawn from.");
        if (start is [0x89, (byte)'H', (byte)'D', (byte)'F', ..]) return GroundFindings.OtherFormat("an HDF5 container", "Have the grid saved as GeoTIFF.");
        return null;
    }
}
