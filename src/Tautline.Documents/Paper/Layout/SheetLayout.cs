using System.Globalization;

namespace Tautline.Documents.Paper.Layout;

/// <summary>Measures a sheet and gives every mark its place; what does not fit is counted, and the count is printed.</summary>
internal sealed class SheetLayout(TextMeasure measure, PageFrame frame)
{
    private const double FramePad = 5;

    private readonly LineBreaker breaker = new(measure);

    public PageContent Place(PaperSheet sheet)
    {
        List<Strip> body = [.. Body(sheet)];
        List<Strip> cautions = [.. sheet.Cautions.Select(c => Paragraph("• " + c, TextStyle.Caution, FramePad))];
        IReadOnlyList<string> foot = breaker.Break(sheet.Footer, TextStyle.Foot, frame.Width);
        return Place(body, cautions, foot);
    }

    private PageContent Place(List<Strip> body, List<Strip> cautions, IReadOnlyList<string> foot)
    {
        // Small print that long would leave no page: it gives way before anything else does.
        List<Strip> small = [.. foot.Where(l => l.Length > 0).Select(l => Line(l, TextStyle.Foot))];
        if (UnknownNote() is { } note)
            small.AddRange(breaker.Break(note, TextStyle.Foot, frame.Width).Select(l => Line(l, TextStyle.Foot)));
        int keptSmall = Fitting(small, frame.Bottom - frame.Top - 100);
        int keptCautions = Fitting(cautions, (frame.Bottom - frame.Top) / 2);
        int missed = Missed(small, keptSmall) + Missed(cautions, keptCautions);

        var marks = new List<Mark>();
        double bottom = FromBottom(small.Take(keptSmall), frame.Bottom, marks);
        bottom = CautionBox(cautions.Take(keptCautions).ToList(), bottom - 4, marks);
        missed += FromTop(body, bottom - 6, missed, marks);
        return new(marks, missed);
    }

    private IEnumerable<Strip> Body(PaperSheet sheet)
    {
        foreach (string line in breaker.Break(sheet.Title, TextStyle.Title, frame.Width))
            yield return Line(line, TextStyle.Title);
        foreach (string text in sheet.Subtitle)
            yield return Paragraph(text, TextStyle.Subtitle, 0);
        var tables = new TableLayout(measure, breaker, frame);
        foreach (Strip strip in sheet.Tables.SelectMany(table => tables.Strips(table).Prepend(Strip.Gap(9))))
            yield return strip;
        if (sheet.Notes.Count > 0)
            yield return Strip.Gap(9);
        foreach (string note in sheet.Notes)
            yield return Paragraph(note, TextStyle.Note, 0);
    }

    private Strip Line(string text, TextStyle style) =>
        new(style.Leading, [new Mark.Words(frame.Left, style.Ascent, text, style)]);

    private Strip Paragraph(string text, TextStyle style, double inset)
    {
        IReadOnlyList<string> lines = breaker.Break(text, style, frame.Width - (2 * inset));
        Mark[] marks = [.. lines.Select((l, i) => new Mark.Words(frame.Left + inset, style.Ascent + (i * style.Leading), l, style))];
        return new((lines.Count * style.Leading) + 1.5, marks);
    }

    private string? UnknownNote() =>
        measure.Unknown.Length == 0 ? null : "Printed as an empty box, for want of a sign in the typeface: " + string.Join(", ",
            measure.Unknown.EnumerateRunes().Select(r => "U+" + r.Value.ToString("X4", CultureInfo.InvariantCulture))) + ".";

    private static int Fitting(List<Strip> strips, double room)
    {
        int count = 0;
        for (double used = 0; count < strips.Count && used + strips[count].Height <= room; count++)
            used += strips[count].Height;
        return count;
    }

    private static int Missed(List<Strip> strips, int kept) => strips.Skip(kept).Sum(s => s.Lines);

    private static double FromBottom(IEnumerable<Strip> strips, double bottom, List<Mark> marks)
    {
        foreach (Strip strip in strips.Reverse())
        {
            bottom -= strip.Height;
            AddAt(strip, bottom, marks);
        }

        return bottom;
    }

    private double CautionBox(List<Strip> cautions, double bottom, List<Mark> marks)
    {
        if (cautions.Count == 0)
            return bottom;
        double inside = FromBottom(cautions, bottom - FramePad, marks) - TextStyle.Warning.Leading - 1;
        marks.Add(new Mark.Words(frame.Left + FramePad, inside + TextStyle.Warning.Ascent, "Cautions", TextStyle.Warning));
        double top = inside - FramePad;
        marks.Add(new Mark.Frame(frame.Left, top, frame.Width, bottom - top, 1));
        return top;
    }

    private int FromTop(List<Strip> body, double bottom, int missedElsewhere, List<Mark> marks)
    {
        double room = bottom - frame.Top;
        int kept = Fitting(body, room);
        bool all = kept == body.Count;
        if (!all || missedElsewhere > 0)
            kept = WithoutHangingHeads(body, Fitting(body, room - TextStyle.Warning.Leading - 4));
        double y = frame.Top;
        foreach (Strip strip in body.Take(kept))
        {
            AddAt(strip, y, marks);
            y += strip.Height;
        }

        int missed = Missed(body, kept);
        if (missed + missedElsewhere > 0)
            AddAt(Line(NotPrinted(missed + missedElsewhere), TextStyle.Warning), y + 4, marks);
        return missed;
    }

    private static int WithoutHangingHeads(List<Strip> body, int kept)
    {
        while (kept > 0 && kept < body.Count && body[kept - 1].HoldsNext)
            kept--;
        return kept;
    }

    private static string NotPrinted(int lines) => lines == 1
        ? "1 more line not printed: this page is full."
        : lines.ToString(CultureInfo.InvariantCulture) + " more lines not printed: this page is full.";

    private static void AddAt(Strip strip, double y, List<Mark> marks) => marks.AddRange(strip.Marks.Select(m => m.Down(y)));
}
