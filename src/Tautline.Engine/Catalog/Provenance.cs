namespace Tautline.Engine.Catalog;

/// <summary>How far a figure may be trusted.</summary>
public enum Confidence
{
    /// <summary>Read in published text.</summary>
    Published,

    /// <summary>Worked out from other figures.</summary>
    Calculated,

    /// <summary>Recalled, not read: verify before anyone orders or certifies from it.</summary>
    FromMemory,

    /// <summary>What crews do; no published source.</summary>
    CommonPractice,

    /// <summary>Stated by the job itself.</summary>
    AsSpecified,
}

/// <summary>Where a row of the catalogue or of a rule set comes from.</summary>
public sealed record Provenance(string Source, string Clause, string Edition, Confidence Confidence)
{
    /// <summary>True where the user is shown 'verify' beside the figure.</summary>
    public bool Verify => Confidence is Confidence.FromMemory or Confidence.CommonPractice;
}
