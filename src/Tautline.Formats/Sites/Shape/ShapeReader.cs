using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Shape;

/// <summary>
/// Reads a shapefile (ESRI Shapefile Technical Description, July 1998) record by record; the .shx is not needed. Beside it, where they are given: .dbf, .prj, .cpg.
/// </summary>
internal sealed class ShapeReader
{
    private const double NoMeasure = -1e38;

    private readonly Stream _stream;
    private readonly SiteCollector _found;
    private readonly DbfTable? _table;
    private byte[] _record = new byte[4096];
    private long _at;
    private int _noHeights, _lastHeights, _measuresNotCounted;

    private ShapeReader(Stream stream, SiteCollector found, DbfTable? table) => (_stream, _found, _table) = (stream, found, table);

    public static void Read(Stream stream, SiteCollector found, Func<string, Stream?> side)
    {
        found.FormatName = "Esri shapefile";
        var system = Side(side, "prj");
        if (system is not null) found.Claims = WrittenSystem.Claims(system, found.Problems);
        else found.Problems.Add(ShapeFindings.NoPrj);
        using var dbf = side("dbf");
        if (dbf is null) found.Problems.Add(ShapeFindings.NoDbf);
        var table = dbf is null ? null : DbfTable.Open(dbf, Side(side, "cpg"), found.Problems);
        new ShapeReader(stream, found, table).Records();
    }

    private static string? Side(Func<string, Stream?> side, string ending)
    {
        using var stream = side(ending);
        if (stream is null) return null;
        var bytes = new byte[64 * 1024];
        var got = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        ReadOnlySpan<byte> text = bytes.AsSpan(0, got);
        return text.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? Encoding.UTF8.GetString(text[3..]) : CodePages.Guess(text);
    }

    private void Records()
    {
        if (!Fill(100) || BinaryPrimitives.ReadInt32BigEndian(_record) != 9994) throw new SiteStop(ShapeFindings.NotShape);
        var stated = 2L * BinaryPrimitives.ReadUInt32BigEndian(_record.AsSpan(24));
        var number = 0;
        while (Fill(8) && OnHeader(number + 1))
        {
            var length = 2L * BinaryPrimitives.ReadUInt32BigEndian(_record.AsSpan(4));
            number++;
            if (length > _found.Options.Limits.Bytes || length > int.MaxValue - 64) throw new SiteStop(ShapeFindings.RecordTooLong(number, length));
            if (!Fill((int)length)) throw new SiteStop(ShapeFindings.CutOff(number));
            var tags = _table?.Next(out var deleted) ?? Missing(out deleted);
            if (deleted) _found.Skip("record", "its row is deleted");
            else Shape(number, (int)length, tags);
            if ((number & 0xFFF) != 0) continue;
            _found.Options.Cancelled.ThrowIfCancellationRequested();
            _found.Options.Progress?.Invoke(_at);
        }
        if (_measuresNotCounted > 0) _found.Problems.Add(ShapeFindings.MeasuresNotCounted(_measuresNotCounted));
        if (stated != _at) _found.Problems.Add(ShapeFindings.LengthDiffers(stated, _at));
        if (_table is not null && _table.Rows != number) _found.Problems.Add(ShapeFindings.RowsDiffer(_table.Rows, number));
        if (_noHeights > 0) _found.Problems.Add(ShapeFindings.HeightsNotNumbers(_noHeights));
    }

    /// <summary>
    /// Some programs leave the measures behind the heights out of a record's length, and write them all the same: where the next head is not where the length says
    /// but behind them, it is taken there. False where the file ends behind them.
    /// </summary>
    private bool OnHeader(int number)
    {
        if (_lastHeights == 0 || !_stream.CanSeek || BinaryPrimitives.ReadInt32BigEndian(_record) == number) return true;
        var back = _stream.Position;
        var next = back - 8 + 16 + 8L * _lastHeights;
        if (next > _stream.Length) return true;
        _stream.Position = next;
        var head = new byte[8];
        var got = _stream.ReadAtLeast(head, 8, throwOnEndOfStream: false);
        if (got != 0 && (got < 8 || BinaryPrimitives.ReadInt32BigEndian(head) != number))
        {
            _stream.Position = back;
            return true;
        }
        _measuresNotCounted++;
        head.CopyTo(_record, 0);
        _at += next - back + got;
        return got != 0;
    }

    private static ImmutableSortedDictionary<string, string> Missing(out bool deleted)
    {
        deleted = false;
        return SiteFeature.NoTags;
    }

    /// <summary>Reads exactly so many bytes; false where the file ends before. A length in the file takes no memory until its bytes are there.</summary>
    private bool Fill(int count)
    {
        var have = 0;
        while (have < count)
        {
            if (have == _record.Length || _record.Length < Math.Min(count, 4096)) Array.Resize(ref _record, (int)Math.Min(count, 2L * Math.Max(_record.Length, 4096)));
            var got = _stream.Read(_record, have, Math.Min(count, _record.Length) - have);
            if (got == 0) return false;
            have += got;
            _at += got;
        }
        return true;
    }

    private ReadOnlySpan<byte> At(int offset, int length) => _record.AsSpan(offset, length);

    private int Int(int offset) => BinaryPrimitives.ReadInt32LittleEndian(At(offset, 4));

    private double Number(int offset) => BinaryPrimitives.ReadDoubleLittleEndian(At(offset, 8));

    private void Shape(int number, int length, ImmutableSortedDictionary<string, string> tags)
    {
        var type = length >= 4 ? Int(0) : 0;
        var (kind, extra) = (type % 10, type / 10);
        _lastHeights = 0;
        if (type == 0) _found.Skip("record", "it has no shape");
        else if (type is 31 || extra is < 0 or > 2 || kind is not (1 or 3 or 5 or 8)) _found.Skip($"shape of type {type}", "no point, line or area");
        else if (kind == 1) Point(number, length, extra == 1, tags);
        else if (kind == 8) Points(number, length, extra == 1, tags);
        else Parts(number, length, kind == 5, extra == 1, tags);
    }

    private double Height(int offset, int length)
    {
        if (offset + 8 > length) return double.NaN;
        var z = Number(offset);
        if (double.IsFinite(z) && z > NoMeasure) return z;
        _noHeights++;
        return double.NaN;
    }

    private static string Label(ImmutableSortedDictionary<string, string> tags)
    {
        foreach (var key in (string[])["NAME", "LABEL", "TITLE"])
            foreach (var tag in tags)
                if (tag.Key.Equals(key, StringComparison.OrdinalIgnoreCase)) return tag.Value;
        return "";
    }

    private static SiteFeature Feature(int number, string kind, ImmutableSortedDictionary<string, string> tags) => new()
    {
        Number = number,
        Kind = kind,
        Layer = "",
        Label = Label(tags),
        Tags = tags,
        Vertices = [],
    };

    private void Point(int number, int length, bool heights, ImmutableSortedDictionary<string, string> tags)
    {
        if (length < 20) Bad(number);
        else _found.Point(Feature(number, "Point", tags) with { Vertices = [new(Number(4), Number(12), heights ? Height(20, length) : double.NaN)] });
    }

    private void Points(int number, int length, bool heights, ImmutableSortedDictionary<string, string> tags)
    {
        var count = length >= 40 ? Int(36) : -1;
        if (count < 0 || 40 + 16L * count > length)
        {
            Bad(number);
            return;
        }
        var z = 40 + 16 * count + 16;
        for (var i = 0; i < count; i++)
            _found.Point(Feature(number, "MultiPoint", tags) with { Part = i + 1, Vertices = [new(Number(40 + 16 * i), Number(48 + 16 * i), heights ? Height(z + 8 * i, length) : double.NaN)] });
    }

    private void Bad(int number)
    {
        _found.Problems.Add(ShapeFindings.BadRecord, number);
        _found.Skip("record", "its counts do not fit its length");
    }

    private void Parts(int number, int length, bool area, bool heights, ImmutableSortedDictionary<string, string> tags)
    {
        var (parts, count) = length >= 44 ? (Int(36), Int(40)) : (-1, -1);
        if (parts < 0 || count < 0 || 44 + 4L * parts + 16L * count > length)
        {
            Bad(number);
            return;
        }
        int places = 44 + 4 * parts, z = places + 16 * count + 16;
        if (heights && z + 8L * count == length) _lastHeights = count;
        for (var part = 0; part < parts; part++)
        {
            var (from, to) = (Int(44 + 4 * part), part + 1 < parts ? Int(48 + 4 * part) : count);
            if (from < 0 || to > count || from >= to)
            {
                Bad(number);
                return;
            }
            List<SiteVertex> vertices = new(to - from);
            for (var i = from; i < to; i++) vertices.Add(new(Number(places + 16 * i), Number(places + 16 * i + 8), heights ? Height(z + 8 * i, length) : double.NaN));
            // An outer ring runs clockwise, a hole the other way; parts may be unclosed.
            var role = !area ? "" : SiteGeometry.Area([.. vertices]) > 0 ? "hole" : "outer";
            var own = Feature(number, area ? "Polygon" : "PolyLine", role.Length > 0 && parts > 1 ? tags.SetItem("ring", role) : tags) with { Part = part + 1, Closed = area };
            _found.Line(own, vertices);
        }
    }
}
