namespace Tautline.Engine.Site.TapeBook;

/// <summary>A job as a tape book.</summary>
/// <param name="Text">The book, lines ended by line feeds.</param>
/// <param name="Problems">What the book cannot say, and names it had to change; the same stands in the book as remarks.</param>
public sealed record TapeBookWriting(string Text, IReadOnlyList<TapeProblem> Problems);
