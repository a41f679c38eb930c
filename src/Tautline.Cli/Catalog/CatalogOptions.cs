namespace Tautline.Cli.Catalog;

internal enum CatalogPart { Fabrics, Sections, GatePosts, Posts, Parts, Rules }

/// <param name="Part">Nothing for all parts.</param>
internal sealed record CatalogOptions(CatalogPart? Part, string? Rules, bool Json, Engine.Quantities.UnitSystem Units);
