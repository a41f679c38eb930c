namespace Tautline.Engine.Site;

/// <summary>How the angles of a traverse close, in degrees and in the sense they were read.</summary>
/// <param name="Count">Angles read.</param>
/// <param name="SumDegrees">What they sum to.</param>
/// <param name="ExpectedDegrees">What they should: (n - 2) 180 for the interior angles of a loop, one full turn for its deflections.</param>
/// <param name="Spread">True where each angle was corrected by its share before the headings were carried.</param>
public sealed record AngularClosure(int Count, double SumDegrees, double ExpectedDegrees, bool Spread)
{
    public double MisclosureDegrees => SumDegrees - ExpectedDegrees;

    /// <summary>What is added to each angle: equal shares, for each was read with the same care whatever its size.</summary>
    public double CorrectionDegrees => -MisclosureDegrees / Count;
}
