using System.Buffers.Binary;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>Turns the bytes of one row of a block into samples: undoes the predictor, then the byte order.</summary>
internal sealed class RowSamples(TiffLayout layout)
{
    private readonly byte[] _planes = new byte[layout.Predictor == 3 ? layout.RowBytes : 0];

    // Planes of predictor 3 lie most significant byte first, whatever the file's own order.
    private readonly bool _bigEndian = layout.Predictor == 3 || layout.BigEndian;

    /// <summary>Undoes the predictor in place.</summary>
    public void Undo(Span<byte> row)
    {
        if (layout.Predictor == 2) AddDifferences(row);
        else if (layout.Predictor == 3) JoinPlanes(row);
    }

    /// <summary>The first band's sample of a column, as a number.</summary>
    public double At(ReadOnlySpan<byte> row, int column)
    {
        var size = layout.BytesPerSample;
        var bytes = row.Slice(column * layout.Stride * size, size);
        if (layout.Kind == SampleKind.Float) return size == 4 ? BitConverter.UInt32BitsToSingle((uint)Whole(bytes)) : BitConverter.UInt64BitsToDouble(Whole(bytes));
        var whole = Whole(bytes);
        if (layout.Kind == SampleKind.Unsigned) return whole;
        return unchecked(size switch
        {
            1 => (sbyte)whole,
            2 => (short)whole,
            _ => (int)whole,
        });
    }

    private ulong Whole(ReadOnlySpan<byte> bytes) => (bytes.Length, _bigEndian) switch
    {
        (1, _) => bytes[0],
        (2, true) => BinaryPrimitives.ReadUInt16BigEndian(bytes),
        (2, false) => BinaryPrimitives.ReadUInt16LittleEndian(bytes),
        (4, true) => BinaryPrimitives.ReadUInt32BigEndian(bytes),
        (4, false) => BinaryPrimitives.ReadUInt32LittleEndian(bytes),
        (_, true) => BinaryPrimitives.ReadUInt64BigEndian(bytes),
        _ => BinaryPrimitives.ReadUInt64LittleEndian(bytes),
    };

    /// <summary>Predictor 2 (TIFF 6.0, section 14): each sample is the difference from the one before it of the same band, as a whole number.</summary>
    private void AddDifferences(Span<byte> row)
    {
        var size = layout.BytesPerSample;
        for (var at = layout.Stride * size; at < row.Length; at += size)
            Put(row.Slice(at, size), unchecked(Whole(row.Slice(at, size)) + Whole(row.Slice(at - layout.Stride * size, size))));
    }

    private void Put(Span<byte> into, ulong whole)
    {
        for (var i = 0; i < into.Length; i++)
            into[_bigEndian ? into.Length - 1 - i : i] = unchecked((byte)(whole >> (8 * i)));
    }

    /// <summary>Predictor 3 (Technical Note 3): differences of bytes over the whole row, which is cut into planes, one for each byte of a sample.</summary>
    private void JoinPlanes(Span<byte> row)
    {
        var (size, samples) = (layout.BytesPerSample, row.Length / layout.BytesPerSample);
        for (var i = layout.Stride; i < row.Length; i++) row[i] = unchecked((byte)(row[i] + row[i - layout.Stride]));
        row.CopyTo(_planes);
        for (var sample = 0; sample < samples; sample++)
            for (var plane = 0; plane < size; plane++)
                row[sample * size + plane] = _planes[plane * samples + sample];
    }
}
