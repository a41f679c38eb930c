namespace Tautline.Formats.Import;

/// <summary>A corner of an imported line.</summary>
/// <param name="East">Metres east of the job's origin, rounded to the micrometre.</param>
/// <param name="North">Metres north of the job's origin, rounded to the micrometre.</param>
/// <param name="Elevation">Metres, as the file has it; null when the file gives none. Which zero it counts from, the file does not say.</param>
public readonly record struct ImportedPoint(double East, double North, double? Elevation = null);
