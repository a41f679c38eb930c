using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using Tautline.Papers.Fonts;

namespace Tautline.Papers.Paper.Layout;

/// <summary>Knows how wide text is and which characters the typeface has.</summary>
internal sealed class TextMeasure : IDisposable
{
    private readonly XGraphics paper = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
    private readonly Dictionary<(double Size, bool Bold), XFont> fonts = [];
    private readonly SortedSet<int> unknown = [];

    /// <summary>Every character met so far that the typeface lacks.</summary>
    public string Unknown => string.Concat(unknown.Select(c => new Rune(c).ToString()));

    public XFont Font(TextStyle style)
    {
        if (!fonts.TryGetValue((style.Size, style.Bold), out XFont? font))
        {
            XFontStyleEx weight = style.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular;
            font = new XFont(EmbeddedFonts.Family, style.Size, weight, XPdfFontOptions.UnicodeDefault);
            fonts.Add((style.Size, style.Bold), font);
        }

        return font;
    }

    /// <summary>The width of one line of text in points.</summary>
    public double Width(string text, TextStyle style) =>
        text.Length == 0 ? 0 : paper.MeasureString(text, Font(style)).Width;

    /// <summary>Makes text fit for one line: no control characters; notes characters that cannot be printed.</summary>
    public string Printable(string text, TextStyle style)
    {
        var kept = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            Rune seen = Rune.IsControl(rune) ? new Rune(' ') : rune;
            if (GlyphHelper.GlyphIndexFromCodePoint(seen.Value, Font(style)) == 0)
                unknown.Add(seen.Value);
            kept.Append(seen.ToString());
        }

        return kept.ToString();
    }

    public void Dispose() => paper.Dispose();
}
