namespace Tautline.Formats.Import;

/// <summary>Which lengths an import gives.</summary>
public enum LengthKind
{
    /// <summary>As a tape laid level on the site reads them: the grid divided by the combined factor of the outline's middle.</summary>
    Ground,

    /// <summary>As the map grid has them.</summary>
    Grid,
}
