namespace Tautline.Documents.Paper.Layout;

/// <summary>Turns a table into strips: its caption with the column heads, then one strip per row.</summary>
internal sealed class TableLayout(TextMeasure measure, LineBreaker breaker, PageFrame frame)
{
    private const double CellPad = 4;
    private const double RowPad = 1.5;

    public IEnumerable<Strip> Strips(PaperTable table)
    {
        double[] widths = Widths(table);
        if (table.Caption.Length > 0)
            yield return Caption(table.Caption);
        string[] heads = [.. table.Columns.Select(c => c.Header)];
        yield return Row(table, widths, heads, TextStyle.Header, new(0, 0, 0, 0.9, 0)) with { Lines = 0, HoldsNext = true };
        foreach (IReadOnlyList<string> row in table.Rows)
            yield return Row(table, widths, row, TextStyle.Cell, new(0, 0, 0, 0.4, 0.7));
        if (table.Rows.Count == 0)
            yield return Empty();
    }

    private Strip Caption(string caption)
    {
        IReadOnlyList<string> lines = breaker.Break(caption, TextStyle.Caption, frame.Width);
        Mark[] marks = [.. lines.Select((line, i) => new Mark.Words(frame.Left, TextStyle.Caption.Ascent + (i * TextStyle.Caption.Leading), line, TextStyle.Caption))];
        return new((lines.Count * TextStyle.Caption.Leading) + 2, marks, 0, true);
    }

    private Strip Empty()
    {
        var words = new Mark.Words(frame.Left + CellPad, RowPad + TextStyle.Cell.Ascent, "None.", TextStyle.Cell);
        return new(TextStyle.Cell.Leading + (2 * RowPad), [words]);
    }

    private Strip Row(PaperTable table, double[] widths, IReadOnlyList<string> texts, TextStyle style, Mark.Rule rule)
    {
        var marks = new List<Mark>();
        double left = frame.Left;
        int lines = 1;
        for (int i = 0; i < texts.Count; i++)
        {
            lines = Math.Max(lines, Cell(texts[i], left, widths[i], table.Columns[i].Align, style, marks));
            left += widths[i];
        }

        double height = (lines * style.Leading) + (2 * RowPad);
        marks.Add(rule with { X = frame.Left, Y = height, Width = frame.Width });
        return new(height, marks);
    }

    private int Cell(string text, double left, double width, ColumnAlign align, TextStyle style, List<Mark> marks)
    {
        double room = width - (2 * CellPad);
        IReadOnlyList<string> lines = breaker.Break(text, style, room);
        for (int i = 0; i < lines.Count; i++)
        {
            double indent = align == ColumnAlign.End ? room - measure.Width(lines[i], style) : 0;
            marks.Add(new Mark.Words(left + CellPad + indent, RowPad + style.Ascent + (i * style.Leading), lines[i], style));
        }

        return lines.Count;
    }

    private double[] Widths(PaperTable table)
    {
        double[] whole = Each(table, measure.Width);
        double[] words = [.. Each(table, breaker.LongestWord).Zip(whole, Math.Min)];

        // A figure and its unit belong on one line; words may go on the next.
        double[] figuresWhole = [.. table.Columns.Select((c, i) => c.Align == ColumnAlign.End ? whole[i] : words[i])];
        return ColumnFit.Widths(frame.Width, whole, figuresWhole, words);
    }

    private static double[] Each(PaperTable table, Func<string, TextStyle, double> width) =>
        [.. Enumerable.Range(0, table.Columns.Count).Select(i => WidestOf(table, i, width) + (2 * CellPad))];

    private static double WidestOf(PaperTable table, int column, Func<string, TextStyle, double> width) =>
        table.Rows.Select(row => width(row[column], TextStyle.Cell))
            .Append(width(table.Columns[column].Header, TextStyle.Header))
            .Max() + Hair;

    // A cell measured to fit exactly must not be broken by the last bit of a sum.
    private const double Hair = 0.01;
}
