using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>Reads one Surface element: points by id, faces by the ids of their corners, outlines and breaklines of its source data.</summary>
internal sealed class TinReader(XmlReader reader, string name, int most, ProblemList problems)
{
    private readonly XmlNumbers _numbers = new(reader, 3 * most);
    private readonly List<FilePoint> _points = [];
    private readonly Dictionary<long, int> _places = [];
    private readonly List<(long A, long B, long C)> _faces = [];
    private readonly List<int> _faceLines = [];
    private readonly List<FileLine> _boundaries = [];
    private readonly List<FileLine> _breaklines = [];
    private int _invisible;
    private bool _refused;

    /// <summary>The figures the file states: plan area, area on the slope, lowest, highest; NaN where it does not.</summary>
    public (double Plan, double OnSlope, double Lowest, double Highest) Stated { get; private set; } = (double.NaN, double.NaN, double.NaN, double.NaN);

    private int Line => reader is IXmlLineInfo info ? info.LineNumber : 0;

    /// <summary>Reads from the element's start to its end; null where it gives no ground, which is then among the problems.</summary>
    public FaceContent? Read()
    {
        if (!reader.IsEmptyElement)
        {
            var depth = reader.Depth;
            while (reader.Read() && reader.Depth > depth)
                if (reader.NodeType == XmlNodeType.Element) ReadElement();
        }
        return _refused ? null : Content();
    }

    private void ReadElement()
    {
        if (reader.Depth > LandXmlSurfaceReader.DeepestNesting) throw new LandXmlStop(LandXmlFindings.TooDeep);
        switch (reader.LocalName)
        {
            case "P": ReadPoint(); break;
            case "F": ReadFace(); break;
            case "Definition": ReadDefinition(); break;
            case "Boundary": ReadLines("boundary", reader.GetAttribute("bndType") ?? "", _boundaries); break;
            case "Breakline": ReadLines("breakline", reader.GetAttribute("brkType") ?? "", _breaklines); break;
        }
    }

    private void ReadDefinition()
    {
        var type = reader.GetAttribute("surfType") ?? "TIN";
        if (!type.Equals("TIN", StringComparison.OrdinalIgnoreCase))
        {
            problems.AddAtLine(LandXmlFindings.NotTin(name, type), Line);
            _refused = true;
        }
        Stated = (Number("area2DSurf"), Number("area3DSurf"), Number("elevMin"), Number("elevMax"));
    }

    private double Number(string attribute) =>
        double.TryParse(reader.GetAttribute(attribute), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;

    private void ReadPoint()
    {
        var line = Line;
        const NumberStyles Digits = NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        var hasId = long.TryParse(reader.GetAttribute("id"), Digits, CultureInfo.InvariantCulture, out var id);
        var elsewhere = reader.GetAttribute("pntRef") is not null;
        _numbers.Read();
        if (!hasId) problems.AddAtLine(LandXmlFindings.NoId, line);
        else if (elsewhere) problems.AddAtLine(LandXmlFindings.PointElsewhere(id), line);
        else if (!_numbers.Sound || _numbers.Found.Count != 3) problems.AddAtLine(LandXmlFindings.BadPoint(id), line);
        else AddPoint(id, new(_numbers.Found[1], _numbers.Found[0], _numbers.Found[2]), line);
    }

    private void AddPoint(long id, FilePoint point, int line)
    {
        if (_places.TryAdd(id, _points.Count)) _points.Add(point);
        else if (_points[_places[id]] != point) problems.AddAtLine(LandXmlFindings.IdTwice(id), line);
        if (_points.Count > most) throw new LandXmlStop(LandXmlFindings.TooMany(most));
    }

    private void ReadFace()
    {
        var (line, seen) = (Line, reader.GetAttribute("i")?.Trim() is not ("1" or "true"));
        _numbers.Read();
        if (!seen)
        {
            _invisible++;
            return;
        }
        if (_numbers is not { Sound: true, Found: [var a, var b, var c] }) problems.AddAtLine(LandXmlFindings.BadFace(_numbers.Found.Count), line);
        else
        {
            _faces.Add(((long)Math.Clamp(a, -1, 1e15), (long)Math.Clamp(b, -1, 1e15), (long)Math.Clamp(c, -1, 1e15)));
            _faceLines.Add(line);
        }
        if (_faces.Count / 2 > most) throw new LandXmlStop(LandXmlFindings.TooMany(most));
    }

    /// <summary>Reads the point lists of a boundary or breakline; the names of its attributes differ between exporters.</summary>
    private void ReadLines(string what, string kind, List<FileLine> into)
    {
        var called = reader.GetAttribute("name") ?? reader.GetAttribute("desc") ?? "";
        if (reader.IsEmptyElement) return;
        var depth = reader.Depth;
        while (reader.Read() && reader.Depth > depth)
        {
            if (reader.NodeType != XmlNodeType.Element || reader.LocalName is not ("PntList3D" or "PntList2D")) continue;
            var (line, size) = (Line, reader.LocalName == "PntList3D" ? 3 : 2);
            _numbers.Read();
            if (_numbers.Sound && _numbers.Found.Count >= 2 * size && _numbers.Found.Count % size == 0) into.Add(new(called, kind, Points(size)));
            else problems.AddAtLine(LandXmlFindings.BadLine(what), line);
        }
    }

    private ImmutableArray<FilePoint> Points(int size)
    {
        var found = _numbers.Found;
        var flat = size == 2 || Enumerable.Range(0, found.Count / 3).All(i => found[3 * i + 2] == 0);
        return [.. Enumerable.Range(0, found.Count / size).Select(
            i => new FilePoint(found[i * size + 1], found[i * size], flat ? double.NaN : found[i * size + 2]))];
    }

    private FaceContent? Content()
    {
        var corners = Corners();
        if (corners.IsEmpty)
        {
            problems.Add(LandXmlFindings.NoFaces(name));
            return null;
        }
        return new()
        {
            Name = name,
            Points = [.. _points],
            Faces = corners,
            InvisibleFaces = _invisible,
            Boundaries = [.. _boundaries],
            Breaklines = [.. _breaklines],
        };
    }

    private ImmutableArray<int> Corners()
    {
        var corners = ImmutableArray.CreateBuilder<int>(3 * _faces.Count);
        for (var i = 0; i < _faces.Count; i++)
        {
            var (a, b, c) = _faces[i];
            if (_places.TryGetValue(a, out var p) && _places.TryGetValue(b, out var q) && _places.TryGetValue(c, out var r)) corners.AddRange(p, q, r);
            else problems.AddAtLine(LandXmlFindings.FaceWithoutPoint(new[] { a, b, c }.First(id => !_places.ContainsKey(id))), _faceLines[i]);
        }
        return corners.ToImmutable();
    }
}

/// <summary>Ends the reading of a file; the reason is the finding.</summary>
internal sealed class LandXmlStop(Finding finding) : Exception
{
    public Finding Finding { get; } = finding;
}
