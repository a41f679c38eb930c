using Tautline.Engine.Quantities;

namespace Tautline.Engine.Catalog;

/// <summary>Fabric that is made: clear opening, wire, and the standard heights.</summary>
public sealed record FabricRow(Length Mesh, string Gauge, Length Wire, IReadOnlyList<Length> Heights, Provenance From);

/// <summary>Published count of diamonds over a fabric's height.</summary>
public sealed record DiamondRow(Length Mesh, Length Height, double Diamonds, Provenance From);

/// <summary>What a post or rail is rolled as.</summary>
public enum SectionForm
{
    Pipe,

    /// <summary>Roll-formed C or H, or square: what it displaces is its steel, or less than the pipe around it.</summary>
    Shape,

    /// <summary>Roll-formed with loops of its own: fabric is woven onto it, without bar and bands.</summary>
    Integral,
}

/// <summary>Pipe or a rolled shape.</summary>
/// <param name="OutsideDiameter">Of pipe; of a shape its larger side.</param>
public sealed record Section(
    string Id, string Group, string TradeSize, Length OutsideDiameter, Length Wall, LinearMass Weight, Provenance From)
{
    public SectionForm Form { get; init; }
}

/// <summary>Posts usually taken up to a height; never a proof that the fence stands.</summary>
public sealed record PostSizeRow(Length HeightTo, Length LinePost, Length TerminalPost, Provenance From);

/// <summary>Gate post by the width of one leaf, for fences over one height and up to another.</summary>
public sealed record GatePostRow(
    Length FenceOver, Length FenceTo, Length LeafTo, Length OutsideDiameter, Length HoleDiameter, Length HoleDepth, Provenance From);

/// <summary>A fitting or other bought thing, by its trade name.</summary>
public sealed record Part(string Id, string Name, Provenance From);
