namespace Tautline.Engine.Layout.Fit;

/// <summary>The stages of a fit in the order in which they are satisfied.</summary>
public enum FitPhase
{
    /// <summary>Least breach of bends and rakes that cannot all be kept.</summary>
    HardLimits,

    /// <summary>Least breach of limits for which no remedy is allowed.</summary>
    Forbidden,

    /// <summary>Least priced cut and fill.</summary>
    Grading,

    /// <summary>Least post length over stock.</summary>
    PostLength,

    /// <summary>Smoothest rail.</summary>
    Flow,
}

/// <summary>What one phase reached, over all blocks of the line.</summary>
/// <param name="Value">Value of the phase's sum.</param>
/// <param name="Residual">Largest breach of a constraint, metres.</param>
/// <param name="Dual">Largest component of the stationarity residual, as a share of the largest price or multiplier.</param>
/// <param name="Gap">Duality gap, in the unit of the value.</param>
/// <param name="Iterations">Most steps any block took.</param>
public sealed record PhaseCertificate(FitPhase Phase, double Value, double Residual, double Dual, double Gap, int Iterations, bool Converged);

/// <summary>What shows that a fit is the best one.</summary>
/// <param name="Passes">How often the plumb height of the fabric was taken anew.</param>
/// <param name="HeightChange">By how much it changed in the last pass, metres; 0.1 mm or less if settled.</param>
/// <param name="Phases">Of the last pass.</param>
public sealed record FitCertificate(int Passes, double HeightChange, IReadOnlyList<PhaseCertificate> Phases)
{
    /// <summary>Largest breach of a constraint in any phase, metres.</summary>
    public double Residual => Phases.Count == 0 ? 0 : Phases.Max(p => p.Residual);

    /// <summary>Whether the plumb heights came to rest and every phase reached its gap.</summary>
    public bool Sound => HeightChange <= GroundFit.HeightTolerance && Residual <= GroundFit.ResidualTolerance && Phases.All(p => p.Converged);
}
