using Tautline.Engine.Quantities;

namespace Tautline.Formats.Csv;

/// <summary>Units of a table: for lengths along the fence, for sizes, for volumes and for weights.</summary>
public sealed record CsvUnits(string Long, string Short, string Volume, string Mass, bool Us)
{
    public static CsvUnits Of(UnitSystem units)
        => units == UnitSystem.Metric ? new("m", "mm", "m3", "kg", false) : new("ft", "in", "ft3", "lb", true);

    public double InLong(Length length) => Us ? length.Feet : length.Metres;

    public double InShort(Length length) => Us ? length.Inches : length.Metres * 1000;

    public double InVolume(Volume volume) => Us ? volume.CubicFeet : volume.CubicMetres;

    public string Area => Us ? "ft2" : "m2";

    public double InArea(Area area) => Us ? area.SquareFeet : area.SquareMetres;

    public double InMass(Mass mass) => Us ? mass.Pounds : mass.Kilograms;
}
