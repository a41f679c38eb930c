namespace Tautline.Papers.Paper;

/// <summary>What a paper says of itself, in its own language. Places in braces are filled.</summary>
/// <param name="Language">A BCP 47 tag: a reading aid needs it.</param>
/// <param name="PageOf">With {n} and {m}.</param>
/// <param name="Continued">Of a sheet or table that goes on, with {name}.</param>
/// <param name="Cautions">Over the box of cautions.</param>
/// <param name="Empty">In a table without rows.</param>
/// <param name="Unknown">Of signs the typeface lacks, with {signs}.</param>
public sealed record PaperWords(string Language, string PageOf, string Continued, string Cautions, string Empty, string Unknown)
{
    public static PaperWords English { get; } = new(
        "en-US", "page {n} of {m}", "{name}, continued", "Cautions", "None.", "Printed as an empty box, for want of a sign in the typeface: {signs}.");
}
