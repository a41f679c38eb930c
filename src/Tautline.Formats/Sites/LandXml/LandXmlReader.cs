using System.Collections.Immutable;
using System.Globalization;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground.LandXml;
using Tautline.Formats.Sites.Reading;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Sites.LandXml;

/// <summary>
/// Reads points, parcels, alignments and plan features of LandXML 1.0 to 2.0 (landxml.org schemas). Surfaces are counted here and read as ground.
/// </summary>
internal sealed class LandXmlReader
{
    private const string Ground = "ground, which is attached to a job";
    private const string NotSite = "no place of a fence";

    private readonly SiteXml _xml;
    private readonly SiteCollector _found;
    private readonly LandXmlUnits _units;
    private readonly Dictionary<string, SiteVertex> _named = new(StringComparer.Ordinal);
    private readonly List<SiteFeature> _points = [];
    private double _turn = Math.PI / 180; // radians of one unit of direction
    private bool _packed; // directions are written as degrees, minutes and seconds in one number

    private LandXmlReader(SiteXml xml, SiteCollector found) => (_xml, _found, _units) = (xml, found, new(found.Problems));

    public static void Read(SiteXml xml, SiteCollector found)
    {
        if (xml.Root != "LandXML") throw new SiteStop(SiteFindings.WrongRoot(xml.Root, "LandXML"));
        found.FormatName = $"LandXML {xml.Attribute("version")}".TrimEnd();
        var reader = new LandXmlReader(xml, found);
        reader.Document();
        reader.AddPoints();
    }

    private void Document() => _xml.Each(child =>
    {
        switch (child)
        {
            case "Units": _xml.Each(Units); break;
            case "CoordinateSystem": System(); break;
            case "CgPoints": CgPoints(); break;
            case "Parcels": _xml.Each(Parcel); break;
            case "Alignments": Alignments(); break;
            case "PlanFeatures": _xml.Each(PlanFeature); break;
            case "Surfaces": Surfaces(); break;
            case "Survey": _xml.Each(inside => { if (inside == "CgPoints") CgPoints(); else _found.Skip($"Survey/{inside}", "raw observations"); }); break;
            case "Roadways" or "PipeNetworks" or "Monuments" or "GradeModel" or "Amendment": _found.Skip(child, NotSite); break;
        }
    });

    private void Units(string element)
    {
        if (element is not ("Metric" or "Imperial")) return;
        // The unit of directions must be known before the first chain.
        Directions(_xml.Attribute("directionUnit") ?? _xml.Attribute("angularUnit") ?? "");
        var text = _xml.Attribute("linearUnit") ?? "";
        _units.ReadUnits(_xml.Attribute);
        Claim(text);
    }

    private void Claim(string unitText) => _found.Claims = new()
    {
        Unit = _units.Claims.PlanUnit is { } plan ? SiteUnit.Of(plan) : null,
        HeightUnit = _units.Claims.HeightUnit is { } height ? SiteUnit.Of(height) : null,
        UnitText = unitText,
        SystemCode = _units.Claims.SystemCode,
        SystemText = _units.Claims.SystemText ?? "",
    };

    private void System()
    {
        _units.ReadSystem(_xml.Attribute);
        Claim(_found.Claims.UnitText);
    }

    private void Directions(string unit)
    {
        var text = unit.Trim().ToUpperInvariant();
        _packed = text.Contains("DD.MM", StringComparison.Ordinal) || text.Contains("DMS", StringComparison.Ordinal);
        _turn = text switch
        {
            "GRADS" or "GRADES" or "GRAD" or "GONS" or "GON" => Math.PI / 200,
            "RADIANS" or "RADIAN" => 1,
            _ => Math.PI / 180,
        };
    }

    private double Tolerance => _found.Claims.Unit is { } unit ? _found.Options.FlattenTolerance / unit.Metres : _found.Options.FlattenTolerance;

    private void CgPoints() => _xml.Each(child =>
    {
        if (child == "CgPoints") CgPoints();
        else if (child == "CgPoint") CgPoint();
    });

    private void CgPoint()
    {
        var (name, line, tags) = (_xml.Attribute("name") ?? "", _xml.Line, Attributes("name"));
        var place = Place();
        if (place is null)
        {
            _found.Skip("CgPoint", SiteFindings.NoPosition);
            return;
        }
        if (name.Length > 0 && !_named.TryAdd(name, place.Value)) _found.Problems.AddAtLine(SiteLandXmlFindings.NameTwice(name), line);
        _points.Add(new() { Number = _found.NextNumber(), Kind = "CgPoint", Layer = "points", Label = name, Vertices = [place.Value], Tags = tags, Line = line });
        if (_points.Count > _found.Options.Limits.Features) throw new SiteStop(SiteFindings.TooMany(_found.Options.Limits), line);
    }

    /// <summary>Points wait for the end: only then can it be told whether a height of 0 is one.</summary>
    private void AddPoints()
    {
        var heights = _points.Select(p => p.Vertices[0].Z).Where(z => z != 0 && !double.IsNaN(z)).ToList();
        var zeros = _points.Count(p => p.Vertices[0].Z == 0);
        // All others lie on one side of zero, further from it than from each other; or there are no others.
        var none = zeros > 0 && (heights.Count == 0 || Math.Max(heights.Min(), -heights.Max()) > heights.Max() - heights.Min() || zeros > 2);
        if (none) _found.Problems.Add(SiteLandXmlFindings.ZeroHeights(zeros));
        foreach (var point in _points)
            _found.Point(none && point.Vertices[0].Z == 0 ? point with { Vertices = [point.Vertices[0] with { Z = double.NaN }] } : point);
    }

    /// <summary>The element's text as north, east and perhaps height, or the place of the point it names.</summary>
    private SiteVertex? Place()
    {
        var reference = _xml.Attribute("pntRef");
        var numbers = _xml.Numbers(3);
        if (numbers is { Count: >= 2 } n) return new(n[1], n[0], n.Count > 2 ? n[2] : double.NaN);
        return reference is not null && _named.TryGetValue(reference, out var place) ? place : null;
    }

    private ImmutableSortedDictionary<string, string> Attributes(params string[] without)
    {
        var tags = SiteFeature.NoTags;
        foreach (var (name, value) in _xml.Attributes())
            if (value.Length > 0 && tags.Count < 100 && !without.Contains(name)) tags = tags.SetItem(_found.Shared(name), value.Length < 200 ? _found.Shared(value) : value);
        return tags;
    }

    private void Parcel(string element)
    {
        if (element != "Parcel") return;
        var (name, line, area, tags) = (_xml.Attribute("name") ?? "", _xml.Line, _xml.Number("area"), Attributes("name"));
        var part = 0;
        var number = _found.NextNumber();
        _xml.Inside = $"the parcel '{name}'";
        _xml.Each(child =>
        {
            if (child == "CoordGeom")
            {
                var chain = new ChainBuilder(Items(), Tolerance).Build(double.NaN, double.NaN);
                Add(new() { Number = number, Part = ++part, Kind = "Parcel", Layer = "parcels", Label = name, Tags = tags, Line = line, Closed = true, Vertices = [] }, chain, area);
            }
            else if (child == "Parcels") _xml.Each(Parcel);
        });
        _xml.Inside = "";
        if (part == 0) _found.Skip("Parcel", "it has no outline");
    }

    private void Add(SiteFeature feature, Chained chain, double area = double.NaN)
    {
        foreach (var note in chain.Notes) _found.Problems.AddAtLine(SiteLandXmlFindings.Note(feature, note), feature.Line ?? 1);
        if (chain.Refused is { } reason)
        {
            _found.Problems.AddAtLine(SiteLandXmlFindings.Refused(feature, reason), feature.Line ?? 1);
            _found.Skip(feature.Kind, "its geometry is not whole");
            return;
        }
        if (chain.Spirals > 0) _found.Flattened(Tolerance);
        var vertices = WithHeights(chain.Vertices);
        if (!_found.Line(feature, vertices) || !(area > 0)) return;
        var ring = vertices.Count > 1 && vertices[^1].SamePlaceAs(vertices[0]) ? vertices[..^1] : vertices;
        var own = Math.Abs(SiteGeometry.Area([.. ring]));
        if (_units.AreasMatch && Math.Abs(own - area) > Math.Max(0.01, 1e-6 * area)) _found.Problems.AddAtLine(SiteLandXmlFindings.AreaDiffers(feature.Label, area, own), feature.Line ?? 1);
    }

    // A chain with heights all 0 has none.
    private static List<SiteVertex> WithHeights(List<SiteVertex> vertices) =>
        vertices.TrueForAll(v => v.Z == 0 || double.IsNaN(v.Z)) ? vertices.ConvertAll(v => v with { Z = double.NaN }) : vertices;

    private void Alignments() => _xml.Each(child =>
    {
        if (child != "Alignment") return;
        var (name, line, start, length, tags) = (_xml.Attribute("name") ?? "", _xml.Line, _xml.Number("staStart"), _xml.Number("length"), Attributes("name"));
        List<(double Internal, double Back, double Ahead)> equations = [];
        List<GeomItem>? items = null;
        _xml.Inside = $"the alignment '{name}'";
        _xml.Each(inside =>
        {
            switch (inside)
            {
                case "CoordGeom": items = Items(); break;
                case "StaEquation": equations.Add((_xml.Number("staInternal"), _xml.Number("staBack"), _xml.Number("staAhead"))); break;
                case "Profile": _found.Skip("Profile", Ground); break;
            }
        });
        _xml.Inside = "";
        Alignment(name, line, start, length, tags, equations, items);
    });

    private void Alignment(
        string name, int line, double start, double length, ImmutableSortedDictionary<string, string> tags, List<(double Internal, double Back, double Ahead)> equations, List<GeomItem>? items)
    {
        var chain = new ChainBuilder(items ?? [], Tolerance).Build(start, length);
        var own = chain.Refused is null ? SiteGeometry.Length([.. chain.Vertices], false) : double.NaN;
        if (length > 0 && Math.Abs(own - length) > Math.Max(0.01, 1e-6 * length)) _found.Problems.AddAtLine(SiteLandXmlFindings.LengthDiffers(name, length, own), line);
        var stations = new Stationing(double.IsNaN(start) ? 0 : start, [.. Equations(equations, start, own, line)]);
        Add(new() { Number = _found.NextNumber(), Kind = "Alignment", Layer = "alignments", Label = name, Tags = tags, Line = line, Stations = stations, Vertices = [] }, chain);
    }

    /// <summary>The internal station counts from the start, in some files from 0 and in others from the start's own name.</summary>
    private IEnumerable<StationEquation> Equations(List<(double Internal, double Back, double Ahead)> equations, double start, double length, int line)
    {
        foreach (var (at, back, ahead) in equations.OrderBy(e => e.Internal))
        {
            var fromZero = at >= -0.01 && !(at > length + 0.01);
            var distance = fromZero || double.IsNaN(start) ? at : at - start;
            if (double.IsNaN(distance) || double.IsNaN(ahead)) _found.Problems.AddAtLine(SiteLandXmlFindings.BadEquation, line);
            else yield return new(Math.Max(0, distance), double.IsNaN(back) ? null : back, ahead);
        }
    }

    private void PlanFeature(string element)
    {
        if (element != "PlanFeature") return;
        var (name, line, tags) = (_xml.Attribute("name") ?? "", _xml.Line, Attributes("name"));
        var number = _found.NextNumber();
        var part = 0;
        _xml.Each(child =>
        {
            if (child == "CoordGeom")
                Add(
                    new() { Number = number, Part = ++part, Kind = "PlanFeature", Layer = _found.Shared($"plan features/{name}"), Label = name, Tags = tags, Line = line, Vertices = [] },
                    new ChainBuilder(Items(), Tolerance).Build(double.NaN, double.NaN));
            else if (child == "Location" && Place() is { } place)
                _found.Point(new() { Number = number, Part = ++part, Kind = "PlanFeature", Layer = _found.Shared($"plan features/{name}"), Label = name, Tags = tags, Line = line, Vertices = [place] });
        });
        if (part == 0) _found.Skip("PlanFeature", "it has no geometry");
    }

    private void Surfaces() => _xml.Each(child =>
    {
        if (child != "Surface") return;
        var (name, points, faces) = (_xml.Attribute("name") ?? "", 0, 0);
        _xml.Each(part =>
        {
            if (part != "Definition") return;
            _xml.Each(list => { if (list is "Pnts" or "Faces") _xml.Each(item => { if (item == "P") points++; else if (item == "F") faces++; }); });
        });
        _found.Skip("Surface", Ground);
        _found.Problems.Add(SiteLandXmlFindings.Surface(name, points, faces));
    });

    private List<GeomItem> Items()
    {
        List<GeomItem> items = [];
        _xml.Each(child => { if (Item(child) is { } item) items.Add(item); });
        return items;
    }

    private GeomItem? Item(string kind)
    {
        if (kind is not ("Line" or "Curve" or "Spiral" or "IrregularLine" or "Chain")) return null;
        var item = new GeomItem(kind, _xml.Line)
        {
            Radius = Radius(kind == "Spiral" ? "radiusStart" : "radius"),
            EndRadius = Radius("radiusEnd"),
            Length = _xml.Number("length"),
            Turn = _xml.Attribute("rot") switch { "ccw" => 1, "cw" => -1, _ => 0 },
            StartDirection = Direction(kind == "Line" ? "dir" : "dirStart"),
            EndDirection = Direction(kind == "Line" ? "dir" : "dirEnd"),
            StartStation = _xml.Number("staStart"),
            SpiralKind = _xml.Attribute("spiType") ?? "",
        };
        if (kind == "Chain") Chain(item);
        else _xml.Each(child => Part(item, child));
        if (kind == "Line" && item is { Start: { } from, End: null, EndDirection: { } d, Length: > 0 and var length }) item.End = new(from.X + length * d.X, from.Y + length * d.Y);
        return item;
    }

    private void Part(GeomItem item, string child)
    {
        switch (child)
        {
            case "Start": item.Start = Place(); break;
            case "End": item.End = Place(); break;
            case "Center": item.Centre = Place(); break;
            case "PI": item.Meet = Place(); break;
            case "PntList2D" or "PntList3D": PointList(item, child == "PntList3D" ? 3 : 2); break;
        }
    }

    private void PointList(GeomItem item, int size)
    {
        var numbers = _xml.Numbers();
        if (numbers is null || numbers.Count % size != 0)
        {
            _found.Problems.AddAtLine(SiteLandXmlFindings.BadList, item.Line);
            item.Between.Add(new(double.NaN, double.NaN));
            return;
        }
        for (var i = 0; i < numbers.Count; i += size) item.Between.Add(new(numbers[i + 1], numbers[i], size == 3 ? numbers[i + 2] : double.NaN));
        if (item.Between.Count == 0) return;
        item.Start ??= item.Between[0];
        item.End ??= item.Between[^1];
    }

    /// <summary>Names of points, one after the other.</summary>
    private void Chain(GeomItem item)
    {
        var (missing, depth) = (0, item.Between);
        _xml.Tokens(name =>
        {
            if (_named.TryGetValue(name.ToString(), out var place)) depth.Add(place);
            else missing++;
        });
        if (missing > 0) _found.Problems.AddAtLine(SiteLandXmlFindings.ChainMissing(missing), item.Line);
        if (missing > 0 || item.Between.Count < 2) return;
        (item.Start, item.End) = (item.Between[0], item.Between[^1]);
    }

    private double Radius(string attribute) =>
        _xml.Attribute(attribute) is { } text && text.Trim().StartsWith("INF", StringComparison.OrdinalIgnoreCase) ? double.PositiveInfinity : _xml.Number(attribute);

    /// <summary>Clockwise from north, as nearly all files have it.</summary>
    private (double X, double Y)? Direction(string attribute)
    {
        var number = _xml.Number(attribute);
        if (!double.IsFinite(number) || Math.Abs(number) > 1e6) return null;
        if (_packed)
        {
            var (size, sign) = (Math.Round((decimal)Math.Abs(number), 10), Math.Sign(number));
            var degrees = Math.Truncate(size);
            var minutes = Math.Truncate((size - degrees) * 100);
            var seconds = ((size - degrees) * 100 - minutes) * 100;
            number = sign * (double)(degrees + minutes / 60 + seconds / 3600);
        }
        var (sin, cos) = Math.SinCos(number * _turn);
        return (sin, cos);
    }
}
