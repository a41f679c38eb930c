using System.Collections.Immutable;
using Tautline.Formats.Ground;

namespace Tautline.Formats.Sites;

/// <summary>What a file leaves open and nobody may guess.</summary>
public enum SiteQuestionKind
{
    /// <summary>Which coordinate system, and so which unit, the coordinates are in.</summary>
    System,

    /// <summary>Which column of a text is what.</summary>
    Columns,

    /// <summary>Whether rows that stand at one place many times are place-holders.</summary>
    PlaceHolders,
}

/// <summary>One question that must be answered before lines can be made.</summary>
/// <param name="Kind">What is asked.</param>
/// <param name="Text">The question, for people.</param>
/// <param name="Choices">Answers as <see cref="SiteAnswers"/> takes them; not all possible ones for a system.</param>
public sealed record SiteQuestion(SiteQuestionKind Kind, string Text, ImmutableArray<GroundChoice> Choices);
