namespace Tautline.Formats.Ground.GeoTiff;

/// <summary>The tags that are read: TIFF 6.0, appendix A; OGC GeoTIFF 1.1, section 6; GDAL's own two.</summary>
internal enum TiffTag
{
    ImageWidth = 256,
    ImageLength = 257,
    BitsPerSample = 258,
    Compression = 259,
    Photometric = 262,
    FillOrder = 266,
    StripOffsets = 273,
    SamplesPerPixel = 277,
    RowsPerStrip = 278,
    StripByteCounts = 279,
    PlanarConfiguration = 284,
    Predictor = 317,
    TileWidth = 322,
    TileLength = 323,
    TileOffsets = 324,
    TileByteCounts = 325,
    SampleFormat = 339,
    ModelPixelScale = 33550,
    ModelTiepoint = 33922,
    ModelTransformation = 34264,
    GeoKeyDirectory = 34735,
    GeoDoubleParameters = 34736,
    GeoAsciiParameters = 34737,
    GdalMetadata = 42112,
    GdalNoData = 42113,
}
