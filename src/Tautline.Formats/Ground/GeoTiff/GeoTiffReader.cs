using System.Globalization;
using Tautline.Formats.Ground.Grids;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>
/// Reads the first band of a GeoTIFF (TIFF 6.0 and BigTIFF; OGC GeoTIFF 1.1): strips or tiles, uncompressed, LZW, DEFLATE or PackBits, predictors 1 to
/// 3, whole numbers and floats. Of a window only the blocks that it touches are decompressed, a row at a time.
/// </summary>
internal sealed class GeoTiffReader
{
    private const long SmallEnough = 1 << 24;
    private const long MostUnpacked = 2000;

    private readonly ByteSource _source;
    private readonly GroundOptions _options;
    private readonly ProblemList _problems;
    private GroundClaims _claims = GroundClaims.None;
    private GroundExtent? _extent;

    private GeoTiffReader(ByteSource source, GroundOptions options) => (_source, _options, _problems) = (source, options, new(options.SourceName));

    public static GroundReading Read(ByteSource source, GroundOptions options)
    {
        var reader = new GeoTiffReader(source, options);
        var content = reader.Content();
        return new()
        {
            Format = GroundFormat.GeoTiff,
            Content = content,
            Claims = reader._claims,
            Extent = reader._extent,
            Problems = reader._problems.ToImmutable(),
        };
    }

    private GridContent? Content()
    {
        if (TiffDirectory.Read(_source) is not { } tiff) return Refuse(GeoTiffFindings.NotTiff);
        var (layout, refused) = TiffLayout.Of(tiff);
        if (layout is null) return Refuse(refused!.Value);
        var keys = new GeoKeys(tiff);
        var notes = GdalMetadata.Of(tiff.Text(TiffTag.GdalMetadata));
        if (keys.IsEmpty) _problems.Add(GeoTiffFindings.NoKeys);
        _claims = new GeoTiffClaims(keys, notes, _problems).Read();
        var (shape, nowhere) = GeoTiffPlace.Of(tiff, layout, keys.Number(GeoKey.RasterType) == 2);
        if (shape is null) return Refuse(nowhere!.Value);
        _extent = shape.Extent;
        if (GridChecks.Wrong(shape, _options) is { } wrong) return Refuse(wrong);
        if (IsHollow(layout, GridPart.Of(shape, _options.Window))) return Refuse(GeoTiffFindings.Hollow);
        TellBands(tiff);
        return Heights(layout, shape, notes, NoData(tiff));
    }

    // No packing of real heights comes near; memory is not taken on the word of a few bytes.
    private bool IsHollow(TiffLayout layout, GridPart part) => part.Cells * layout.BytesPerSample > SmallEnough + MostUnpacked * _source.Length;

    private void TellBands(TiffDirectory tiff)
    {
        if (tiff.Number(TiffTag.SamplesPerPixel, 1) is > 1 and var bands) _problems.Add(GeoTiffFindings.BandsLeftOut(bands));
    }

    private GridContent? Heights(TiffLayout layout, GridShape shape, GdalMetadata notes, double? noData)
    {
        var part = GridPart.Of(shape, _options.Window);
        var builder = new GridBuilder(shape, part, wide: layout.Kind != SampleKind.Float ? layout.BytesPerSample == 4 : layout.BytesPerSample == 8);
        var rule = new SampleRule(layout, noData, notes.Scale, notes.Offset);
        if (notes is not { Scale: 1, Offset: 0 }) _problems.Add(GeoTiffFindings.Scaled(notes.Scale, notes.Offset));
        var blocks = new RasterBlocks(_source, layout, part, rule);
        if (blocks.ReadInto(builder) is { } cutOff) return Refuse(GeoTiffFindings.BlockCutOff(cutOff));
        if (blocks.Missing > 0) _problems.Add(GeoTiffFindings.BlocksMissing(blocks.Missing));
        if (builder.Valid == 0) return Refuse(GridFindings.NoHeights);
        var content = builder.Build();
        _problems.Add(GridFindings.Grid(content));
        return content;
    }

    private double? NoData(TiffDirectory tiff)
    {
        if (_options.NoData is { } stated) return stated;
        if (tiff.Text(TiffTag.GdalNoData)?.Trim() is not { Length: > 0 } text) return null;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var mark)) return mark;
        _problems.Add(GeoTiffFindings.NoDataBad(text.Length > 40 ? text[..40] : text));
        return null;
    }

    private GridContent? Refuse(Finding finding)
    {
        _problems.Add(finding);
        return null;
    }
}

/// <summary>From a stored number to a height.</summary>
internal sealed class SampleRule(TiffLayout layout, double? noData, double scale, double offset)
{
    // Compared in the sample's own precision: the mark was rounded to it when it was stored.
    private readonly double _mark = noData is not { } mark ? double.NaN : layout is { Kind: SampleKind.Float, BytesPerSample: 4 } ? (float)mark : mark;

    /// <summary>The height; NaN where there is none.</summary>
    public double Height(double stored) => stored == _mark ? double.NaN : scale == 1 && offset == 0 ? stored : stored * scale + offset;
}
