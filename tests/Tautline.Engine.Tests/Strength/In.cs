using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Strength;

/// <summary>Units of the worked examples, SI for one of each, and bare numbers of them.</summary>
internal static class In
{
    public const double Foot = 0.3048, Inch = 0.0254, Pound = 4.4482216152605, Psf = 47.88025898033584, Mph = 0.44704, Psi = 6894.757293168361, Ksi = 6894757.293168361;

    public static Plain Of(double value, double unit = 1) => new(value * unit);

    /// <summary>Within what the source printed, or the note of the reference widened it to.</summary>
    public static void Near(double printed, double found, double tolerance) => Assert.InRange(found, printed - tolerance, printed + tolerance);
}
