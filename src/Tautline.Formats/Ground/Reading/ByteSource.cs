using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Reading;

/// <summary>The bytes of a file, to be read at any place.</summary>
internal abstract class ByteSource
{
    private const int MostBuffered = 1 << 16;

    public abstract long Length { get; }

    /// <summary>Reads as many bytes as there are from a place, at most as many as fit.</summary>
    public abstract int Read(long offset, Span<byte> into);

    /// <summary>All bytes, or a part of them, in order.</summary>
    public Stream Open(long offset = 0, long? length = null)
    {
        var start = Math.Min(offset, Length);
        var there = Math.Min(length ?? long.MaxValue, Length - start);
        return new BufferedStream(new SourceStream(this, start, there), (int)Math.Clamp(there, 1, MostBuffered));
    }

    public static ByteSource Of(ReadOnlyMemory<byte> bytes) => new InMemory(bytes);

    /// <param name="stream">One that can seek.</param>
    public static ByteSource Of(Stream stream) => new InStream(stream);

    private sealed class InMemory(ReadOnlyMemory<byte> bytes) : ByteSource
    {
        public override long Length => bytes.Length;

        public override int Read(long offset, Span<byte> into)
        {
            if (offset < 0 || offset >= bytes.Length) return 0;
            var count = Math.Min(into.Length, bytes.Length - (int)offset);
            bytes.Span.Slice((int)offset, count).CopyTo(into);
            return count;
        }
    }

    private sealed class InStream(Stream stream) : ByteSource
    {
        public override long Length { get; } = stream.Length;

        public override int Read(long offset, Span<byte> into)
        {
            if (offset < 0 || offset >= Length) return 0;
            if (stream.Position != offset) stream.Position = offset;
            return stream.ReadAtLeast(into, into.Length, throwOnEndOfStream: false);
        }
    }
}

/// <summary>A part of a source as a stream that is read in order.</summary>
internal sealed class SourceStream(ByteSource source, long offset, long length) : ForwardStream
{
    private long _at;

    public override long Length => length;

    public override long Position
    {
        get => _at;
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        var want = (int)Math.Min(buffer.Length, length - _at);
        var got = want > 0 ? source.Read(offset + _at, buffer[..want]) : 0;
        _at += got;
        return got;
    }
}
