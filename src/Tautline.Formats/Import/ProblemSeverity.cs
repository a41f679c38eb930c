namespace Tautline.Formats.Import;

/// <summary>How much a problem matters, least first.</summary>
public enum ProblemSeverity
{
    /// <summary>Something was done or left out that the user may want to know of.</summary>
    Information,

    /// <summary>The lines are usable, but may not be what was meant.</summary>
    Warning,

    /// <summary>A line, or the whole file, could not be taken in.</summary>
    Error,
}
