namespace Tautline.Formats.Sites;

/// <summary>A place of a shape, in its file's own coordinates.</summary>
/// <param name="X">East, or longitude in degrees.</param>
/// <param name="Y">North, or latitude in degrees.</param>
/// <param name="Z">Height in the file's unit of heights; NaN where it gives none.</param>
/// <param name="Bulge">
/// Of the step that leaves this vertex: the tangent of a quarter of the angle at the arc's centre, above zero where the arc turns anticlockwise, 0 where
/// the step is straight (DXF Reference, LWPOLYLINE, code 42).
/// </param>
public readonly record struct SiteVertex(double X, double Y, double Z = double.NaN, double Bulge = 0)
{
    internal bool SamePlaceAs(SiteVertex other) => X == other.X && Y == other.Y;
}
