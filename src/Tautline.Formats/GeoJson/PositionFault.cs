namespace Tautline.Formats.GeoJson;

internal enum PositionFault
{
    None,
    TooFewNumbers,
    NotANumber,
    NotFinite,
}
