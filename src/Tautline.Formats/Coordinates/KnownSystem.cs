namespace Tautline.Formats.Coordinates;

/// <summary>A numbered system a user may state, for a list to choose from.</summary>
/// <param name="EpsgCode">Its number.</param>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Unit of its coordinates; null for degrees.</param>
public sealed record KnownSystem(int EpsgCode, string Name, LinearUnit? Unit);
