using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Ground;

/// <summary>What a file says of its own coordinates. It may be wrong; what is used stands in <see cref="GroundFile"/>.</summary>
public sealed record GroundClaims
{
    public static readonly GroundClaims None = new();

    /// <summary>Number of the system of the plan coordinates in the EPSG list.</summary>
    public int? SystemCode { get; init; }

    /// <summary>Its name or description, as written.</summary>
    public string? SystemText { get; init; }

    /// <summary>True when the plan coordinates are longitude and latitude.</summary>
    public bool Degrees { get; init; }

    public LinearUnit? PlanUnit { get; init; }

    /// <summary>Number of the height system in the EPSG list.</summary>
    public int? HeightSystemCode { get; init; }

    /// <summary>The height system's name or description, as written.</summary>
    public string? HeightSystemText { get; init; }

    public LinearUnit? HeightUnit { get; init; }
}
