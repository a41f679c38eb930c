namespace Tautline.Formats.Coordinates;

/// <summary>A map grid: everything needed to go from degrees to it and back. Angles in degrees.</summary>
internal sealed record ProjectedSystem
{
    public required int EpsgCode { get; init; }
    public required string Name { get; init; }
    public required ReferenceEllipsoid Ellipsoid { get; init; }
    public required LinearUnit Unit { get; init; }
    public required ProjectionMethod Method { get; init; }
    public required double LatitudeOfOrigin { get; init; }
    public required double CentralMeridian { get; init; }

    /// <summary>Scale on the central meridian; transverse Mercator only.</summary>
    public double ScaleFactor { get; init; } = 1;

    /// <summary>Lambert only.</summary>
    public double StandardParallel1 { get; init; }

    /// <summary>Lambert only.</summary>
    public double StandardParallel2 { get; init; }

    /// <summary>In <see cref="Unit"/>.</summary>
    public required double FalseEasting { get; init; }

    /// <summary>In <see cref="Unit"/>.</summary>
    public required double FalseNorthing { get; init; }

    public required GeographicExtent Extent { get; init; }
    public required string Source { get; init; }

    /// <summary>True when the two are one projection written in different units.</summary>
    public bool IsTwinOf(ProjectedSystem other) =>
        EpsgCode != other.EpsgCode && Unit != other.Unit && Method == other.Method
        && LatitudeOfOrigin == other.LatitudeOfOrigin && CentralMeridian == other.CentralMeridian
        && StandardParallel1 == other.StandardParallel1 && ScaleFactor == other.ScaleFactor;
}
