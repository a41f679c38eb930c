namespace Tautline.Formats.Ground;

/// <summary>The kinds of ground file that are read.</summary>
public enum GroundFormat
{
    /// <summary>Surveyed points as text, one a line.</summary>
    SurveyPoints,

    /// <summary>A triangulated surface in LandXML.</summary>
    LandXml,

    /// <summary>A grid of heights as text, by Esri's layout.</summary>
    AsciiGrid,

    /// <summary>A grid of heights as TIFF with georeference.</summary>
    GeoTiff,
}
