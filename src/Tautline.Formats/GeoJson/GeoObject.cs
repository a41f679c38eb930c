using System.Collections.Immutable;

namespace Tautline.Formats.GeoJson;

/// <summary>A JSON object of a GeoJSON file, with the members that mean something to this reader.</summary>
internal sealed class GeoObject(int offset)
{
    public static readonly ImmutableSortedDictionary<string, string> NoProperties =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    public int Offset { get; } = offset;
    public string? Type { get; set; }
    public string? Id { get; set; }
    public CoordinateNode? Coordinates { get; set; }
    public GeoObject? Geometry { get; set; }
    public List<GeoObject>? Geometries { get; set; }
    public List<GeoObject>? Features { get; set; }
    public ImmutableSortedDictionary<string, string> Properties { get; set; } = NoProperties;
}
