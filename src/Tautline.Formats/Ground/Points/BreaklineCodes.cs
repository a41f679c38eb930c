using System.Collections.Immutable;

namespace Tautline.Formats.Ground.Points;

/// <summary>Which codes of survey points are lines along which the ground breaks. Common practice, no source: offices differ.</summary>
/// <param name="Codes">
/// Such as "TOE" or "EC"; letters of either case. A row belongs to a code when a word of its description, split at blanks and
/// slashes, is the code or the code and a figure number: TOE, TOE1, TOE/SW.
/// </param>
public sealed record BreaklineCodes(ImmutableArray<string> Codes)
{
    /// <summary>
    /// True when the word B (BEG, BEGIN, ST, START) after a code begins a line anew and E (END) ends it, and a line between the two runs on
    /// over rows of other codes. Without it a line is made of neighbouring rows alone.
    /// </summary>
    public bool BeginEnd { get; init; }

    /// <summary>A step in plan longer than this, in the file's unit, breaks the line; null for no limit.</summary>
    public double? LongestStep { get; init; }
}
