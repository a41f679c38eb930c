namespace Tautline.Cli.Catalog;

internal enum CatalogPart { Fabrics, Sections, GatePosts, Posts, Parts, Rules, RuleSets, RuleKeys }

/// <param name="Part">Nothing for all parts.</param>
internal sealed record CatalogOptions(CatalogPart? Part, Input.RulesChoice Rules, bool Json, Engine.Quantities.UnitSystem Units);
