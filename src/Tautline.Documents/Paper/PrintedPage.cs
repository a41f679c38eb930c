namespace Tautline.Documents.Paper;

/// <summary>A sheet as a PDF, and what of the sheet is not on it.</summary>
/// <param name="Pdf">The file. Equal sheets give equal bytes.</param>
/// <param name="LinesNotPrinted">
/// Table rows, notes, cautions and heading lines for which the page had no room. The page itself says the same number.
/// </param>
/// <param name="UnknownCharacters">
/// Characters of the sheet that the typeface lacks, each once, in code point order. They are printed as an empty box, and the page says so.
/// </param>
public sealed record PrintedPage(byte[] Pdf, int LinesNotPrinted, string UnknownCharacters);
