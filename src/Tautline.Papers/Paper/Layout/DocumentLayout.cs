using System.Globalization;

namespace Tautline.Papers.Paper.Layout;

/// <summary>Lays out a whole paper: its sheets, then the small print and the number at the foot of each page.</summary>
internal sealed class DocumentLayout(TextMeasure measure, PaperDocument document)
{
    public IReadOnlyList<LaidPage> Pages() => PagesAsync((_, _) => Task.CompletedTask).GetAwaiter().GetResult();

    /// <param name="pause">Called after each sheet.</param>
    public async Task<IReadOnlyList<LaidPage>> PagesAsync(Func<int, int, Task> pause)
    {
        List<LaidPage> pages = [];
        IReadOnlyList<PaperSheet> sheets = document.Sheets.Count > 0 ? document.Sheets : [new PaperSheet(document.Title)];
        foreach (PaperSheet sheet in sheets.SkipLast(1))
        {
            pages.AddRange(new SheetLayout(measure, document, sheet).Pages([]));
            await pause(pages.Count(p => p.First), sheets.Count);
        }

        // What the typeface lacks is only known once everything has been measured, the last sheet too.
        var ending = new SheetLayout(measure, document, sheets[^1]);
        List<LaidPage> end = ending.Pages([]);
        _ = FootLines(pages.Count > 0 ? pages[0] : end[0]);
        if (measure.Unknown.Length > 0) end = ending.Pages([.. Unknown(end[0].Frame)]);
        pages.AddRange(end);
        return [.. pages.Select((p, i) => WithFoot(p, i + 1, pages.Count))];
    }

    private IEnumerable<Strip> Unknown(PageFrame frame)
    {
        string signs = string.Join(", ", measure.Unknown.EnumerateRunes().Select(r => "U+" + r.Value.ToString("X4", CultureInfo.InvariantCulture)));
        return new BlockLayout(measure, frame, document.Words)
            .Lines(document.Words.Unknown.Replace("{signs}", signs, StringComparison.Ordinal), TextStyle.Foot, 0).Prepend(Strip.Gap(6));
    }

    private IEnumerable<string> FootLines(LaidPage page)
    {
        double room = page.Frame.Width - NumberRoom;
        IReadOnlyList<string> lines = new LineBreaker(measure).Break(document.Footer, TextStyle.Foot, room);
        return lines.Count <= 2 ? lines : [lines[0], "…"];
    }

    // 'page 1000 of 1000' in either language.
    private const double NumberRoom = 110;

    private LaidPage WithFoot(LaidPage page, int number, int of)
    {
        PageFrame frame = page.Frame;
        TextStyle style = TextStyle.Foot;
        List<Mark> marks = [.. page.Marks];
        double top = frame.Bottom - (2 * style.Leading);
        foreach ((int i, string line) in FootLines(page).Index())
            if (line.Length > 0) marks.Add(new Mark.Words(frame.Left, top + style.Ascent + (i * style.Leading), line, style));
        string numbered = document.Words.PageOf.Replace("{n}", Number(number), StringComparison.Ordinal).Replace("{m}", Number(of), StringComparison.Ordinal);
        marks.Add(new Mark.Words(frame.Left + frame.Width - measure.Width(numbered, style), top + style.Ascent, numbered, style));
        return page with { Marks = marks, Boxes = [.. page.Boxes, new PageBox("foot", top, 2 * style.Leading)] };
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
