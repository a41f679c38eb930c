using System.Text.Json;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Catalog;

/// <summary>What can be bought and how it measures: fabrics, pipe, gate posts, parts; each row with its source.</summary>
public sealed class FenceCatalog
{
    private readonly Dictionary<string, Section> sections;
    private readonly Dictionary<string, Part> parts;

    private FenceCatalog(CatalogFile file)
    {
        Provenance From(string source, string clause, Confidence confidence) => Sources.From(file.Sources, source, clause, confidence);
        Fabrics = [.. file.Fabrics.Select(f => new FabricRow(
            Length.FromInches(f.MeshIn), f.Gauge, Length.FromInches(f.WireIn), [.. f.HeightsIn.Select(Length.FromInches)],
            From(f.Source, f.Clause, f.Confidence)))];
        Diamonds = [.. file.Diamonds.Select(d => new DiamondRow(
            Length.FromInches(d.MeshIn), Length.FromInches(d.HeightIn), d.Diamonds, From(d.Source, d.Clause, d.Confidence)))];
        Sections = [.. file.Sections.Select(s => new Section(
            s.Id, s.Group, s.TradeSize, Length.FromInches(s.OdIn), Length.FromInches(s.WallIn), LinearMass.FromPoundsPerFoot(s.WeightLbPerFt),
            From(s.Source, s.Clause, s.Confidence))
        {
            Form = s.Form == "integral" ? SectionForm.Integral : s.Form == "open" ? SectionForm.Shape : SectionForm.Pipe,
        })];
        PostSizes = [.. file.PostSizes.Select(p => new PostSizeRow(
            Length.FromFeet(p.HeightToFt), Length.FromInches(p.LineOdIn), Length.FromInches(p.TerminalOdIn),
            From(p.Source, p.Clause, p.Confidence)))];
        GatePosts = [.. file.GatePosts.Select(g => new GatePostRow(
            Length.FromFeet(g.FenceOverFt), Length.FromFeet(g.FenceToFt), Length.FromFeet(g.LeafToFt), Length.FromInches(g.OdIn),
            Length.FromInches(g.HoleDiameterIn), Length.FromInches(g.HoleDepthIn), From(g.Source, g.Clause, g.Confidence)))];
        Parts = [.. file.Parts.Select(p => new Part(p.Id, p.Name, From(p.Source, p.Clause, p.Confidence)))];
        RailDiameter = Length.FromInches(file.Rails[0].OdIn);
        sections = Sections.ToDictionary(s => s.Id, StringComparer.Ordinal);
        parts = Parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
    }

    public IReadOnlyList<FabricRow> Fabrics { get; }

    public IReadOnlyList<DiamondRow> Diamonds { get; }

    public IReadOnlyList<Section> Sections { get; }

    public IReadOnlyList<PostSizeRow> PostSizes { get; }

    public IReadOnlyList<GatePostRow> GatePosts { get; }

    public IReadOnlyList<Part> Parts { get; }

    /// <summary>Outside diameter of the usual top rail.</summary>
    public Length RailDiameter { get; }

    /// <summary>The catalogue this build carries.</summary>
    public static FenceCatalog BuiltIn() => Read(Resource.Text("catalog.json"));

    /// <summary>Reads a catalogue file.</summary>
    /// <exception cref="JsonException">The text is no catalogue; the message names the line.</exception>
    public static FenceCatalog Read(ReadOnlySpan<byte> json) => new(JsonSerializer.Deserialize(json, CatalogJson.Default.CatalogFile)!);

    public Section? FindSection(string id) => sections.GetValueOrDefault(id);

    /// <summary>Schedule 40 pipe of an outside diameter.</summary>
    public Section? FindPipe(Length outsideDiameter)
        => Sections.FirstOrDefault(s => s.Group == "Sch 40" && s.OutsideDiameter.Nanometres == outsideDiameter.Nanometres);

    /// <exception cref="KeyNotFoundException">No part has this id.</exception>
    public Part Part(string id) => parts[id];

    public FabricRow? FindFabric(Length mesh, string gauge)
        => Fabrics.FirstOrDefault(f => f.Mesh.Nanometres == mesh.Nanometres && f.Gauge == gauge);

    public DiamondRow? FindDiamonds(Length mesh, Length height)
        => Diamonds.FirstOrDefault(d => d.Mesh.Nanometres == mesh.Nanometres && d.Height.Nanometres == height.Nanometres);

    /// <summary>The smallest gate post listed for a leaf; the boundary of a class takes the smaller post.</summary>
    public GatePostRow? FindGatePost(Length fenceHeight, Length leaf)
    {
        var (height, width) = (fenceHeight.Nanometres, leaf.Nanometres);
        return GatePosts
            .Where(g => height > g.FenceOver.Nanometres && height <= g.FenceTo.Nanometres && width <= g.LeafTo.Nanometres)
            .MinBy(g => g.LeafTo.Nanometres);
    }
}
