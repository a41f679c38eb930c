namespace Tautline.Documents.Paper;

/// <summary>A paper as a PDF.</summary>
/// <param name="Pdf">The file. Equal papers give equal bytes.</param>
/// <param name="UnknownCharacters">
/// Characters that the typeface lacks, each once, in code point order. They are printed as an empty box, and the paper says so at its end.
/// </param>
public sealed record PrintedPaper(byte[] Pdf, int Pages, string UnknownCharacters);
