using System.Collections.Immutable;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Xml;

/// <summary>Reads points, lines, rings and tracks of KML 2.0 to 2.3 (OGC 07-147r2, 12-007r2) and the gx extension.</summary>
internal sealed class KmlReader
{
    private const string Layout = "how it looks, not where it is";

    private readonly SiteXml _xml;
    private readonly SiteCollector _found;
    private readonly List<string> _folders = [];
    private readonly List<Shape> _shapes = [];
    private int _clamped;

    private KmlReader(SiteXml xml, SiteCollector found) => (_xml, _found) = (xml, found);

    /// <summary>A geometry before its placemark's name and data are known, for they may stand behind it.</summary>
    private sealed record Shape(string Kind, bool Ring, string Role, List<SiteVertex> Vertices, int Line);

    public static void Read(SiteXml xml, SiteCollector found)
    {
        found.FormatName = "KML";
        found.Claims = Degrees.Claims;
        var reader = new KmlReader(xml, found);
        if (xml.Root is "kml" or "Document" or "Folder") reader.Container(xml.Root);
        else if (xml.Root == "Placemark") reader.Placemark();
        else throw new SiteStop(SiteFindings.WrongRoot(xml.Root, "kml"));
        if (reader._clamped > 0) found.Problems.Add(KmlFindings.Clamped(reader._clamped));
    }

    private void Container(string kind)
    {
        var named = false;
        _xml.Each(child =>
        {
            switch (child)
            {
                case "name" when !named && kind is "Folder" or "Document":
                    named = true;
                    _folders.Add(_xml.Text());
                    break;
                case "Document" or "Folder" or "kml": Container(child); break;
                case "Placemark": Placemark(); break;
                case "NetworkLink": _found.Skip(child, "it lies elsewhere, and nothing is fetched"); break;
                case "GroundOverlay" or "ScreenOverlay" or "PhotoOverlay": _found.Skip(child, "a picture"); break;
                case "Style" or "StyleMap" or "Schema" or "LookAt" or "Camera" or "Tour": _found.Skip(child, Layout); break;
            }
        });
        if (named) _folders.RemoveAt(_folders.Count - 1);
    }

    private void Placemark()
    {
        var (name, line, tags) = ("", _xml.Line, SiteFeature.NoTags.ToBuilder());
        _shapes.Clear();
        _xml.Inside = Words("");
        _xml.Each(child =>
        {
            switch (child)
            {
                case "name":
                    name = _xml.Text();
                    _xml.Inside = Words(name);
                    break;
                case "description": tags["description"] = _xml.Text(); break;
                case "ExtendedData": Data(tags); break;
                default: Geometry(child, 0); break;
            }
        });
        _xml.Inside = "";
        Add(name, line, tags.ToImmutable());
    }

    private static string Words(string name) => name.Length > 0 ? $"the placemark '{name}'" : "a placemark";

    private void Add(string name, int line, ImmutableSortedDictionary<string, string> tags)
    {
        var (number, part) = (_found.NextNumber(), 1);
        // The document's own name is no layer where folders are inside it.
        var layer = _found.Shared(string.Join("/", _folders.Count > 1 ? _folders.Skip(1) : _folders));
        if (_shapes.Count == 0) _found.Skip("Placemark", "it has no geometry that is read");
        foreach (var shape in _shapes)
        {
            var feature = new SiteFeature
            {
                Number = number,
                Part = part++,
                Kind = shape.Kind,
                Layer = layer,
                Label = name,
                Closed = shape.Ring,
                Line = shape.Line,
                Tags = shape.Role.Length > 0 ? tags.SetItem("ring", shape.Role) : tags,
                Vertices = [],
            };
            if (shape.Kind != "Point") _found.Line(feature, shape.Vertices);
            else if (shape.Vertices.Count > 0) _found.Point(feature with { Vertices = [shape.Vertices[0]] });
            else _found.Skip("Point", "its coordinates are empty");
        }
    }

    private void Data(ImmutableSortedDictionary<string, string>.Builder tags) => _xml.Each(child =>
    {
        if (tags.Count >= 1000) return;
        var key = _xml.Attribute("name") ?? "";
        if (child == "Data") _xml.Each(value => { if (value == "value") tags[key] = _xml.Text(); });
        else if (child == "SimpleData") tags[key] = _xml.Text();
        else if (child == "SchemaData") Data(tags);
    });

    private void Geometry(string kind, int depth)
    {
        switch (kind)
        {
            case "Point" or "LineString" or "LinearRing": Simple(kind, kind == "LinearRing", ""); break;
            case "Polygon": Polygon(); break;
            case "MultiGeometry" or "MultiTrack":
                if (depth > _found.Options.Limits.Depth) throw new SiteStop(SiteFindings.TooDeep(_found.Options.Limits.Depth), _xml.Line);
                _xml.Each(child => Geometry(child, depth + 1));
                break;
            case "Track": Track(); break;
            case "Model": _found.Skip(kind, "a model of a building"); break;
        }
    }

    private void Polygon()
    {
        var mode = "";
        var from = _shapes.Count;
        _xml.Each(child =>
        {
            if (child == "altitudeMode") mode = _xml.Text();
            else if (child is "outerBoundaryIs" or "innerBoundaryIs")
                _xml.Each(ring => { if (ring == "LinearRing") Simple("Polygon", ring: true, child == "innerBoundaryIs" ? "hole" : "outer"); });
        });
        for (var i = from; i < _shapes.Count; i++) Settle(_shapes[i].Vertices, mode);
    }

    private void Simple(string kind, bool ring, string role)
    {
        var (mode, line, vertices) = (role.Length > 0 ? "later" : "", _xml.Line, new List<SiteVertex>());
        var empty = true;
        _xml.Each(child =>
        {
            if (child == "altitudeMode") mode = _xml.Text();
            else if (child == "coordinates") empty &= !Coordinates(vertices);
        });
        if (mode != "later") Settle(vertices, mode);
        if (!empty || vertices.Count > 0) _shapes.Add(new(kind, ring, role, vertices, line));
        else _found.Skip(kind, "its coordinates are empty");
    }

    private bool Coordinates(List<SiteVertex> into)
    {
        var line = _xml.Line;
        var numbers = new KmlCoordinates(into);
        _xml.Tokens(numbers.Take);
        numbers.End();
        if (numbers.Bad > 0) _found.Problems.AddAtLine(KmlFindings.BadTuple(numbers.Bad), line);
        return numbers.Any;
    }

    private void Track()
    {
        var (line, mode, vertices) = (_xml.Line, "", new List<SiteVertex>());
        _xml.Each(child =>
        {
            if (child == "altitudeMode") mode = _xml.Text();
            else if (child == "coord")
            {
                var numbers = _xml.Numbers(3);
                vertices.Add(numbers is { Count: >= 2 } n ? new(n[0], n[1], n.Count > 2 ? n[2] : double.NaN) : new(double.NaN, double.NaN));
            }
        });
        Settle(vertices, mode);
        _shapes.Add(new("Track", false, "", vertices, line));
    }

    /// <summary>Only an absolute altitude says where the ground may be: the default lays the shape on the ground and ignores the number.</summary>
    private void Settle(List<SiteVertex> vertices, string mode)
    {
        if (mode == "absolute") return;
        var any = false;
        for (var i = 0; i < vertices.Count; i++)
        {
            any |= !double.IsNaN(vertices[i].Z) && vertices[i].Z != 0;
            vertices[i] = vertices[i] with { Z = double.NaN };
        }
        if (any) _clamped++;
    }
}

/// <summary>The tuples of a coordinates element: "lon,lat[,alt]" split by blanks, with stray blanks beside a comma.</summary>
internal sealed class KmlCoordinates(List<SiteVertex> into)
{
    private readonly double[] _numbers = new double[3];
    private int _count;
    private bool _open; // the last thing was a comma: the tuple goes on behind the blank

    /// <summary>Tuples that are none; each stands in the list as no place, so that the line is not taken as whole.</summary>
    public int Bad { get; private set; }

    public bool Any { get; private set; }

    public void Take(ReadOnlySpan<char> token)
    {
        if (!_open && token[0] != ',') End();
        Any = true;
        foreach (var range in token.Split(','))
        {
            var part = token[range];
            if (part.IsEmpty) continue;
            if (_count < 3) _numbers[_count] = SiteXml.Parse(part);
            _count++;
        }
        _open = token[^1] == ',';
    }

    public void End()
    {
        if (_count > 0)
        {
            var sound = _count is 2 or 3 && double.IsFinite(_numbers[0]) && double.IsFinite(_numbers[1]);
            if (!sound) Bad++;
            into.Add(sound ? new(_numbers[0], _numbers[1], _count == 3 ? _numbers[2] : double.NaN) : new(double.NaN, double.NaN));
        }
        (_count, _open) = (0, false);
    }
}

internal static class KmlFindings
{
    public static Finding Clamped(int count) => new(
        ProblemSeverity.Information, "Clamped",
        SiteFindings.Text($"{SiteFindings.Count(count, "shape has", "shapes have")} altitudes that the file lays on the ground or counts from it; they are no heights and are left out."));

    public static Finding BadTuple(int count) => new(
        ProblemSeverity.Error, "BadCoordinates", SiteFindings.Text($"{SiteFindings.Count(count, "position is", "positions are")} not longitude, latitude and perhaps altitude. The shape is left out."),
        "A position is lon,lat or lon,lat,alt without blanks, split from the next by a blank.");
}
