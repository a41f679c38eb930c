using System.IO.Compression;
using Tautline.Formats.Import;

namespace Tautline.Formats.Sites.Reading;

/// <summary>
/// A ZIP that a site's file came in. Only one file and its side files are read, in memory and never by a path; what an entry unpacks to is counted as it comes, whatever
/// its head says.
/// </summary>
internal sealed class SiteArchive(ZipArchive zip, SiteCollector found)
{
    private const int MostEntries = 10_000;

    // Text packs to a tenth, drawings full of spaces to a fiftieth; a bomb to a thousandth.
    private const long MostTimes = 200;
    private const long AlwaysAllowed = 16L << 20;

    private static readonly string[] Known = ["kml", "shp", "dxf", "gpx", "xml", "osm", "geojson", "json", "gpkg", "csv", "txt", "asc"];

    /// <summary>The entry to read: for KMZ the first .kml in the root, else the only one of a known kind.</summary>
    public ZipArchiveEntry Choose()
    {
        if (zip.Entries.Count > MostEntries) throw new SiteStop(ArchiveFindings.TooManyEntries(zip.Entries.Count));
        var files = zip.Entries.Where(e => e.Name.Length > 0 && !e.FullName.StartsWith("__MACOSX", StringComparison.Ordinal)).ToList();
        var root = files.FirstOrDefault(e => e.FullName.Equals("doc.kml", StringComparison.OrdinalIgnoreCase))
            ?? files.FirstOrDefault(e => Ending(e) == "kml" && !e.FullName.Contains('/', StringComparison.Ordinal));
        if (root is not null) return root;
        var known = files.Where(e => Known.Contains(Ending(e))).ToList();
        if (known.Count == 0) throw new SiteStop(ArchiveFindings.NothingKnown);
        // Of a set of files the one that holds the shapes.
        var shapes = known.Where(e => Ending(e) is not ("xml" or "txt" or "csv" or "asc" or "json")).ToList();
        var chosen = shapes.Count > 0 ? shapes : known;
        if (chosen.Count > 1) throw new SiteStop(ArchiveFindings.Several(chosen.Select(e => e.FullName)));
        return chosen[0];
    }

    /// <summary>What an entry unpacks to.</summary>
    public MemoryStream Unpack(ZipArchiveEntry entry)
    {
        var most = Math.Min(found.Options.Limits.Bytes, Math.Max(AlwaysAllowed, MostTimes * entry.CompressedLength));
        var whole = new MemoryStream();
        using var packed = entry.Open();
        var part = new byte[1 << 16];
        for (int got; (got = packed.Read(part)) > 0;)
        {
            found.Options.Cancelled.ThrowIfCancellationRequested();
            if (whole.Length + got > Math.Min(most, Array.MaxLength)) throw new SiteStop(ArchiveFindings.Bomb(entry.FullName, most));
            whole.Write(part, 0, got);
        }
        whole.Position = 0;
        return whole;
    }

    /// <summary>A file of the same name with another ending.</summary>
    public MemoryStream? Side(ZipArchiveEntry main, string ending)
    {
        var name = Path.ChangeExtension(main.FullName, ending);
        var entry = zip.Entries.FirstOrDefault(e => e.FullName.Equals(name, StringComparison.OrdinalIgnoreCase));
        return entry is null ? null : Unpack(entry);
    }

    public static string Ending(ZipArchiveEntry entry) => Path.GetExtension(entry.Name).TrimStart('.').ToLowerInvariant();
}

internal static class ArchiveFindings
{
    public static readonly Finding Broken = new(ProblemSeverity.Error, "BrokenZip", "The ZIP archive is damaged or cut off.", "Fetch the file again.");

    public static readonly Finding NothingKnown = new(
        ProblemSeverity.Error, "NothingKnown", "The ZIP archive holds no file of a kind that is read.", "Unpack it and see what is inside.");

    public static Finding TooManyEntries(int count) => new(
        ProblemSeverity.Error, "TooLarge", SiteFindings.Text($"The ZIP archive has {count:N0} entries."), "Unpack it and read the one file that is wanted.");

    public static Finding Several(IEnumerable<string> names) => new(
        ProblemSeverity.Error, "SeveralFiles", $"The ZIP archive holds several files that could be meant: {string.Join(", ", names.Take(10))}.", "Unpack it and read them one by one.");

    public static Finding Bomb(string name, long most) => new(
        ProblemSeverity.Error, "TooLarge", SiteFindings.Text($"'{name}' in the ZIP archive unpacks to more than {most:N0} bytes, which is out of all proportion."), "Have the file sent again, or unpack it where that is safe.");
}
