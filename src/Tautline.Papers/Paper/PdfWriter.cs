using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Tautline.Documents.Paper;
using Tautline.Papers.Fonts;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Papers.Paper;

/// <summary>Writes a paper as a PDF.</summary>
public static class PdfWriter
{
    /// <summary>
    /// Lays the paper out and writes it. The bytes depend on the paper alone: not on clock, machine or culture.
    /// </summary>
    public static PrintedPaper Write(PaperDocument paper) => WriteAsync(paper, (_, _) => Task.CompletedTask).GetAwaiter().GetResult();

    /// <param name="pause">Called between pieces of the work with how many are done, of how many.</param>
    public static async Task<PrintedPaper> WriteAsync(PaperDocument paper, Func<int, int, Task> pause)
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();
        IReadOnlyList<LaidPage> pages = await new DocumentLayout(measure, paper).PagesAsync(pause);
        byte[] raw = await DrawAsync(paper, pages, measure, pause);
        return new(StablePdf.Settle(raw, paper.Title), pages.Count, measure.Unknown);
    }

    private static async Task<byte[]> DrawAsync(PaperDocument paper, IReadOnlyList<LaidPage> pages, TextMeasure measure, Func<int, int, Task> pause)
    {
        using var document = new PdfDocument();
        Describe(document, paper);
        foreach ((int i, LaidPage laid) in pages.Index())
        {
            Draw(document.AddPage(), laid, measure);
            await pause(i + 1, pages.Count);
        }

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    private static void Draw(PdfPage page, LaidPage laid, TextMeasure measure)
    {
        page.Width = XUnit.FromPoint(laid.Frame.PageWidth);
        page.Height = XUnit.FromPoint(laid.Frame.PageHeight);
        using XGraphics graphics = XGraphics.FromPdfPage(page);
        foreach (Mark mark in laid.Marks) Draw(graphics, mark, measure);
    }

    private static void Describe(PdfDocument document, PaperDocument paper)
    {
        document.Language = paper.Words.Language;
        document.ViewerPreferences.DisplayDocTitle = true;
        // PDFsharp's compressed streams lack the checksum that zlib asks for, and how well a runtime packs is its own affair.
        document.Options.NoCompression = true;
        document.Options.CompressContentStreams = false;

        // Two bytes a character: whatever the title says, it cannot be taken for a part of the file's own structure.
        document.Info.Elements["/Title"] = new PdfString(paper.Title, PdfStringEncoding.Unicode);
        document.Info.Creator = StablePdf.Maker;

        // A paper that must come out the same tomorrow cannot say when it was made.
        document.Info.Elements.Remove("/CreationDate");
    }

    private static void Draw(XGraphics graphics, Mark mark, TextMeasure measure)
    {
        switch (mark)
        {
            case Mark.Words words when words.Text.Length > 0:
                graphics.DrawString(words.Text, measure.Font(words.Style), new XSolidBrush(Grey(words.Style.Grey)), words.X, words.Y);
                break;
            case Mark.Rule rule:
                graphics.DrawLine(new XPen(Grey(rule.Grey), rule.Thickness), rule.X, rule.Y, rule.X + rule.Width, rule.Y);
                break;
            case Mark.Frame box:
                graphics.DrawRectangle(new XPen(XColors.Black, box.Thickness), box.X, box.Y, box.Width, box.Height);
                break;
            case Mark.Drawing drawing:
                new Drawings.SceneInk(graphics, measure).Draw(drawing.Scene, drawing.X, drawing.Y);
                break;
            case Mark.Code code:
                Draw(graphics, code);
                break;
        }
    }

    /// <summary>Dark squares of a row that touch are one rectangle, so that no viewer shows a seam between them.</summary>
    private static void Draw(XGraphics graphics, Mark.Code code)
    {
        double side = code.Size / code.Matrix.Size;
        for (int row = 0; row < code.Matrix.Size; row++)
        {
            for (int from = 0; from < code.Matrix.Size; from++)
            {
                if (!code.Matrix.IsDark(row, from)) continue;
                int to = from;
                while (to + 1 < code.Matrix.Size && code.Matrix.IsDark(row, to + 1)) to++;
                graphics.DrawRectangle(XBrushes.Black, code.X + (from * side), code.Y + (row * side), (to - from + 1) * side, side);
                from = to;
            }
        }
    }

    private static XColor Grey(double white) => XColor.FromGrayScale(white);
}
