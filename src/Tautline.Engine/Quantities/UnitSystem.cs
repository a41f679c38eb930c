namespace Tautline.Engine.Quantities;

/// <summary>How lengths and stations are written for people. It never changes what is calculated.</summary>
public enum UnitSystem
{
    UsCustomary,
    Metric,
}
