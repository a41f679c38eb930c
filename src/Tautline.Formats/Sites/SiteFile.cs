using System.Collections.Immutable;
using Tautline.Formats.Import;

namespace Tautline.Formats.Sites;

/// <summary>How many things of one kind a file has, and how many of them were passed over, and why.</summary>
/// <param name="Kind">As the file calls it.</param>
/// <param name="Read">Things that were read.</param>
/// <param name="Skipped">Things that were not.</param>
/// <param name="Why">Why not; empty where none was skipped.</param>
public sealed record SiteCount(string Kind, int Read, int Skipped, string Why);

/// <summary>A layer, folder or class of a file.</summary>
/// <param name="Name">As the file has it.</param>
/// <param name="Lines">Lines on it.</param>
/// <param name="Points">Points and labels on it.</param>
/// <param name="Hidden">True where the file switches it off or freezes it.</param>
/// <param name="Proposed">True where its name or kind says fence or boundary, or where it is the only one.</param>
public sealed record SiteLayer(string Name, int Lines, int Points, bool Hidden, bool Proposed);

/// <summary>What a file says of its own coordinates; it may be wrong.</summary>
public sealed record SiteClaims
{
    /// <summary>True where the coordinates are longitude and latitude on WGS 84 because the format lays it down.</summary>
    public bool Degrees { get; init; }

    /// <summary>Unit of the plan coordinates; null where the file does not say, or contradicts itself.</summary>
    public SiteUnit? Unit { get; init; }

    /// <summary>What the file says of its unit, in its own words; empty where nothing.</summary>
    public string UnitText { get; init; } = "";

    /// <summary>Unit of the heights; null where the file does not say.</summary>
    public SiteUnit? HeightUnit { get; init; }

    /// <summary>Number of the system in the EPSG list; null where the file names none.</summary>
    public int? SystemCode { get; init; }

    /// <summary>Its name or description, as written; empty where there is none.</summary>
    public string SystemText { get; init; } = "";

    /// <summary>The system as the file defines it in full; null where it does not or where that is not understood.</summary>
    internal Coordinates.ProjectedSystem? Written { get; init; }
}

/// <summary>
/// What every reader gives of a file: what was found, what was skipped and why, the features in the file's own coordinates, and what must be asked before
/// they become lines. The line maker makes lines of it.
/// </summary>
public sealed record SiteFile
{
    /// <summary>The file's name as the user knows it.</summary>
    public required string SourceName { get; init; }

    /// <summary>Null when it could not be told, and then nothing was read.</summary>
    public SiteFormat? Format { get; init; }

    /// <summary>The format with its version: "DXF AC1027 (2013)", "GPX 1.0".</summary>
    public string FormatName { get; init; } = "";

    public SiteClaims Claims { get; init; } = new();

    /// <summary>Everything that was read, in the order of the file.</summary>
    public ImmutableArray<SiteFeature> Features { get; init; } = [];

    /// <summary>By kind, in the order they were met.</summary>
    public ImmutableArray<SiteCount> Counts { get; init; } = [];

    /// <summary>In the order they were met.</summary>
    public ImmutableArray<SiteLayer> Layers { get; init; } = [];

    /// <summary>Around everything, in the file's coordinates; null where there is nothing.</summary>
    public SiteBox? Extent { get; init; }

    /// <summary>Positions read before repeats were dropped and closing ones taken off.</summary>
    public int Positions { get; init; }

    /// <summary>Arcs and curves that are no circles were put in chords this close, in the file's unit; null where there was none.</summary>
    public double? FlattenedWithin { get; init; }

    /// <summary>What must be answered before the file can be read at all, such as which column is what.</summary>
    public ImmutableArray<SiteQuestion> Questions { get; init; } = [];

    public ImmutableArray<ImportProblem> Problems { get; init; } = [];

    /// <summary>True when something was refused.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == ProblemSeverity.Error);
}

/// <summary>An upright box in a file's own coordinates.</summary>
public readonly record struct SiteBox(double West, double South, double East, double North, double Lowest, double Highest)
{
    internal static readonly SiteBox Nothing = new(
        double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity, double.PositiveInfinity, double.NegativeInfinity);

    internal bool IsEmpty => !(East >= West && North >= South);

    internal SiteBox With(SiteVertex v) => new(
        Math.Min(West, v.X), Math.Min(South, v.Y), Math.Max(East, v.X), Math.Max(North, v.Y),
        double.IsNaN(v.Z) ? Lowest : Math.Min(Lowest, v.Z), double.IsNaN(v.Z) ? Highest : Math.Max(Highest, v.Z));
}
