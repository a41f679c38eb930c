namespace Tautline.Papers.Paper;

/// <summary>One column of a table: what stands over it and where its text is set.</summary>
public sealed record PaperColumn(string Header, ColumnAlign Align = ColumnAlign.Start);
