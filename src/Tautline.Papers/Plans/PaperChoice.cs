using Tautline.Documents.Words;
using Tautline.Engine.Quantities;
using Tautline.Papers.Paper;

namespace Tautline.Papers.Plans;

/// <summary>How a paper is wanted.</summary>
/// <param name="Say">Its language.</param>
public sealed record PaperChoice(UnitSystem Units, Phrases Say, PaperFormat Format)
{
    /// <summary>Where the stakes stand on a grid, made by whoever can place them there; without it they stand on the job's own east and north.</summary>
    public StakeTable? Stakes { get; init; }

    public PaperWords Words => new(
        Say.Language == Phrases.Spanish ? "es-US" : "en-US", Say["paper.pageOf"], Say["paper.continued"], Say["cautions.title"], Say["paper.none"], Say["paper.unknown"]);
}

/// <summary>Posts to be set out on a grid.</summary>
/// <param name="Unit">Of northing, easting and elevation, in words.</param>
/// <param name="System">The grid; empty for the job's own east and north.</param>
public sealed record StakeTable(string Unit, string System, IReadOnlyList<StakeRow> Rows);

/// <param name="Elevation">Of the ground; nothing where it was not measured.</param>
public sealed record StakeRow(string Mark, double Northing, double Easting, double? Elevation);
