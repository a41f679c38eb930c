namespace Tautline.Papers.Paper;

/// <summary>Tables for a spreadsheet program: numbers are numbers, and each column says its unit.</summary>
/// <param name="Sheets">Each with a name of its own of at most 31 signs, without any of []:*?/\.</param>
public sealed record SheetBook(IReadOnlyList<BookSheet> Sheets);

/// <param name="Columns">At least one.</param>
/// <param name="Rows">Each with a value for every column: a text, a number, or nothing.</param>
public sealed record BookSheet(string Name, IReadOnlyList<BookColumn> Columns, IReadOnlyList<IReadOnlyList<object?>> Rows);

/// <param name="Header">With the unit in brackets where there is one.</param>
/// <param name="Decimals">Shown of its numbers; the numbers themselves are whole precision.</param>
/// <param name="Width">In signs.</param>
public sealed record BookColumn(string Header, int Decimals = 0, double Width = 12);
