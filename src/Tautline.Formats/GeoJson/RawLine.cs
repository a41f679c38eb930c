using System.Collections.Immutable;

namespace Tautline.Formats.GeoJson;

/// <summary>A line with its file's own coordinates.</summary>
internal sealed record RawLine
{
    public required string Name { get; init; }
    public required ImmutableSortedDictionary<string, string> Properties { get; init; }
    public required int? Feature { get; init; }
    public required int Offset { get; init; }

    /// <summary>Before cleaning: true for a ring. After: true when the last position joins the first, which is not repeated.</summary>
    public required bool Closed { get; init; }

    public required List<RawPosition> Positions { get; init; }
}
