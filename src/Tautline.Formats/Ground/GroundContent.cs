using System.Collections.Immutable;

namespace Tautline.Formats.Ground;

/// <summary>
/// What a ground file holds, in the file's own coordinates and units: <see cref="PointContent"/>, <see cref="FaceContent"/> or
/// <see cref="GridContent"/>.
/// </summary>
public abstract record GroundContent
{
    private protected GroundContent() { }

    /// <summary>Around everything that has ground, in the file's coordinates.</summary>
    public abstract GroundExtent Extent { get; }

    /// <summary>Lowest and highest, in the file's unit; both NaN where there is no height.</summary>
    public abstract (double Lowest, double Highest) Heights { get; }

    /// <summary>How steep the ground is, heights and plan in one unit; null where there is too little of it.</summary>
    internal abstract Slopes? Slopes { get; }
}

/// <summary>A point in the file's coordinates and units.</summary>
public readonly record struct FilePoint(double East, double North, double Height);

/// <summary>A line or ring in plan, in the file's coordinates.</summary>
/// <param name="Name">As the file has it.</param>
/// <param name="Kind">As the file has it: "outer", "void", "standard"...</param>
/// <param name="Points">Height NaN where the file gives none or only zeros.</param>
public sealed record FileLine(string Name, string Kind, ImmutableArray<FilePoint> Points);
