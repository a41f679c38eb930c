using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Import;

/// <summary>What a reader is told beside the file.</summary>
public sealed record ImportOptions
{
    /// <summary>64 MiB: an outline of a million corners is smaller.</summary>
    public const int DefaultMaximumBytes = 64 * 1024 * 1024;

    /// <summary>The file's name, for messages.</summary>
    public string SourceName { get; init; } = "file";

    /// <summary>The system the user states; null to take what the format itself lays down.</summary>
    public CoordinateSystemChoice? CoordinateSystem { get; init; }

    /// <summary>Ground lengths unless grid lengths are asked for.</summary>
    public LengthKind Lengths { get; init; } = LengthKind.Ground;

    /// <summary>
    /// Height of the site in metres for ground lengths; null to take the mean of the file's elevations when every
    /// position has one, and 0 when not.
    /// </summary>
    public double? SiteElevationMetres { get; init; }

    /// <summary>Unit of the file's elevations; null to take the unit of its coordinates, and metres for degrees.</summary>
    public LinearUnit? ElevationUnit { get; init; }

    /// <summary>Larger input is refused.</summary>
    public int MaximumBytes { get; init; } = DefaultMaximumBytes;
}
