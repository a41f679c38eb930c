using System.Collections.Immutable;
using Tautline.Formats.Ground.Points;

namespace Tautline.Formats.Ground;

/// <summary>One surveyed point.</summary>
/// <param name="Name">Number or name; empty where the file has none.</param>
/// <param name="North">In the file's unit.</param>
/// <param name="East">In the file's unit.</param>
/// <param name="Height">In the file's unit; null where the file has none.</param>
/// <param name="Description">As written, without blanks at either end.</param>
/// <param name="Line">Line of the file, from 1.</param>
public sealed record SurveyPoint(string Name, double North, double East, double? Height, string Description, int Line);

/// <summary>A line made of codes: places of its points in <see cref="PointContent.Points"/>, at least two.</summary>
public sealed record SurveyLine(string Code, ImmutableArray<int> Points);

/// <summary>Surveyed points in the order of the file.</summary>
public sealed record PointContent : GroundContent
{
    /// <summary>Those that are positions.</summary>
    public required ImmutableArray<SurveyPoint> Points { get; init; }

    /// <summary>Lines along which the ground breaks; empty unless codes were stated.</summary>
    public ImmutableArray<SurveyLine> Breaklines { get; init; } = [];

    /// <summary>How the columns were read.</summary>
    public required ColumnOrder Columns { get; init; }

    /// <inheritdoc/>
    public override GroundExtent Extent => Points.Aggregate(GroundExtent.Nothing, (box, p) => box.With(p.East, p.North));

    /// <inheritdoc/>
    public override (double Lowest, double Highest) Heights
    {
        get
        {
            var heights = Points.Select(p => p.Height).OfType<double>().DefaultIfEmpty(double.NaN);
            return (heights.Min(), heights.Max());
        }
    }

    // Points have no slopes until they are triangulated.
    internal override Slopes? Slopes => null;
}
