using Tautline.Formats.Coordinates;

namespace Tautline.Formats.GeoJson;

/// <summary>How a file's own coordinates are to be read, once settled.</summary>
/// <param name="FileCoordinates">In words.</param>
/// <param name="Unit">Unit of the coordinates; metres for degrees, whose heights are metres.</param>
/// <param name="Projection">The grid; null for a local system.</param>
/// <param name="Degrees">True when the coordinates are longitude and latitude.</param>
internal sealed record FileFrame(string FileCoordinates, LinearUnit Unit, GridProjection? Projection, bool Degrees)
{
    /// <summary>Grid metres of a position.</summary>
    public (double East, double North) ToGrid(RawPosition position) => Degrees
        ? Projection!.ToGrid(new(position.Y, position.X))
        : (Unit.ToMetres(position.X), Unit.ToMetres(position.Y));
}
