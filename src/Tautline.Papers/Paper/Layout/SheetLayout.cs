namespace Tautline.Papers.Paper.Layout;

/// <summary>Measures a sheet and gives every part its place, on as many pages as it needs.</summary>
internal sealed class SheetLayout(TextMeasure measure, PaperDocument document, PaperSheet sheet)
{
    /// <summary>An inch: what a telephone reads at arm's length.</summary>
    private const double CodeSize = 64;

    /// <summary>Space kept for the small print and the number of the page.</summary>
    private const double FootRoom = 28;

    private const double FramePad = 5;

    /// <summary>More lines of a name or a head than this go into the body: a head is no place to read.</summary>
    private const int MostHeadLines = 8;

    private readonly PageFrame frame = PageFrame.Of(sheet.Format ?? document.Format);

    public List<LaidPage> Pages(IReadOnlyList<Strip> last)
    {
        var blocks = new BlockLayout(measure, frame, document.Words);
        List<Strip> head = [.. Head()];
        List<Strip> cautions = [.. CautionStrips()];
        double room = frame.Bottom - FootRoom - frame.Top;
        bool boxed = cautions.Sum(c => c.Height) + (2 * FramePad) < room / 2;
        List<Strip> body = [.. head.Skip(MostHeadLines), .. sheet.Blocks.SelectMany(blocks.Strips), .. last];
        if (!boxed && cautions.Count > 0) body = [.. cautions, .. body];

        var pager = new Pager(sheet.Name, frame, FootRoom, [.. Again()]);
        pager.Begin(head.Take(MostHeadLines), Corner(), boxed ? cautions : [], FramePad);
        pager.Add(body);
        return pager.Pages;
    }

    private IEnumerable<Strip> Head()
    {
        PageFrame beside = sheet.Code.Length == 0 ? frame : frame with { Width = frame.Width - CodeSize - 8 };
        var blocks = new BlockLayout(measure, beside, document.Words);
        if (document.Title.Length > 0 && document.Title != sheet.Name)
            foreach (Strip strip in blocks.Lines(document.Title, TextStyle.Subtitle, 0)) yield return strip;
        foreach (Strip strip in blocks.Lines(sheet.Name, TextStyle.Title, 0)) yield return strip;
        foreach (Strip strip in sheet.Head.SelectMany(h => blocks.Lines(h, TextStyle.Subtitle, 0))) yield return strip;
    }

    /// <summary>What stands at the top of the pages after the first.</summary>
    private IEnumerable<Strip> Again()
    {
        var blocks = new BlockLayout(measure, frame, document.Words);
        string again = document.Words.Continued.Replace("{name}", sheet.Name, StringComparison.Ordinal);
        return blocks.Lines(again, TextStyle.Caption, 0).Take(2);
    }

    private Mark.Code? Corner() => sheet.Code.Length == 0 ? null : new Mark.Code(frame.Left + frame.Width - CodeSize, frame.Top, CodeSize, CodeMatrix.Of(sheet.Code));

    private IEnumerable<Strip> CautionStrips()
    {
        if (sheet.Cautions.Count == 0) yield break;
        var blocks = new BlockLayout(measure, frame, document.Words);
        foreach (Strip strip in blocks.Lines(document.Words.Cautions, TextStyle.Warning, FramePad)) yield return strip with { HoldsNext = true };
        foreach (Strip strip in sheet.Cautions.SelectMany(c => blocks.Lines("• " + c, TextStyle.Caution, FramePad))) yield return strip;
    }
}
