using System.Buffers.Binary;
using System.Collections.Immutable;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Shape;

/// <summary>The table beside a shapefile (dBASE III), read row by row in step with the shapes.</summary>
internal sealed class DbfTable
{
    private const int MostFields = 512;

    private readonly Stream _stream;
    private readonly byte[] _row;
    private readonly List<(string Name, char Type, int From, int Length)> _fields = [];
    private readonly int _page;

    private DbfTable(Stream stream, int rowLength, int page) => (_stream, _row, _page) = (stream, new byte[rowLength], page);

    /// <summary>Rows the head tells of.</summary>
    public long Rows { get; private init; }

    /// <summary>Rows read.</summary>
    public long Read { get; private set; }

    /// <summary>The table behind its head; null, with the reason told, where it has none.</summary>
    public static DbfTable? Open(Stream stream, string? codePage, ProblemList problems)
    {
        var head = new byte[32];
        if (stream.ReadAtLeast(head, 32, throwOnEndOfStream: false) < 32) return Broken(problems);
        int headLength = BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(8)), rowLength = BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(10));
        if (headLength < 33 || rowLength < 1) return Broken(problems);
        var rest = new byte[headLength - 32];
        if (stream.ReadAtLeast(rest, rest.Length, throwOnEndOfStream: false) < rest.Length) return Broken(problems);
        var table = new DbfTable(stream, rowLength, Page(codePage, head[29], problems)) { Rows = BinaryPrimitives.ReadUInt32LittleEndian(head.AsSpan(4)) };
        var from = 1;
        for (var at = 0; at + 32 <= rest.Length && rest[at] != 0x0D && table._fields.Count < MostFields; at += 32)
        {
            var end = rest.AsSpan(at, 11).IndexOf((byte)0);
            int length = rest[at + 16];
            if (from + length > rowLength) break;
            table._fields.Add((CodePages.Decode(rest.AsSpan(at, end < 0 ? 11 : end), table._page).Trim(), (char)rest[at + 11], from, length));
            from += length;
        }
        return table;
    }

    /// <summary>The next row as texts, empty ones left out; null where there is none, or where it is deleted. Deleted rows still count for the order.</summary>
    public ImmutableSortedDictionary<string, string>? Next(out bool deleted)
    {
        deleted = false;
        if (Read >= Rows || _stream.ReadAtLeast(_row, _row.Length, throwOnEndOfStream: false) < _row.Length) return null;
        Read++;
        deleted = _row[0] == '*';
        var tags = SiteFeature.NoTags.ToBuilder();
        foreach (var (name, _, from, length) in _fields)
        {
            var text = CodePages.Decode(_row.AsSpan(from, length), _page).Trim(' ', '\0');
            // A field full of asterisks is a number that did not fit.
            if (name.Length > 0 && text.AsSpan().ContainsAnyExcept('*')) tags[name] = text;
        }
        return tags.ToImmutable();
    }

    private static DbfTable? Broken(ProblemList problems)
    {
        problems.Add(ShapeFindings.DbfNotRead);
        return null;
    }

    /// <summary>By the .cpg file, else by the language byte of the head, else guessed.</summary>
    private static int Page(string? stated, byte language, ProblemList problems)
    {
        if (!string.IsNullOrWhiteSpace(stated))
        {
            if (CodePages.Find(stated) is { } page) return page;
            problems.Add(ShapeFindings.CodePage(stated.Trim()));
        }
        return language switch
        {
            0x01 => 437,
            0x02 or 0x37 => 850,
            0x03 or 0x57 or 0x58 or 0x59 => 1252,
            0x64 => 852,
            0x65 or 0x26 => 866,
            0x66 => 865,
            0xC8 => 1250,
            0xC9 => 1251,
            0xCA => 1254,
            0xCB => 1253,
            0xCC => 1257,
            _ => 1252,
        };
    }
}
