using Tautline.Engine.Quantities;

namespace Tautline.Engine.Fabric;

/// <summary>What a crew measured on a roll or on hung fabric. All may be left out but not all at once.</summary>
/// <param name="TenPickets">Over ten pickets, along the fabric.</param>
/// <param name="Diamonds">Counted plumb, selvages left out.</param>
/// <param name="Over">The height over which they were counted.</param>
/// <param name="Squeeze">Gap left at the interlock when two neighbouring wires are pinched together.</param>
public sealed record MeshMeasured(Length? TenPickets = null, double? Diamonds = null, Length? Over = null, Length? Squeeze = null);

/// <summary>What the squeeze test says. The range is common practice; no source gives one.</summary>
public enum Squeezed { NotMeasured, BarTight, Good, Slack }

/// <summary>One way the fabric may have been delivered, and what has become of it.</summary>
public sealed record MeshChange(MeshShape Delivered, MeshShape Now)
{
    /// <summary>Length gained over length delivered; below zero where the fabric has been pushed together.</summary>
    public double Stretch => Now.Advance / Delivered.Advance - 1;

    /// <summary>Lost from the height of one diamond; below zero where the diamonds stand taller.</summary>
    public Length LostPerDiamond => 2 * (Delivered.HalfDiamond - Now.HalfDiamond);
}

/// <summary>
/// How far fabric is stretched against as delivered. A diagnosis only: specifications forbid distorting the diamonds or reducing the
/// height (UFGS-02821A, 3.7), so no length is ever planned from it.
/// </summary>
/// <param name="Changes">One where the delivered mesh is known, by calibration or by wire measured both ways; else against both ends of its range.</param>
/// <param name="Diamonds">Over one width of fabric.</param>
/// <param name="SqueezeLow">Less is bar-tight.</param>
/// <param name="SqueezeHigh">More is slack.</param>
public sealed record MeshReading(
    IReadOnlyList<MeshChange> Changes, double Diamonds, Squeezed Squeezed, Length SqueezeLow, Length SqueezeHigh)
{
    public double StretchLow => Changes.Min(c => c.Stretch);

    public double StretchHigh => Changes.Max(c => c.Stretch);

    /// <summary>Height lost over one width of fabric.</summary>
    public Length LostLow => Changes.Min(c => c.LostPerDiamond) * Diamonds;

    public Length LostHigh => Changes.Max(c => c.LostPerDiamond) * Diamonds;

    /// <summary>False where part of the range is stretched and part is not: then only a calibrated roll can tell.</summary>
    public bool Decided => StretchLow >= 0 || StretchHigh <= 0;
}
