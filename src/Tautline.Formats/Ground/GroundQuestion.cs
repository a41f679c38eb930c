using System.Collections.Immutable;

namespace Tautline.Formats.Ground;

/// <summary>What a file leaves open and nobody may guess.</summary>
public enum GroundQuestionKind
{
    /// <summary>Which column of survey text is what.</summary>
    Columns,

    /// <summary>Whether rows that stand at one place many times are place-holders.</summary>
    PlaceHolders,

    /// <summary>Which surface of several.</summary>
    Surface,

    /// <summary>Which coordinate system, and so which unit, the plan coordinates are of.</summary>
    System,

    /// <summary>The unit of the heights.</summary>
    HeightUnit,
}

/// <summary>A possible answer.</summary>
/// <param name="Value">As <see cref="GroundAnswers"/> takes it.</param>
/// <param name="Text">For people, with what would follow from it where that is known.</param>
/// <param name="Proposed">True for the one that seems likeliest; it is still the user's to say.</param>
public sealed record GroundChoice(string Value, string Text, bool Proposed = false);

/// <summary>One question that must be answered before the ground can be placed.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Text">The question, for people.</param>
/// <param name="Choices">Answers; not all possible ones for <see cref="GroundQuestionKind.System"/>.</param>
public sealed record GroundQuestion(GroundQuestionKind Kind, string Text, ImmutableArray<GroundChoice> Choices)
{
    /// <summary>True when the answer changes how the file is read, so that it must be read again; otherwise <see cref="GroundFile.Answered"/> does.</summary>
    public bool NeedsReading => Kind is GroundQuestionKind.Columns or GroundQuestionKind.PlaceHolders or GroundQuestionKind.Surface;
}
