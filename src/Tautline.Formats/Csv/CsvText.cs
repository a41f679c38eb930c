using System.Globalization;
using System.Text;

namespace Tautline.Formats.Csv;

/// <summary>
/// Comma-separated values by RFC 4180: CR LF, quotes where needed, numbers with a point in every culture. A text that a spreadsheet
/// could take for a formula gets an apostrophe before it; numbers stay numbers, also below zero.
/// </summary>
public sealed class CsvText
{
    private readonly StringBuilder text = new();

    public CsvText Row(params IEnumerable<object?> cells)
    {
        text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");
        return this;
    }

    public override string ToString() => text.ToString();

    private static string Cell(object? value) => Quoted(value switch
    {
        null => "",
        bool yes => yes ? "yes" : "no",
        double number => number.ToString("0.######", CultureInfo.InvariantCulture),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => Guarded(value.ToString()!),
    });

    /// <summary>Names and ids come from other people's files: none may run as a formula in the reader's spreadsheet.</summary>
    private static string Guarded(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? $"'{text}" : text;

    private static string Quoted(string cell)
        => cell.AsSpan().IndexOfAny(",\"\r\n") < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
