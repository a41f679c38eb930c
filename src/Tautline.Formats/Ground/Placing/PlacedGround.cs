using System.Collections.Immutable;
using Tautline.Engine.Site.Ground;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>Ground in a job's own metres.</summary>
public sealed record PlacedGround
{
    /// <summary>Null when it could not be placed; why is among the problems.</summary>
    public IGroundSurface? Surface { get; init; }

    /// <summary>Around the ground, in the job's metres; null when there is none.</summary>
    public GroundExtent? Extent { get; init; }

    /// <summary>How the file's coordinates became the job's, in words.</summary>
    public string How { get; init; } = "";

    /// <summary>Of the file's bytes, so that a plan can say what it rests on.</summary>
    public required string Sha256 { get; init; }

    /// <summary>What placing has to say; what reading had to say stands in the file.</summary>
    public ImmutableArray<ImportProblem> Problems { get; init; } = [];

    /// <summary>True when something was refused.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == ProblemSeverity.Error);
}
