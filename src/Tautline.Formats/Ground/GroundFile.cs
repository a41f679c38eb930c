using System.Collections.Immutable;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>
/// A ground file as it was read: its content in its own coordinates, what it says of them, what is settled, and what must still be
/// answered. When <see cref="IsReady"/>, <see cref="GroundPlacement"/> lays it under a job.
/// </summary>
public sealed record GroundFile
{
    internal GroundFile(GroundReading reading, GroundOptions options, string sha256, long bytes)
    {
        (Reading, SourceName, Sha256, Bytes) = (reading, options.SourceName, sha256, bytes);
        var settled = FrameSettler.Settle(reading, options);
        (System, PlanUnit, HeightUnit, Questions, Problems) = settled;
    }

    /// <summary>The file's name as the user knows it.</summary>
    public string SourceName { get; private init; }

    /// <summary>Null when it could not be told, and then nothing was read.</summary>
    public GroundFormat? Format => Reading.Format;

    /// <summary>Of all bytes of the file, hexadecimal, lower case.</summary>
    public string Sha256 { get; private init; }

    /// <summary>Length of the file.</summary>
    public long Bytes { get; private init; }

    /// <summary>What the file says of itself.</summary>
    public GroundClaims Claims => Reading.Claims;

    /// <summary>Null when nothing could be read, or when a question must be answered before it can.</summary>
    public GroundContent? Content => Reading.Content;

    /// <summary>
    /// Around the ground, in the file's own coordinates; also where a grid is too large to be read whole, so that a window can be chosen. Null where
    /// it is not known.
    /// </summary>
    public GroundExtent? Extent => Content?.Extent ?? Reading.Extent;

    /// <summary>The system the plan coordinates are taken in: as stated, else as the file says where nothing speaks against it.</summary>
    public CoordinateSystemChoice? System { get; private init; }

    /// <summary>Unit of the plan coordinates; null while the system is open.</summary>
    public LinearUnit? PlanUnit { get; private init; }

    /// <summary>Unit of the heights; null while it is open.</summary>
    public LinearUnit? HeightUnit { get; private init; }

    /// <summary>What must be answered, all together.</summary>
    public ImmutableArray<GroundQuestion> Questions { get; private init; }

    /// <summary>Everything the reader has to say.</summary>
    public ImmutableArray<ImportProblem> Problems { get; private init; }

    /// <summary>True when something was refused.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == ProblemSeverity.Error);

    /// <summary>True when there is ground and nothing is open.</summary>
    public bool IsReady => Content is not null && Questions.IsEmpty && !HasErrors;

    internal GroundReading Reading { get; }

    /// <summary>The same reading under other answers that do not change how the file is read.</summary>
    /// <param name="system">The system of the plan coordinates; null to take the file's word, or to ask.</param>
    /// <param name="heightUnit">The unit of the heights; null to take the file's word, or to ask.</param>
    public GroundFile Answered(CoordinateSystemChoice? system, LinearUnit? heightUnit) =>
        new(Reading, new() { SourceName = SourceName, System = system, HeightUnit = heightUnit }, Sha256, Bytes);
}

/// <summary>What a format's reader gives: everything that does not hang on the answers about system and height unit.</summary>
internal sealed record GroundReading
{
    public GroundFormat? Format { get; init; }

    public GroundContent? Content { get; init; }

    /// <summary>Where it is known without content.</summary>
    public GroundExtent? Extent { get; init; }

    public GroundClaims Claims { get; init; } = GroundClaims.None;

    public ImmutableArray<GroundQuestion> Questions { get; init; } = [];

    public ImmutableArray<ImportProblem> Problems { get; init; } = [];
}
