using System.IO.Compression;
using Tautline.Formats.Ground.Reading;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>The bytes of a block in order, decompressed as they are asked for, so that no block is ever held.</summary>
internal abstract class BlockBytes : IDisposable
{
    /// <summary>Fills all of it; false where the block ends before, or cannot be decompressed.</summary>
    public bool Fill(Span<byte> into)
    {
        try
        {
            while (!into.IsEmpty)
            {
                var got = Read(into);
                if (got <= 0) return false;
                into = into[got..];
            }
            return true;
        }
        catch (Exception broken) when (broken is InvalidDataException || Refused(broken))
        {
            return false;
        }
    }

    /// <summary>The decompressor's own exception for a header it will not take has no public name; a disk that fails is not meant.</summary>
    private static bool Refused(Exception broken) => broken is IOException && broken.GetType().Namespace == typeof(ZLibStream).Namespace;

    public virtual void Dispose() { }

    protected abstract int Read(Span<byte> into);

    /// <summary>Opens a block; its compression is one that <see cref="TiffLayout"/> lets pass.</summary>
    public static BlockBytes Open(ByteSource source, long offset, long count, int compression)
    {
        var bytes = source.Open(offset, count);
        return compression switch
        {
            5 => new LzwBytes(bytes),
            8 or 32946 => new StreamBytes(new ZLibStream(bytes, CompressionMode.Decompress)),
            32773 => new PackBitsBytes(bytes),
            _ => new StreamBytes(bytes),
        };
    }

    private sealed class StreamBytes(Stream stream) : BlockBytes
    {
        protected override int Read(Span<byte> into) => stream.Read(into);

        public override void Dispose()
        {
            base.Dispose();
            stream.Dispose();
        }
    }
}

/// <summary>PackBits (TIFF 6.0, section 9).</summary>
internal sealed class PackBitsBytes(Stream stream) : BlockBytes
{
    private int _left;
    private int _repeated = -1;

    protected override int Read(Span<byte> into)
    {
        while (_left == 0)
        {
            var count = stream.ReadByte();
            if (count < 0) return 0;
            // 128 does nothing; above it a byte is repeated, below it bytes follow.
            if (count == 128) continue;
            (_left, _repeated) = count > 128 ? (257 - count, stream.ReadByte()) : (count + 1, -1);
            if (count > 128 && _repeated < 0) return 0;
        }
        var many = Math.Min(_left, into.Length);
        if (_repeated >= 0) into[..many].Fill((byte)_repeated);
        else many = stream.Read(into[..many]);
        _left -= many;
        return many;
    }
}

/// <summary>LZW as TIFF 6.0, section 13 has it: most significant bit first, codes of 9 to 12 bits, a width grown one code early.</summary>
internal sealed class LzwBytes(Stream stream) : BlockBytes
{
    private const int Clear = 256;
    private const int End = 257;
    private const int Most = 4096;

    private readonly int[] _before = new int[Most];
    private readonly byte[] _letter = new byte[Most];
    private readonly byte[] _string = new byte[Most];
    private int _stringAt = Most; // what is left of the last string lies from here to the end
    private int _next = End + 1;
    private int _width = 9;
    private int _last = -1;
    private long _bits;
    private int _bitCount;

    protected override int Read(Span<byte> into)
    {
        if (_stringAt == Most && !Decode()) return 0;
        var many = Math.Min(into.Length, Most - _stringAt);
        _string.AsSpan(_stringAt, many).CopyTo(into);
        _stringAt += many;
        return many;
    }

    /// <summary>Lays the string of the next code at the end of the buffer; false at the end, or where the code cannot be.</summary>
    private bool Decode()
    {
        var code = NextCode();
        while (code == Clear)
        {
            (_next, _width, _last) = (End + 1, 9, -1);
            code = NextCode();
        }
        if (code is < 0 or End || code > _next || (code >= _next && _last < 0) || (_last < 0 && code > 255)) return false;
        if (code == _next && _next >= Most) return false;
        // A code not yet in the table is the last string and its own first letter.
        var isNew = code == _next;
        Unroll(isNew ? _last : code, isNew);
        if (_last >= 0 && _next < Most)
        {
            (_before[_next], _letter[_next]) = (_last, _string[_stringAt]);
            _next++;
            if (_next == (1 << _width) - 1 && _width < 12) _width++;
        }
        _last = code;
        return true;
    }

    private void Unroll(int code, bool isNew)
    {
        _stringAt = isNew ? Most - 1 : Most;
        for (; code > 255; code = _before[code]) _string[--_stringAt] = _letter[code];
        _string[--_stringAt] = (byte)code;
        if (isNew) _string[Most - 1] = _string[_stringAt];
    }

    private int NextCode()
    {
        while (_bitCount < _width)
        {
            var read = stream.ReadByte();
            if (read < 0) return -1;
            _bits = (_bits << 8 | (long)read) & 0xFFFFFF;
            _bitCount += 8;
        }
        _bitCount -= _width;
        return (int)(_bits >> _bitCount) & ((1 << _width) - 1);
    }
}
