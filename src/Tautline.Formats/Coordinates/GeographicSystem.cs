namespace Tautline.Formats.Coordinates;

/// <summary>Longitude and latitude on a datum.</summary>
internal sealed record GeographicSystem(int EpsgCode, string Name, string Datum, string Source);
