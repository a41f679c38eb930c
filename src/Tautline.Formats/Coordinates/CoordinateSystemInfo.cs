namespace Tautline.Formats.Coordinates;

/// <summary>The grid an import was laid on, and how its lengths differ from those on the ground.</summary>
public sealed record CoordinateSystemInfo
{
    /// <summary>EPSG number of the grid; null for a local system.</summary>
    public int? EpsgCode { get; init; }

    /// <summary>Name of the grid.</summary>
    public required string Name { get; init; }

    /// <summary>How the file's own coordinates were read: "WGS 84 longitude/latitude", "EPSG:2992 in international feet"...</summary>
    public required string FileCoordinates { get; init; }

    /// <summary>Where the grid's constants come from.</summary>
    public required string Source { get; init; }

    /// <summary>Middle of the lines' bounding box; null for a local system.</summary>
    public GeographicPoint? Middle { get; init; }

    /// <summary>Grid length over length on the ellipsoid, at the middle.</summary>
    public double PointScaleFactor { get; init; } = 1;

    /// <summary>Length on the ellipsoid over length on the ground at <see cref="SiteElevationMetres"/>.</summary>
    public double ElevationFactor { get; init; } = 1;

    /// <summary>The height the elevation factor is for, metres.</summary>
    public double SiteElevationMetres { get; init; }

    /// <summary>Grid length over ground length: the product of the two.</summary>
    public double CombinedFactor => PointScaleFactor * ElevationFactor;

    /// <summary>
    /// Largest difference of the point scale factor within the lines' bounding box from that at the middle; how far, in
    /// proportion, a ground length may be off because one factor serves the whole outline.
    /// </summary>
    public double ScaleSpread { get; init; }

    /// <summary>True when the imported lengths are ground lengths.</summary>
    public required bool LengthsAreGround { get; init; }
}
