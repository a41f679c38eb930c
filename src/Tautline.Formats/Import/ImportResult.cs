using System.Collections.Immutable;
using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Import;

/// <summary>What a reader made of a file: lines, how they lie on the earth, and everything it has to say.</summary>
public sealed record ImportResult
{
    /// <summary>The lines that are whole and certain. A line with a fault is left out and told, never mended by leaving out a corner.</summary>
    public ImmutableArray<ImportedLine> Lines { get; init; } = [];

    /// <summary>The grid the lines were laid on; null when none could be settled, and then there are no lines.</summary>
    public CoordinateSystemInfo? System { get; init; }

    /// <summary>The job's origin on that grid; null when there are no lines.</summary>
    public JobOrigin? Origin { get; init; }

    /// <summary>All problems, in the order of the file where they have a place.</summary>
    public ImmutableArray<ImportProblem> Problems { get; init; } = [];

    /// <summary>True when something was refused.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == ProblemSeverity.Error);
}
