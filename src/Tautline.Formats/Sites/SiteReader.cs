using System.IO.Compression;
using System.Runtime.InteropServices;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Dxf;
using Tautline.Formats.Sites.LandXml;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Shape;
using Tautline.Formats.Sites.Texts;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites;

/// <summary>
/// Reads the points and lines of any file a site comes in, in the file's own coordinates. No content throws: everything wrong is told together in
/// <see cref="SiteFile.Problems"/>.
/// </summary>
public static class SiteReader
{
    private static readonly Func<string, Stream?> NoSide = _ => null;

    /// <summary>Reads the bytes of a file.</summary>
    public static SiteFile Read(ReadOnlyMemory<byte> bytes, SiteOptions? options = null, Func<string, Stream?>? side = null) =>
        Read(Over(bytes), options, side);

    /// <summary>Reads a file from where the stream stands. It is read in passing where the format allows; the stream stays open.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="options">What is told beside it.</param>
    /// <param name="side">Opens a file of the same name with another ending ("dbf", "prj", "cpg"); null, or a null answer, where there is none.</param>
    /// <exception cref="OperationCanceledException">It was cancelled by the token of the options.</exception>
    public static SiteFile Read(Stream stream, SiteOptions? options = null, Func<string, Stream?>? side = null)
    {
        options ??= new();
        var found = new SiteCollector(options);
        try
        {
            return Read(stream, found, side ?? NoSide, nested: false);
        }
        catch (SiteStop stop)
        {
            return Stopped(found, stop);
        }
        catch (InvalidDataException)
        {
            return Stopped(found, new(ArchiveFindings.Broken));
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException or NotSupportedException or UnauthorizedAccessException)
        {
            return Stopped(found, new(SiteFindings.CannotBeRead(fault.Message)));
        }
    }

    private static SiteFile Stopped(SiteCollector found, SiteStop stop)
    {
        found.Clear();
        if (stop.Line is { } line) found.Problems.AddAtLine(stop.Finding, line);
        else found.Problems.Add(stop.Finding);
        return new() { SourceName = found.Options.SourceName, FormatName = found.FormatName, Claims = found.Claims, Problems = found.Problems.ToImmutable() };
    }

    private static SiteFile Read(Stream stream, SiteCollector found, Func<string, Stream?> side, bool nested)
    {
        var limits = found.Options.Limits;
        if (stream.CanSeek && stream.Length - stream.Position > limits.Bytes) throw new SiteStop(SiteFindings.TooLarge(stream.Length - stream.Position, limits.Bytes));
        var start = new byte[SiteSniffer.Enough];
        var got = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        if (got == 0) throw new SiteStop(SiteFindings.Empty);
        var format = found.Options.Format is { } stated && !nested ? stated : SiteSniffer.Of(start.AsSpan(0, got), found.Options.SourceName);
        // Seekable files begin again; others get their first bytes back.
        Stream whole = stream.CanSeek ? Back(stream, got) : new HeadedStream(start.AsMemory(0, got), stream);
        switch (format)
        {
            case SiteFormat.Kmz: return Archive(whole, found, nested);
            case SiteFormat.Dxf: DxfReader.Read(whole, found); break;
            case SiteFormat.Shapefile: ShapeReader.Read(whole, found, side); break;
            case SiteFormat.GeoJson: return GeoJsonSite.Read(Held(whole, limits.WholeBytes), found);
            case SiteFormat.Text: return TextSite.Read(Held(whole, limits.WholeBytes), found);
            case SiteFormat.GeoPackage: throw new SiteStop(SiteFindings.OtherFormat("a GeoPackage", "Have it saved as a shapefile or GeoJSON."));
            default: return Markup(whole, found);
        }
        return found.File(format);
    }

    private static MemoryStream Over(ReadOnlyMemory<byte> bytes) =>
        MemoryMarshal.TryGetArray(bytes, out var part) ? new(part.Array!, part.Offset, part.Count, writable: false) : new(bytes.ToArray(), writable: false);

    private static Stream Back(Stream stream, int count)
    {
        stream.Seek(-count, SeekOrigin.Current);
        return stream;
    }

    private static SiteFile Markup(Stream stream, SiteCollector found)
    {
        var format = SiteFormat.LandXml;
        SiteXml.Read(stream, found, xml =>
        {
            switch (xml.Root)
            {
                case "LandXML": LandXmlReader.Read(xml, found); break;
                case "gpx": format = SiteFormat.Gpx; GpxReader.Read(xml, found); break;
                case "osm" or "osmChange": format = SiteFormat.Osm; OsmReader.Read(xml, found); break;
                case "kml" or "Document" or "Folder" or "Placemark": format = SiteFormat.Kml; KmlReader.Read(xml, found); break;
                default: throw new SiteStop(SiteFindings.UnknownXml, xml.Line);
            }
        });
        return found.File(format);
    }

    private static SiteFile Archive(Stream stream, SiteCollector found, bool nested)
    {
        if (nested) throw new SiteStop(SiteFindings.OtherFormat("a ZIP archive in a ZIP archive", "Unpack it."));
        using var held = stream.CanSeek ? null : new MemoryStream(Held(stream, found.Options.Limits.WholeBytes).ToArray(), writable: false);
        using var zip = new ZipArchive(held ?? stream, ZipArchiveMode.Read, leaveOpen: true);
        var archive = new SiteArchive(zip, found);
        var entry = archive.Choose();
        using var main = archive.Unpack(entry);
        var file = Read(main, found, ending => archive.Side(entry, ending), nested: true);
        return file.Format == SiteFormat.Kml ? file with { Format = SiteFormat.Kmz, FormatName = "KMZ" } : file;
    }

    private static ReadOnlyMemory<byte> Held(Stream stream, long most)
    {
        using var held = new MemoryStream();
        var part = new byte[1 << 16];
        for (int got; (got = stream.Read(part)) > 0;)
        {
            if (held.Length + got > Math.Min(most, Array.MaxLength)) throw new SiteStop(SiteFindings.TooLarge(held.Length + got, most));
            held.Write(part, 0, got);
        }
        return held.GetBuffer().AsMemory(0, (int)held.Length);
    }
}
