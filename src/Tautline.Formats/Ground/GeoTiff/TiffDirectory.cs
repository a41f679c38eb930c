using System.Collections.Frozen;
using System.Text;
using Tautline.Formats.Ground.Reading;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>
/// The first directory of a TIFF file (TIFF 6.0, section 2) or BigTIFF file, which holds the data; further ones are overviews or masks.
/// Every place and length is checked against the file before it is used.
/// </summary>
internal sealed class TiffDirectory
{
    private const int MostEntries = 4096;
    private const int LargestTag = 1 << 28; // bytes; the places of 30 million tiles

    private static readonly FrozenSet<int> Known = Enum.GetValues<TiffTag>().Select(t => (int)t).ToFrozenSet();

    private readonly ByteSource _source;
    private readonly bool _bigTiff;
    private readonly Dictionary<int, Entry> _entries = [];

    private readonly record struct Entry(int Type, long Count, long Offset);

    private TiffDirectory(ByteSource source, bool bigEndian, bool bigTiff) => (_source, BigEndian, _bigTiff) = (source, bigEndian, bigTiff);

    public bool BigEndian { get; }

    /// <summary>Reads it; null where the file has no sound one.</summary>
    public static TiffDirectory? Read(ByteSource source)
    {
        Span<byte> head = stackalloc byte[16];
        if (source.Read(0, head) < 8) return null;
        var bigEndian = head[0] == (byte)'M';
        var directory = new TiffDirectory(source, bigEndian, bigTiff: head[bigEndian ? 3 : 2] == 43);
        return directory.ReadEntries() ? directory : null;
    }

    public bool Has(TiffTag tag) => _entries.ContainsKey((int)tag);

    /// <summary>The whole numbers of a tag; null where it is absent, of another type, or does not lie in the file.</summary>
    public long[]? Numbers(TiffTag tag)
    {
        if (!_entries.TryGetValue((int)tag, out var entry) || entry.Type is not (1 or 3 or 4 or 13 or 16) || Bytes(entry) is not { } bytes) return null;
        var size = SizeOf(entry.Type);
        var numbers = new long[bytes.Length / size];
        for (var i = 0; i < numbers.Length; i++) numbers[i] = Whole(bytes.AsSpan(i * size, size));
        return Array.TrueForAll(numbers, n => n >= 0) ? numbers : null;
    }

    /// <summary>The one number of a tag, or the first of several; otherwise what stands for it when it is absent.</summary>
    public long Number(TiffTag tag, long absent) => Numbers(tag) is [var first, ..] ? first : absent;

    /// <summary>The doubles of a tag; null where it is absent or not of doubles.</summary>
    public double[]? Doubles(TiffTag tag)
    {
        if (!_entries.TryGetValue((int)tag, out var entry) || entry.Type != 12 || Bytes(entry) is not { } bytes) return null;
        var numbers = new double[bytes.Length / 8];
        for (var i = 0; i < numbers.Length; i++) numbers[i] = BitConverter.Int64BitsToDouble(Whole(bytes.AsSpan(8 * i, 8)));
        return numbers;
    }

    /// <summary>The text of a tag without the zero that ends it; null where it is absent or no text.</summary>
    public string? Text(TiffTag tag) =>
        _entries.TryGetValue((int)tag, out var entry) && entry.Type == 2 && Bytes(entry) is { } bytes ? Encoding.UTF8.GetString(bytes).TrimEnd('\0') : null;

    private bool ReadEntries()
    {
        var start = _bigTiff ? Number(8, 8) : Number(4, 4);
        var size = _bigTiff ? 20 : 12;
        if (start < 8 || start >= _source.Length || Number(start, _bigTiff ? 8 : 2) is not (> 0 and <= MostEntries and var count)) return false;
        var first = start + (_bigTiff ? 8 : 2);
        var bytes = new byte[count * size];
        if (_source.Read(first, bytes) < bytes.Length) return false;
        for (var i = 0; i < count; i++)
            if (!AddEntry(bytes.AsSpan((int)(i * size), size), first + i * size)) return false;
        return true;
    }

    /// <summary>False where a tag that matters points out of the file: it was cut off, and without its mark of empty cells they would be ground.</summary>
    private bool AddEntry(ReadOnlySpan<byte> entry, long at)
    {
        var (tag, type) = ((int)Whole(entry[..2]), (int)Whole(entry[2..4]));
        var (count, value) = _bigTiff ? (Whole(entry[4..12]), 12) : (Whole(entry[4..8]), 8);
        var room = _bigTiff ? 8 : 4;
        var size = SizeOf(type);
        if (size == 0 || !Known.Contains(tag)) return true;
        if (count < 0 || count > _source.Length / size) return false;
        var offset = count * size <= room ? at + value : Whole(entry.Slice(value, room));
        if (offset < 0 || offset > _source.Length - count * size) return false;
        _entries.TryAdd(tag, new(type, count, offset));
        return true;
    }

    private byte[]? Bytes(Entry entry)
    {
        if (entry.Count * SizeOf(entry.Type) > LargestTag) return null;
        var bytes = new byte[entry.Count * SizeOf(entry.Type)];
        return _source.Read(entry.Offset, bytes) == bytes.Length ? bytes : null;
    }

    private long Number(long offset, int size)
    {
        Span<byte> bytes = stackalloc byte[8];
        return _source.Read(offset, bytes[..size]) == size ? Whole(bytes[..size]) : -1;
    }

    // Eight bytes may come out below zero, which no caller takes.
    private long Whole(ReadOnlySpan<byte> bytes)
    {
        var number = 0L;
        unchecked
        {
            for (var i = 0; i < bytes.Length; i++) number = number << 8 | bytes[BigEndian ? i : bytes.Length - 1 - i];
        }
        return number;
    }

    private static int SizeOf(int type) => type switch
    {
        1 or 2 or 6 or 7 => 1,
        3 or 8 => 2,
        4 or 9 or 11 or 13 => 4,
        5 or 10 or 12 or 16 or 17 or 18 => 8,
        _ => 0,
    };
}
