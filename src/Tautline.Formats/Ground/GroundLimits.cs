namespace Tautline.Formats.Ground;

/// <summary>How much a reader takes in before it refuses; a file's own figures are checked against them before memory is taken.</summary>
public sealed record GroundLimits
{
    /// <summary>Bytes of survey text, which is held whole.</summary>
    public long TextBytes { get; init; } = 64L * 1024 * 1024;

    /// <summary>Bytes of LandXML and of an ASCII grid, which are read in passing; and of a GeoTIFF.</summary>
    public long StreamedBytes { get; init; } = 8L * 1024 * 1024 * 1024;

    /// <summary>Heights kept of a grid: four or eight bytes each.</summary>
    public int Cells { get; init; } = 50_000_000;

    /// <summary>Points kept of a surface; faces may be twice as many.</summary>
    public int Points { get; init; } = 5_000_000;
}
