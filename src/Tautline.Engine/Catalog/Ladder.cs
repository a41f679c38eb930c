namespace Tautline.Engine.Catalog;

/// <summary>Ascending sizes a thing comes in, in metres.</summary>
public sealed record Ladder(string Name, IReadOnlyList<double> Sizes, Provenance From);
