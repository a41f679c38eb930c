using System.Collections.Immutable;

namespace Tautline.Formats.Import;

/// <summary>One line of a file: a chain of straight legs.</summary>
public sealed record ImportedLine
{
    /// <summary>The name the file gives it, or "Line n".</summary>
    public required string Name { get; init; }

    /// <summary>True when the last point joins the first. The first point is then not repeated at the end.</summary>
    public required bool Closed { get; init; }

    /// <summary>The corners in the file's order: at least two, at least three when closed, no two neighbours at one place.</summary>
    public required ImmutableArray<ImportedPoint> Points { get; init; }

    /// <summary>What the file says of the line, as text, sorted by name.</summary>
    public required ImmutableSortedDictionary<string, string> Properties { get; init; }

    /// <summary>Level length in metres, with the closing leg when closed.</summary>
    public double Length()
    {
        var sum = Closed ? Distance(Points[^1], Points[0]) : 0;
        for (var i = 1; i < Points.Length; i++) sum += Distance(Points[i - 1], Points[i]);
        return sum;
    }

    private static double Distance(ImportedPoint a, ImportedPoint b)
    {
        double east = b.East - a.East, north = b.North - a.North;
        return Math.Sqrt(east * east + north * north);
    }
}
