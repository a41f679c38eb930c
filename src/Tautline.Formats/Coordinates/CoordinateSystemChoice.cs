namespace Tautline.Formats.Coordinates;

/// <summary>A coordinate system stated by the user: a numbered one, or the site's own flat one.</summary>
public sealed record CoordinateSystemChoice
{
    private CoordinateSystemChoice() { }

    /// <summary>Number in the EPSG list; null for a local system.</summary>
    public int? EpsgCode { get; private init; }

    /// <summary>Unit of a local system, whose lengths are ground lengths already; null for a numbered one.</summary>
    public LinearUnit? LocalUnit { get; private init; }

    /// <summary>A system by its number. Whether the number is known is told by the reader.</summary>
    public static CoordinateSystemChoice Epsg(int code) => new() { EpsgCode = code };

    /// <summary>East and north on the site's own flat grid.</summary>
    public static CoordinateSystemChoice Local(LinearUnit unit) => new() { LocalUnit = unit };
}
