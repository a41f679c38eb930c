namespace Tautline.Formats.GeoJson;

/// <summary>A position as the file has it.</summary>
/// <param name="X">First number.</param>
/// <param name="Y">Second number.</param>
/// <param name="Z">Third number; NaN when there is none.</param>
/// <param name="Offset">Where it begins in the text, bytes.</param>
/// <param name="Fault">What is wrong with it.</param>
internal readonly record struct RawPosition(double X, double Y, double Z, int Offset, PositionFault Fault)
{
    public bool HasZ => !double.IsNaN(Z);

    public bool SamePlaceAs(RawPosition other) => X == other.X && Y == other.Y;
}
