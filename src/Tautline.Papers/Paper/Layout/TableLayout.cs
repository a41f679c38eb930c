namespace Tautline.Papers.Paper.Layout;

/// <summary>Turns a table into strips: its caption with the column heads, then one strip per row, which repeat both where they come first on a page.</summary>
internal sealed class TableLayout(TextMeasure measure, LineBreaker breaker, PageFrame frame, PaperWords words)
{
    private const double CellPad = 4;
    private const double RowPad = 1.5;
    private const double TickSize = 8.5;
    private const double TickWidth = 22;
    private const double BlankWidth = 64;
    private const double BlankHeight = 17;

    // A cell measured to fit exactly must not be broken by the last bit of a sum.
    private const double Hair = 0.01;

    /// <summary>A row of more lines than fill this part of a page goes on in a row of its own.</summary>
    private const double MostOfAPage = 0.3;

    public IEnumerable<Strip> Strips(PaperTable table, bool ruled = true)
    {
        double[] widths = Widths(table);
        Strip[] heads = [.. Heads(table, widths, table.Caption)];
        Strip[] again = [.. Heads(table, widths, table.Caption.Length > 0 ? words.Continued.Replace("{name}", table.Caption, StringComparison.Ordinal) : "")];
        IReadOnlyList<Strip>? repeat = again.Sum(h => h.Height) < MostOfAPage * (frame.Bottom - frame.Top) ? again : null;
        foreach (Strip head in heads) yield return head;
        double thickness = ruled ? 0.4 : 0;
        foreach (IReadOnlyList<string> row in table.Rows)
            foreach (Strip part in Row(table, widths, row, TextStyle.Cell, new(0, 0, 0, thickness, 0.7))) yield return part with { Repeat = repeat };
        if (table.Rows.Count == 0) yield return Empty();
    }

    private IEnumerable<Strip> Heads(PaperTable table, double[] widths, string caption)
    {
        if (caption.Length > 0) yield return Caption(caption);
        if (table.Columns.All(c => c.Header.Length == 0)) yield break;
        string[] heads = [.. table.Columns.Select(c => c.Header)];
        foreach (Strip part in Row(table, widths, heads, TextStyle.Header, new(0, 0, 0, 0.9, 0))) yield return part with { HoldsNext = true };
    }

    private Strip Caption(string caption)
    {
        IReadOnlyList<string> lines = breaker.Break(caption, TextStyle.Caption, frame.Width);
        Mark[] marks = [.. lines.Select((line, i) => new Mark.Words(frame.Left, TextStyle.Caption.Ascent + (i * TextStyle.Caption.Leading), line, TextStyle.Caption))];
        return new((lines.Count * TextStyle.Caption.Leading) + 2, marks, true);
    }

    private Strip Empty()
    {
        var none = new Mark.Words(frame.Left + CellPad, RowPad + TextStyle.Cell.Ascent, words.Empty, TextStyle.Cell);
        return new(TextStyle.Cell.Leading + (2 * RowPad), [none]);
    }

    private IEnumerable<Strip> Row(PaperTable table, double[] widths, IReadOnlyList<string> texts, TextStyle style, Mark.Rule rule)
    {
        bool head = style == TextStyle.Header;
        IReadOnlyList<string>[] cells = [.. texts.Select((text, i) => Cell(table.Columns[i], head, text, style, widths[i]))];
        int lines = cells.Max(c => c.Count);
        int most = Math.Max(1, (int)(MostOfAPage * (frame.Bottom - frame.Top) / style.Leading));
        for (int from = 0; from < lines; from += most)
        {
            bool last = from + most >= lines;
            yield return Part(table, widths, [.. cells.Select(c => c.Skip(from).Take(most).ToArray())], head, style, last ? rule : rule with { Thickness = 0 }) with { HoldsNext = head };
        }
    }

    private IReadOnlyList<string> Cell(PaperColumn column, bool head, string text, TextStyle style, double width)
        => column.Align == ColumnAlign.Tick && !head ? [""] : breaker.Break(text, style, width - (2 * CellPad));

    private Strip Part(PaperTable table, double[] widths, string[][] cells, bool head, TextStyle style, Mark.Rule rule)
    {
        List<Mark> marks = [];
        bool written = !head && table.Columns.Any(c => c.Align is ColumnAlign.Tick or ColumnAlign.Blank);
        double height = Math.Max((Math.Max(1, cells.Max(c => c.Length)) * style.Leading) + (2 * RowPad), written ? BlankHeight : 0);
        double left = frame.Left;
        for (int i = 0; i < cells.Length; i++)
        {
            if (!head && table.Columns[i].Align == ColumnAlign.Tick) marks.Add(new Mark.Frame(left + CellPad, RowPad + 2, TickSize, TickSize, 0.8));
            AddCell(cells[i], left + CellPad, widths[i] - (2 * CellPad), table.Columns[i].Align, style, marks);
            left += widths[i];
        }

        if (rule.Thickness > 0) marks.Add(rule with { X = frame.Left, Y = height, Width = frame.Width });
        return new(height, marks);
    }

    private void AddCell(string[] lines, double left, double room, ColumnAlign align, TextStyle style, List<Mark> marks)
    {
        for (int i = 0; i < lines.Length; i++)
        {
            if (lines[i].Length == 0) continue;
            double indent = align == ColumnAlign.End ? room - measure.Width(lines[i], style) : 0;
            marks.Add(new Mark.Words(left + indent, RowPad + style.Ascent + (i * style.Leading), lines[i], style));
        }
    }

    private double[] Widths(PaperTable table)
    {
        double[] whole = Each(table, measure.Width);
        double[] least = [.. Each(table, breaker.LongestWord).Zip(whole, Math.Min)];

        // A figure and its unit belong on one line; words may go on the next.
        double[] figuresWhole = [.. table.Columns.Select((c, i) => c.Align == ColumnAlign.End ? whole[i] : least[i])];
        return ColumnFit.Widths(frame.Width, whole, figuresWhole, least);
    }

    private static double[] Each(PaperTable table, Func<string, TextStyle, double> width) =>
        [.. Enumerable.Range(0, table.Columns.Count).Select(i => Math.Max(WidestOf(table, i, width) + (2 * CellPad), LeastOf(table.Columns[i])))];

    private static double LeastOf(PaperColumn column) => column.Align switch
    {
        ColumnAlign.Tick => TickWidth,
        ColumnAlign.Blank => BlankWidth,
        _ => 0,
    };

    private static double WidestOf(PaperTable table, int column, Func<string, TextStyle, double> width) =>
        table.Rows.Select(row => table.Columns[column].Align == ColumnAlign.Tick ? 0 : width(row[column], TextStyle.Cell))
            .Append(width(table.Columns[column].Header, TextStyle.Header))
            .Max() + Hair;
}
