using System.Collections.Immutable;
using System.Globalization;
using Tautline.Formats.Import;
using Tautline.Formats.Sites.Reading;

namespace Tautline.Formats.Sites.Xml;

/// <summary>
/// Reads fences, other barriers and gates from OpenStreetMap XML (API 0.6; tags by the OSM wiki's barrier pages). A fence is a way with barrier=fence; a gate mostly
/// a node on it.
/// </summary>
internal sealed class OsmReader
{
    private static readonly string[] GateTags = ["gate", "swing_gate", "lift_gate", "sliding_gate", "kissing_gate", "wicket_gate", "hampshire_gate", "bump_gate", "turnstile", "full-height_turnstile"];

    private readonly SiteXml _xml;
    private readonly SiteCollector _found;
    private readonly Dictionary<long, SiteVertex> _nodes = [];
    private readonly List<Thing> _gates = [];
    private readonly List<(Thing Way, List<long> Refs)> _ways = [];
    private int _missing;

    private sealed record Thing(long Id, ImmutableSortedDictionary<string, string> Tags, int Line);

    private OsmReader(SiteXml xml, SiteCollector found) => (_xml, _found) = (xml, found);

    public static void Read(SiteXml xml, SiteCollector found)
    {
        if (xml.Root is not ("osm" or "osmChange")) throw new SiteStop(SiteFindings.WrongRoot(xml.Root, "osm"));
        found.FormatName = $"OpenStreetMap XML {xml.Attribute("version")}".TrimEnd();
        found.Claims = Degrees.Claims;
        var reader = new OsmReader(xml, found);
        reader.Document();
        reader.Finish();
    }

    private void Document() => _xml.Each(child =>
    {
        if (child is "node" or "way" or "relation" && IsDeleted()) _found.Skip(child, "it is deleted");
        else if (child == "node") Node();
        else if (child == "way") Way();
        else if (child == "relation") _found.Skip(child, "a relation");
        else if (child is "create" or "modify") Document();
    });

    private bool IsDeleted() => _xml.Attribute("visible") == "false" || _xml.Attribute("action") == "delete";

    private long Id(string attribute) => long.TryParse(_xml.Attribute(attribute), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var id) ? id : 0;

    private void Node()
    {
        var (id, line) = (Id("id"), _xml.Line);
        var place = new SiteVertex(_xml.Number("lon"), _xml.Number("lat"));
        if (Degrees.AreDegrees(place))
        {
            if (_nodes.Count >= _found.Options.Limits.Vertices) throw new SiteStop(SiteFindings.TooMany(_found.Options.Limits), line);
            _nodes[id] = place;
        }
        else _found.Problems.AddAtLine(OsmFindings.BadNode(id), line);
        var tags = SiteFeature.NoTags;
        _xml.Each(child => { if (child == "tag") tags = WithTag(tags); });
        if (IsGate(tags) || tags.ContainsKey("entrance")) _gates.Add(new(id, tags, line));
        else if (tags.Count > 0) _found.Skip("node", "no gate");
    }

    private ImmutableSortedDictionary<string, string> WithTag(ImmutableSortedDictionary<string, string> tags) =>
        tags.Count < 500 && _xml.Attribute("k") is { } key ? tags.SetItem(_found.Shared(key), _found.Shared(_xml.Attribute("v") ?? "")) : tags;

    private static bool IsGate(ImmutableSortedDictionary<string, string> tags) => tags.TryGetValue("barrier", out var barrier) && GateTags.Contains(barrier);

    private void Way()
    {
        var (id, line, refs) = (Id("id"), _xml.Line, new List<long>());
        var tags = SiteFeature.NoTags;
        _xml.Each(child =>
        {
            if (child == "nd") refs.Add(Id("ref"));
            else if (child == "tag") tags = WithTag(tags);
        });
        if (tags.ContainsKey("barrier") || tags.ContainsKey("fence_type")) _ways.Add((new(id, tags, line), refs));
        else _found.Skip("way", "no barrier");
    }

    private void Finish()
    {
        var onFence = new HashSet<long>();
        foreach (var (way, refs) in _ways)
        {
            var layer = LayerOf(way.Tags);
            if (layer == "fence") onFence.UnionWith(refs);
            AddWay(way, refs, layer);
        }
        foreach (var gate in _gates) AddGate(gate, onFence);
        if (_missing > 0) _found.Problems.Add(OsmFindings.NodesMissing(_missing));
        if (_ways.Count + _gates.Count > 0) _found.Problems.Add(OsmFindings.Licence);
    }

    private static string LayerOf(ImmutableSortedDictionary<string, string> tags)
    {
        if (!tags.TryGetValue("barrier", out var barrier) || barrier == "fence") return "fence";
        return GateTags.Contains(barrier) ? "gate" : $"barrier {barrier}";
    }

    private void AddWay(Thing way, List<long> refs, string layer)
    {
        List<List<SiteVertex>> pieces = [[]];
        foreach (var reference in refs)
        {
            if (_nodes.TryGetValue(reference, out var place)) pieces[^1].Add(place);
            else
            {
                _missing++;
                if (pieces[^1].Count > 0) pieces.Add([]);
            }
        }
        var (number, part) = (_found.NextNumber(), 1);
        foreach (var piece in pieces.Where(p => p.Count > 1))
            _found.Line(Feature(way, "way", layer, number, part++), piece);
        if (part == 1) _found.Skip("way", "its nodes are not in the file");
    }

    private void AddGate(Thing gate, HashSet<long> onFence)
    {
        if (!_nodes.TryGetValue(gate.Id, out var place)) return;
        // Most entrances are doors of houses.
        if (!IsGate(gate.Tags) && !onFence.Contains(gate.Id)) _found.Skip("node", "an entrance that is on no fence");
        else _found.Point(Feature(gate, "node", "gate", _found.NextNumber(), 1) with { Vertices = [place] });
    }

    private static SiteFeature Feature(Thing thing, string kind, string layer, int number, int part) => new()
    {
        Number = number,
        Part = part,
        Kind = kind,
        Layer = layer,
        Label = thing.Tags.TryGetValue("name", out var name) ? name : string.Create(CultureInfo.InvariantCulture, $"{kind} {thing.Id}"),
        Line = thing.Line,
        Tags = thing.Tags.SetItem("osm", string.Create(CultureInfo.InvariantCulture, $"{kind}/{thing.Id}")),
        Vertices = [],
    };
}

internal static class OsmFindings
{
    public static readonly Finding Licence = new(
        ProblemSeverity.Information, "Licence", "The shapes are from OpenStreetMap, under the Open Database License: keep the credit '(c) OpenStreetMap contributors'. They are drawn from pictures, good to a few metres.");

    public static Finding BadNode(long id) => new(
        ProblemSeverity.Warning, "BadNode", SiteFindings.Text($"Node {id} has no latitude within 90 and longitude within 180 degrees. It is left out."), "Fetch the extract again.");

    public static Finding NodesMissing(int count) => new(
        ProblemSeverity.Warning, "NodesMissing", SiteFindings.Text($"{SiteFindings.Count(count, "node", "nodes")} that ways name {SiteFindings.Are(count)} not in the file. The ways are broken there."),
        "Fetch a larger extract if a fence is cut.");
}
