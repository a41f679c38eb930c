namespace Tautline.Documents.Paper.Layout;

/// <summary>Every mark of a page, and how many lines of the sheet found no room on it.</summary>
internal sealed record PageContent(IReadOnlyList<Mark> Marks, int LinesNotPrinted);
