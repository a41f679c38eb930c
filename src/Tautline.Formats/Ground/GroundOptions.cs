using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground.Points;

namespace Tautline.Formats.Ground;

/// <summary>What a reader of ground files is told beside the file. What is left out and cannot be read from the file is asked.</summary>
public sealed record GroundOptions
{
    /// <summary>The file's name, for messages.</summary>
    public string SourceName { get; init; } = "ground file";

    /// <summary>The format; null to tell it by the file's first bytes.</summary>
    public GroundFormat? Format { get; init; }

    /// <summary>The system of the plan coordinates, stated by the user; null to take the file's word, or to ask.</summary>
    public CoordinateSystemChoice? System { get; init; }

    /// <summary>The unit of the heights, stated by the user; null to take the file's word, or to ask.</summary>
    public LinearUnit? HeightUnit { get; init; }

    /// <summary>How survey text is laid out.</summary>
    public SurveyPointOptions Points { get; init; } = new();

    /// <summary>The surface wanted of a LandXML file: its name, or "#2" for the second.</summary>
    public string? Surface { get; init; }

    /// <summary>The part of a grid that is wanted, in the file's own coordinates; null for all of it.</summary>
    public GroundExtent? Window { get; init; }

    /// <summary>The mark of a cell without ground, in place of the one the file states; null to take the file's.</summary>
    public double? NoData { get; init; }

    public GroundLimits Limits { get; init; } = new();
}
