namespace Tautline.Formats.Coordinates;

/// <summary>A system that is known but no fence should be measured in.</summary>
internal sealed record RefusedSystem(int EpsgCode, string Name, string Reason, string Source);
