using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>What a sample is.</summary>
internal enum SampleKind
{
    Unsigned = 1,
    Signed = 2,
    Float = 3,
}

/// <summary>How the samples of the first band lie in the file (TIFF 6.0, sections 3, 14, 15; Technical Note 3 for predictor 3).</summary>
internal sealed record TiffLayout
{
    private const int LongestSide = 1 << 27;
    private const int LongestRow = 1 << 26; // bytes of one row of a block

    public int Columns { get; init; }
    public int Rows { get; init; }
    public required int BytesPerSample { get; init; }
    public required SampleKind Kind { get; init; }

    /// <summary>Samples beside each other in a block: all bands, or one where each band has blocks of its own.</summary>
    public required int Stride { get; init; }

    public required int Compression { get; init; }
    public required int Predictor { get; init; }
    public required bool BigEndian { get; init; }

    /// <summary>Columns of a block; the last tile of a row is padded.</summary>
    public int BlockColumns { get; init; }

    /// <summary>Rows of a block; the last strip is cut off, the last tile padded.</summary>
    public int BlockRows { get; init; }

    /// <summary>Where each block lies, row by row; 0 and 0 where there is none.</summary>
    public required long[] Offsets { get; init; }

    public required long[] ByteCounts { get; init; }

    public int Across => (Columns + BlockColumns - 1) / BlockColumns;

    public int RowBytes => BlockColumns * Stride * BytesPerSample;

    /// <summary>The layout, or why the file is not read.</summary>
    public static (TiffLayout? Layout, Finding? Refused) Of(TiffDirectory tiff)
    {
        if (WhyRefused(tiff) is { } refused) return (null, refused);
        var (columns, rows) = (tiff.Number(TiffTag.ImageWidth, 0), tiff.Number(TiffTag.ImageLength, 0));
        if (columns is < 1 or > LongestSide || rows is < 1 or > LongestSide) return (null, GeoTiffFindings.BadSize(columns, rows));
        var tiled = tiff.Has(TiffTag.TileOffsets);
        var (blockColumns, blockRows) = tiled
            ? (tiff.Number(TiffTag.TileWidth, 0), tiff.Number(TiffTag.TileLength, 0))
            : (columns, Math.Min(tiff.Number(TiffTag.RowsPerStrip, rows), rows));
        var stride = tiff.Number(TiffTag.PlanarConfiguration, 1) == 2 ? 1 : tiff.Number(TiffTag.SamplesPerPixel, 1);
        var bytes = tiff.Number(TiffTag.BitsPerSample, 1) / 8;
        if (blockColumns is < 1 or > LongestRow || blockRows is < 1 or > LongestSide || stride is < 1 or > 1024 || blockColumns * stride * bytes > LongestRow)
            return (null, GeoTiffFindings.BadBlocks);
        var layout = Of(tiff, tiled, (int)stride) with { Columns = (int)columns, Rows = (int)rows, BlockColumns = (int)blockColumns, BlockRows = (int)blockRows };
        return layout.BlocksAreThere() ? (layout, null) : (null, GeoTiffFindings.BadBlocks);
    }

    private static TiffLayout Of(TiffDirectory tiff, bool tiled, int stride) => new()
    {
        BytesPerSample = (int)tiff.Number(TiffTag.BitsPerSample, 1) / 8,
        Kind = (SampleKind)tiff.Number(TiffTag.SampleFormat, 1),
        Stride = stride,
        Compression = (int)tiff.Number(TiffTag.Compression, 1),
        Predictor = (int)tiff.Number(TiffTag.Predictor, 1),
        BigEndian = tiff.BigEndian,
        Offsets = tiff.Numbers(tiled ? TiffTag.TileOffsets : TiffTag.StripOffsets) ?? [],
        ByteCounts = tiff.Numbers(tiled ? TiffTag.TileByteCounts : TiffTag.StripByteCounts) ?? [],
    };

    private bool BlocksAreThere()
    {
        var down = (Rows + BlockRows - 1) / BlockRows;
        return Offsets.Length >= (long)Across * down && ByteCounts.Length == Offsets.Length;
    }

    private static Finding? WhyRefused(TiffDirectory tiff)
    {
        var photometric = tiff.Number(TiffTag.Photometric, 1);
        if (photometric > 1) return GeoTiffFindings.Picture(photometric);
        var compression = tiff.Number(TiffTag.Compression, 1);
        if (compression is not (1 or 5 or 8 or 32773 or 32946)) return GeoTiffFindings.CompressionNotRead(compression);
        var (bits, kind) = (tiff.Number(TiffTag.BitsPerSample, 1), tiff.Number(TiffTag.SampleFormat, 1));
        if (!(kind is 1 or 2 ? bits is 8 or 16 or 32 : kind == 3 && bits is 32 or 64)) return GeoTiffFindings.SampleNotRead(bits, kind);
        if (tiff.Numbers(TiffTag.BitsPerSample) is { } all && all.Distinct().Count() > 1) return GeoTiffFindings.BandsDiffer;
        var predictor = tiff.Number(TiffTag.Predictor, 1);
        if (predictor is not (1 or 2) && !(predictor == 3 && kind == 3)) return GeoTiffFindings.PredictorNotRead(predictor);
        return tiff.Number(TiffTag.FillOrder, 1) == 1 ? null : GeoTiffFindings.FillOrderNotRead;
    }
}
