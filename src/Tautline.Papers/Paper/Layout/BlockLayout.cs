namespace Tautline.Papers.Paper.Layout;

/// <summary>Turns the blocks of a sheet into strips.</summary>
internal sealed class BlockLayout(TextMeasure measure, PageFrame frame, PaperWords words)
{
    private const double Between = 9;
    private const double WriteRoom = 24;

    private readonly LineBreaker breaker = new(measure);

    public IEnumerable<Strip> Strips(PaperBlock block) => block switch
    {
        PaperBlock.Heading heading => [Strip.Gap(Between), .. Lines(heading.Text, TextStyle.Caption, 0).Select(s => s with { HoldsNext = true })],
        PaperBlock.Words text => Hung(text),
        PaperBlock.Facts { Rows.Count: 0 } => [],
        PaperBlock.Facts facts => [Strip.Gap(3), .. Table().Strips(Labelled(facts), ruled: false)],
        PaperTable table => [Strip.Gap(Between), .. Table().Strips(table)],
        PaperBlock.Lines lines => [Written(lines)],
        PaperBlock.Drawing drawing => Drawn(drawing),
        PaperBlock.NewPage page => [new Strip(0, []) { EndsPage = true, OfFirst = page.IfFirst }],
        _ => throw new ArgumentOutOfRangeException(nameof(block), block.GetType().Name, "No such part of a sheet."),
    };

    /// <summary>Text in one strip a line; the first two stay together, and the last two.</summary>
    public IEnumerable<Strip> Lines(string text, TextStyle style, double inset)
    {
        IReadOnlyList<string> lines = breaker.Break(text, style, frame.Width - (2 * inset));
        for (int i = 0; i < lines.Count; i++)
        {
            Mark.Words[] mark = [new(frame.Left + inset, style.Ascent, lines[i], style)];
            yield return new(style.Leading, mark, (i == 0 || i == lines.Count - 2) && i < lines.Count - 1);
        }
    }

    /// <exception cref="ArgumentException">The drawing is larger than the page.</exception>
    private IEnumerable<Strip> Drawn(PaperBlock.Drawing drawing)
    {
        Documents.Scenes.Scene scene = drawing.Scene;
        if (scene.Width > frame.Width + 0.5 || scene.Height > frame.Bottom - frame.Top)
            throw new ArgumentException($"A drawing of {scene.Width:0} by {scene.Height:0} points does not fit on {frame.Width:0} by {frame.Bottom - frame.Top:0}.", nameof(drawing));
        foreach (Documents.Scenes.SceneItem.Text text in scene.Items.OfType<Documents.Scenes.SceneItem.Text>()) _ = measure.Printable(text.Words, TextStyle.Cell);
        yield return Strip.Gap(4);
        foreach (Strip strip in drawing.Caption.Length > 0 ? Lines(drawing.Caption, TextStyle.Caption, 0) : []) yield return strip with { HoldsNext = true };
        yield return new(scene.Height, [new Mark.Drawing(frame.Left + ((frame.Width - scene.Width) / 2), 0, scene)]);
    }

    private TableLayout Table() => new(measure, breaker, frame, words);

    private IEnumerable<Strip> Hung(PaperBlock.Words text)
    {
        TextStyle style = text.Strong ? TextStyle.Warning : TextStyle.Note;
        double indent = text.Mark.Length == 0 ? 0 : Math.Max(11, measure.Width(measure.Printable(text.Mark, style), style) + 5);
        var inner = new BlockLayout(measure, frame with { Left = frame.Left + indent, Width = frame.Width - indent }, words);
        foreach ((int i, Strip strip) in inner.Lines(text.Text, style, 0).Index())
        {
            yield return i == 0 && indent > 0 ? strip with { Marks = [new Mark.Words(frame.Left, style.Ascent, text.Mark, style), .. strip.Marks] } : strip;
        }

        yield return Strip.Gap(2) with { HoldsNext = false };
    }

    private static PaperTable Labelled(PaperBlock.Facts facts)
    {
        int columns = Math.Clamp(facts.Columns, 1, 4);
        int tall = (facts.Rows.Count + columns - 1) / columns;
        IEnumerable<string> Row(int row) => Enumerable.Range(0, columns).Select(c => (c * tall) + row)
            .SelectMany(i => i < facts.Rows.Count ? new[] { facts.Rows[i].Label, facts.Rows[i].Value } : ["", ""]);
        return new PaperTable("", [.. Enumerable.Repeat(new PaperColumn(""), 2 * columns)], [.. Enumerable.Range(0, tall).Select(r => (IReadOnlyList<string>)[.. Row(r)])]);
    }

    private Strip Written(PaperBlock.Lines lines)
    {
        double width = frame.Width / Math.Max(1, lines.Labels.Count);
        List<Mark> marks = [];
        foreach ((int i, string label) in lines.Labels.Index())
        {
            double left = frame.Left + (i * width);
            marks.Add(new Mark.Rule(left, WriteRoom, width - 12, 0.6, 0));
            // A label wider than its line would run into the next: it is broken like any text.
            foreach ((int at, string line) in breaker.Break(label, TextStyle.Foot, width - 12).Index())
                marks.Add(new Mark.Words(left, WriteRoom + 2 + TextStyle.Foot.Ascent + (at * TextStyle.Foot.Leading), line, TextStyle.Foot));
        }

        double bottom = marks.OfType<Mark.Words>().Select(w => w.Y).Append(WriteRoom).Max();
        return new(bottom + 4, marks);
    }
}
