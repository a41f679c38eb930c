using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>Finds the lines in the objects of a file, with their names.</summary>
internal sealed class LineCollector(ProblemList problems)
{
    private static readonly string[] NameProperties = ["name", "Name", "NAME", "title"];
    private readonly List<RawLine> _lines = [];
    private int _points, _notLocated;
    private GeoObject? _owner;

    /// <summary>A line of one feature before it has its name. Parts and holes count from 1; hole 0 is the outer ring.</summary>
    private readonly record struct Piece(CoordinateNode Coordinates, int Part, int Hole, bool IsRing);

    /// <summary>Points, each as a line of one position; this program's own outlines pass them over.</summary>
    public List<RawLine> Points { get; } = [];

    /// <summary>False where points are read by whoever asked, so that nothing is said of them here.</summary>
    public bool TellPoints { get; init; } = true;

    public List<RawLine> Collect(GeoObject root)
    {
        if (root.Type == "FeatureCollection") AddCollection(root);
        else AddFeature(root, null);
        if (_points > 0 && TellPoints) problems.Add(GeoJsonFindings.PointsIgnored(_points));
        if (_notLocated > 0) problems.Add(GeoJsonFindings.NotLocated(_notLocated));
        return _lines;
    }

    private void AddCollection(GeoObject root)
    {
        if (root.Features is null) problems.Add(GeoJsonFindings.MissingMember("FeatureCollection", "features"), null, root.Offset);
        var number = 0;
        foreach (var feature in root.Features ?? []) AddFeature(feature, ++number);
    }

    private void AddFeature(GeoObject feature, int? number)
    {
        var geometry = feature.Type == "Feature" ? feature.Geometry : feature;
        if (geometry is null)
        {
            _notLocated++;
            return;
        }

        List<Piece> pieces = [];
        _owner = feature;
        AddGeometry(geometry, number, pieces);
        foreach (var piece in pieces) _lines.Add(Line(feature, number, piece, pieces[^1].Part > 1));
    }

    private RawLine Line(GeoObject feature, int? number, Piece piece, bool several) => new()
    {
        Name = NameOf(feature) + (several ? $", part {piece.Part}" : "") + (piece.Hole > 0 ? $", hole {piece.Hole}" : ""),
        Properties = feature.Properties,
        Feature = number,
        Offset = piece.Coordinates.Offset,
        Closed = piece.IsRing,
        Positions = piece.Coordinates.Positions ?? [],
    };

    private string NameOf(GeoObject feature)
    {
        foreach (var property in NameProperties)
        {
            if (feature.Properties.TryGetValue(property, out var name) && !string.IsNullOrWhiteSpace(name)) return name.Trim();
        }

        return string.IsNullOrWhiteSpace(feature.Id) ? $"Line {_lines.Count + 1}" : feature.Id.Trim();
    }

    private void AddGeometry(GeoObject geometry, int? feature, List<Piece> pieces)
    {
        switch (geometry.Type)
        {
            case "LineString": AddLines(geometry, feature, pieces, 0, "a list of positions"); break;
            case "MultiLineString": AddLines(geometry, feature, pieces, 1, "a list of lists of positions"); break;
            case "Polygon": AddPolygons(geometry, feature, pieces, 0, "a list of rings, each a list of positions"); break;
            case "MultiPolygon": AddPolygons(geometry, feature, pieces, 1, "a list of polygons, each a list of rings"); break;
            case "GeometryCollection": AddGeometries(geometry, feature, pieces); break;
            case "Point" or "MultiPoint": AddPoints(geometry, feature); break;
            case null: problems.Add(GeoJsonFindings.NoType, feature, geometry.Offset); break;
            default: problems.Add(GeoJsonFindings.UnknownType(geometry.Type), feature, geometry.Offset); break;
        }
    }

    private void AddPoints(GeoObject geometry, int? feature)
    {
        _points++;
        if (geometry.Coordinates is not { } at) return;
        foreach (var position in geometry.Type == "Point" ? at.IsPosition ? [at.ToPosition()] : [] : at.Positions ?? [])
            Points.Add(new() { Name = NameOf(_owner!), Properties = _owner!.Properties, Feature = feature, Offset = at.Offset, Closed = false, Positions = [position] });
    }

    private void AddGeometries(GeoObject collection, int? feature, List<Piece> pieces)
    {
        if (collection.Geometries is null)
            problems.Add(GeoJsonFindings.MissingMember("GeometryCollection", "geometries"), feature, collection.Offset);
        foreach (var geometry in collection.Geometries ?? []) AddGeometry(geometry, feature, pieces);
    }

    private void AddLines(GeoObject geometry, int? feature, List<Piece> pieces, int levels, string nesting)
    {
        foreach (var line in Lists(geometry, feature, levels, nesting)) pieces.Add(new(line, NextPart(pieces), 0, IsRing: false));
    }

    private void AddPolygons(GeoObject geometry, int? feature, List<Piece> pieces, int levels, string nesting)
    {
        if (Lists(geometry, feature, levels + 1, nesting).Count == 0) return;
        foreach (var polygon in levels == 0 ? [geometry.Coordinates!] : geometry.Coordinates!.Children!)
        {
            int part = NextPart(pieces), hole = 0;
            foreach (var ring in polygon.Children ?? []) pieces.Add(new(ring, part, hole++, IsRing: true));
        }
    }

    private static int NextPart(List<Piece> pieces) => pieces.Count == 0 ? 1 : pieces[^1].Part + 1;

    private List<CoordinateNode> Lists(GeoObject geometry, int? feature, int levels, string nesting)
    {
        if (geometry.Coordinates is not { } coordinates)
        {
            problems.Add(GeoJsonFindings.MissingMember(geometry.Type!, "coordinates"), feature, geometry.Offset);
            return [];
        }

        if (coordinates.IsEmpty)
        {
            _notLocated++;
            return [];
        }

        if (coordinates.Lists(levels) is { } lists) return lists;
        problems.Add(GeoJsonFindings.WrongNesting(geometry.Type!, nesting), feature, coordinates.Offset);
        return [];
    }
}
