namespace Tautline.Engine.Quantities;

public static partial class LengthText
{
    /// <summary>As people read it: feet, inches and sixteenths, or metres to the millimetre.</summary>
    public static string Show(Length length, UnitSystem units)
        => units == UnitSystem.Metric ? Metric(length) : FeetInches(length, 16);
}
