using Tautline.Documents.Scenes;
using Tautline.Papers.Fonts;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Documents.Tests;

/// <summary>Our reader of the typeface's tables against PDFsharp's.</summary>
public sealed class FontWidthsTests
{
    [Theory]
    [InlineData("2+93.25 to 2+98.39, 5' 1 11/16\"")]
    [InlineData("½ ¼ ¾ ⅛ ° ′ ″ × ≤ ≥ –")]
    [InlineData("¿Dónde está el poste? ÁÉÍÓÚÑÜ")]
    [InlineData("")]
    public void ATextIsAsWideAsTheWriterOfPdfSays(string text)
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();

        Assert.Equal(measure.Width(text, TextStyle.Cell), FontWidths.Regular.Width(text, TextStyle.Cell.Size), 3);
        Assert.Equal(measure.Width(text, TextStyle.Title), FontWidths.Bold.Width(text, TextStyle.Title.Size), 3);
    }
}
