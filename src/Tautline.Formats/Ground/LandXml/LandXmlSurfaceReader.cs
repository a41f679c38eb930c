using System.Collections.Immutable;
using System.Xml;
using Tautline.Formats.Ground.Reading;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.LandXml;

/// <summary>
/// Reads a triangulated surface from LandXML 1.0 to 2.0 (landxml.org schemas), by local names, since the namespace differs by version. The file is
/// read in passing; no document type, no entity from outside.
/// </summary>
internal sealed class LandXmlSurfaceReader
{
    public const int DeepestNesting = 64;

    private const int OfAKind = 20;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersFromEntities = 1 << 20,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
    };

    private readonly GroundOptions _options;
    private readonly ProblemList _problems;
    private readonly LandXmlUnits _units;
    private readonly List<(string Name, string About)> _surfaces = [];
    private ImmutableArray<GroundQuestion> _questions = [];
    private FaceContent? _content;

    private LandXmlSurfaceReader(GroundOptions options)
    {
        (_options, _problems) = (options, new(options.SourceName, null, OfAKind));
        _units = new(_problems);
    }

    public static GroundReading Read(ByteSource source, GroundOptions options)
    {
        var reader = new LandXmlSurfaceReader(options);
        using var stream = source.Open();
        reader.ReadSafely(stream);
        return new()
        {
            Format = GroundFormat.LandXml,
            Content = reader._content,
            Claims = reader._units.Claims,
            Questions = reader._questions,
            Problems = reader._problems.ToImmutable(),
        };
    }

    private void ReadSafely(Stream stream)
    {
        var guard = new MarkupGuard(stream);
        try
        {
            using var reader = XmlReader.Create(guard, Settings);
            ReadDocument(reader);
            Choose();
        }
        catch (XmlException fault)
        {
            // The words of the exception are not for people, and a trimmed build has none.
            _problems.AddAtLine(guard.HasDoctype ? LandXmlFindings.Dtd : LandXmlFindings.NotXml, Math.Max(1, fault.LineNumber), Math.Max(1, fault.LinePosition));
            _content = null;
        }
        catch (LandXmlStop stop)
        {
            _problems.Add(stop.Finding);
            _content = null;
        }
    }

    private void ReadDocument(XmlReader reader)
    {
        reader.MoveToContent();
        if (reader.LocalName != "LandXML") throw new LandXmlStop(LandXmlFindings.NotLandXml(reader.LocalName));
        while (!reader.EOF)
        {
            if (reader.Depth > DeepestNesting) throw new LandXmlStop(LandXmlFindings.TooDeep);
            // Skipping an element already stands on what follows it.
            if (reader.NodeType != XmlNodeType.Element || !ReadElement(reader)) reader.Read();
        }
    }

    /// <summary>True when the reader already stands behind the element.</summary>
    private bool ReadElement(XmlReader reader)
    {
        switch (reader.LocalName)
        {
            case "Metric" or "Imperial": _units.ReadUnits(reader); break;
            case "CoordinateSystem": _units.ReadSystem(reader); break;
            case "Surface": return ReadSurface(reader);
        }
        return false;
    }

    private bool ReadSurface(XmlReader reader)
    {
        var name = reader.GetAttribute("name") ?? "";
        _surfaces.Add((name, string.Join(", ", new[] { reader.GetAttribute("desc"), reader.GetAttribute("state") }.Where(t => !string.IsNullOrWhiteSpace(t)))));
        if (!IsWanted(name))
        {
            if (_options.Surface is null) _content = null;
            reader.Skip();
            return true;
        }
        var tin = new TinReader(reader, name, _options.Limits.Points, _problems);
        if (tin.Read() is { } content) Keep(content, tin);
        return false;
    }

    // Without a choice the first is read, in case it is the only one.
    private bool IsWanted(string name) => _options.Surface is { } wanted ? wanted == name || wanted == Number(_surfaces.Count) : _surfaces.Count == 1;

    private void Keep(FaceContent content, TinReader tin)
    {
        _content = content;
        _problems.Add(LandXmlFindings.Surface(content.Name, content.Points.Length, content.Faces.Length / 3, content.InvisibleFaces));
        if (content.Breaklines.Length + content.Boundaries.Length > 0)
            _problems.Add(LandXmlFindings.PlanShapes(content.Breaklines.Length, content.Boundaries.Length));
        var (plan, slope, lowest, highest) = tin.Stated;
        if (_units.AreasMatch) TellArea("plan area", plan, content.PlanArea);
        if (_units.AreasMatch && _units.Claims.HeightUnit == _units.Claims.PlanUnit) TellArea("area on the slope", slope, content.SlopeArea);
        var (ourLowest, ourHighest) = content.Heights;
        if (Math.Abs(lowest - ourLowest) > 0.001 || Math.Abs(highest - ourHighest) > 0.001)
            _problems.Add(LandXmlFindings.HeightsDiffer(lowest, highest, ourLowest, ourHighest));
    }

    // Exporters sum before they round; a missing face of a large surface is more than a millionth.
    private void TellArea(string which, double stated, double ours)
    {
        if (Math.Abs(stated - ours) > 1e-5 * ours) _problems.Add(LandXmlFindings.AreaDiffers(which, stated, ours));
    }

    private void Choose()
    {
        if (_surfaces.Count == 0) _problems.Add(LandXmlFindings.NoSurface);
        else if (_options.Surface is { } wanted)
        {
            var found = _surfaces.Where((s, i) => s.Name == wanted || Number(i + 1) == wanted).Count();
            if (found == 0) _problems.Add(LandXmlFindings.SurfaceNotFound(wanted, _surfaces.Select(s => s.Name)));
            if (found > 1) _problems.Add(LandXmlFindings.SeveralOfName(wanted, found));
        }
        else if (_surfaces.Count > 1) Ask();
    }

    private void Ask()
    {
        _content = null;
        var choices = _surfaces.Select((s, i) => new GroundChoice(
            s.Name.Length == 0 || _surfaces.Count(o => o.Name == s.Name) > 1 ? Number(i + 1) : s.Name, s.About.Length > 0 ? $"{s.Name} ({s.About})" : s.Name));
        _questions = [new(GroundQuestionKind.Surface, LandXmlFindings.SurfaceQuestion(_surfaces.Count), [.. choices])];
    }

    private static string Number(int position) => FormattableString.Invariant($"#{position}");
}
