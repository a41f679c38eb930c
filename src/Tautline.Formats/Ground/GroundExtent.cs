using System.Globalization;

namespace Tautline.Formats.Ground;

/// <summary>An upright box in plan, in whatever coordinates its owner says.</summary>
public readonly record struct GroundExtent(double West, double South, double East, double North)
{
    internal static readonly GroundExtent Nothing =
        new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>The longer side; not above zero for a point or nothing.</summary>
    public double Size => Math.Max(East - West, North - South);

    internal bool IsEmpty => !(East >= West && North >= South);

    internal GroundExtent With(double east, double north) =>
        new(Math.Min(West, east), Math.Min(South, north), Math.Max(East, east), Math.Max(North, north));

    /// <summary>Larger by a margin on each side.</summary>
    public GroundExtent Widened(double margin) => new(West - margin, South - margin, East + margin, North + margin);

    internal bool Meets(GroundExtent other) => West <= other.East && East >= other.West && South <= other.North && North >= other.South;

    internal GroundExtent Scaled(double factor) => new(West * factor, South * factor, East * factor, North * factor);

    /// <summary>"N 5.5 to 7, E 1 to 2".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"N {South:0.###} to {North:0.###}, E {West:0.###} to {East:0.###}");
}
