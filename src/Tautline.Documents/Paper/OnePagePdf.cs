using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Tautline.Documents.Fonts;
using Tautline.Documents.Paper.Layout;

namespace Tautline.Documents.Paper;

/// <summary>Writes a sheet as a PDF of exactly one page.</summary>
public static class OnePagePdf
{
    /// <summary>
    /// Lays the sheet out and writes it. Long texts are wrapped; where the page is full it says how many lines are missing,
    /// and so does the result. The bytes depend on the sheet alone: not on clock, machine or culture.
    /// </summary>
    public static PrintedPage Write(PaperSheet sheet)
    {
        EmbeddedFonts.Use();
        PageFrame frame = PageFrame.Of(sheet.Size);
        using var measure = new TextMeasure();
        PageContent content = new SheetLayout(measure, frame).Place(sheet);
        byte[] raw = Draw(sheet, frame, content, measure);
        return new(StablePdf.Settle(raw, sheet.Title), content.LinesNotPrinted, measure.Unknown);
    }

    private static byte[] Draw(PaperSheet sheet, PageFrame frame, PageContent content, TextMeasure measure)
    {
        using var document = new PdfDocument();
        Describe(document, sheet);
        PdfPage page = document.AddPage();
        page.Width = XUnit.FromPoint(frame.PageWidth);
        page.Height = XUnit.FromPoint(frame.PageHeight);
        using (XGraphics graphics = XGraphics.FromPdfPage(page))
        {
            foreach (Mark mark in content.Marks)
                Draw(graphics, mark, measure);
        }

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    private static void Describe(PdfDocument document, PaperSheet sheet)
    {
        document.Language = sheet.Language;
        document.ViewerPreferences.DisplayDocTitle = true;
        // PDFsharp's compressed streams lack the checksum that zlib asks for, and how well a runtime packs is its own affair.
        document.Options.NoCompression = true;
        document.Options.CompressContentStreams = false;

        // Two bytes a character: whatever the title says, it cannot be taken for a part of the file's own structure.
        document.Info.Elements["/Title"] = new PdfString(sheet.Title, PdfStringEncoding.Unicode);
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
        }
    }

    private static XColor Grey(double white) => XColor.FromGrayScale(white);
}
