using Tautline.Formats.Coordinates;

namespace Tautline.Formats.StakeOut;

/// <summary>A post to be staked, in the unit of its list.</summary>
/// <param name="Point">The mark painted on the stake.</param>
/// <param name="Northing">North on the list's grid.</param>
/// <param name="Easting">East on the list's grid.</param>
/// <param name="Elevation">Of the ground; nothing where it was not measured.</param>
/// <param name="Top">How far the post's top stands over the ground.</param>
/// <param name="Description">What stands there, in words.</param>
public sealed record Stake(string Point, double Northing, double Easting, double? Elevation, double Top, string Description);

/// <summary>The posts of a plan as stakes, line by line in order of station.</summary>
/// <param name="Unit">Of all lengths and coordinates.</param>
/// <param name="System">The map grid or local system of the coordinates; nothing where they are the job's own east and north.</param>
/// <param name="Stakes">One for each post.</param>
public sealed record StakeList(LinearUnit Unit, string? System, IReadOnlyList<Stake> Stakes);
