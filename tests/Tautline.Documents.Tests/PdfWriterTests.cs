using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;
using Tautline.Documents.Paper;
using Tautline.Papers.Paper;

namespace Tautline.Documents.Tests;

public sealed class PdfWriterTests
{
    /// <summary>Inches from ANSI Y14.1 and the architectural series, millimetres from ISO 216; a point is a seventy-second of an inch.</summary>
    [Theory]
    [InlineData(PaperSize.Letter, 612, 792)]
    [InlineData(PaperSize.A4, 595, 842)]
    [InlineData(PaperSize.Tabloid, 792, 1224)]
    [InlineData(PaperSize.A3, 842, 1191)]
    [InlineData(PaperSize.AnsiD, 1584, 2448)]
    [InlineData(PaperSize.ArchD, 1728, 2592)]
    [InlineData(PaperSize.A1, 1684, 2384)]
    public void APageIsAsLargeAsItsPaper(PaperSize size, double width, double height)
    {
        using PdfDocument read = Open(PdfWriter.Write(Sheets.TakeOff(12, size)).Pdf);

        Assert.Equal(1, read.PageCount);
        Assert.Equal(width, read.Pages[0].Width.Point);
        Assert.Equal(height, read.Pages[0].Height.Point);
    }

    [Fact]
    public void EqualSheetsGiveEqualBytes()
    {
        byte[] first = PdfWriter.Write(Sheets.TakeOff(12)).Pdf;
        byte[] second = PdfWriter.Write(Sheets.TakeOff(12)).Pdf;

        Assert.Equal(first, second);
    }

    [Fact]
    public void SheetsWrittenAtTheSameTimeDoNotDisturbEachOther()
    {
        byte[][] alone = [.. Enumerable.Range(0, 4).Select(i => PdfWriter.Write(Sheets.TakeOff(i * 5)).Pdf)];
        byte[][] together = new byte[40][];
        Parallel.For(0, together.Length, i => together[i] = PdfWriter.Write(Sheets.TakeOff(i % 4 * 5)).Pdf);

        for (int i = 0; i < together.Length; i++) Assert.Equal(alone[i % 4], together[i]);
    }

    [Fact]
    public void ASheetThatDiffersInOneLetterHasAnotherFileIdentifier()
    {
        byte[] one = PdfWriter.Write(new PaperDocument("Gate A")).Pdf;
        byte[] other = PdfWriter.Write(new PaperDocument("Gate B")).Pdf;

        Assert.NotEqual(FileId(one), FileId(other));
    }

    [Fact]
    public void BothFileIdentifiersAreAlikeAndNotTheBlank()
    {
        string id = FileId(PdfWriter.Write(Sheets.TakeOff(3)).Pdf);

        Assert.Equal(id[..32], id[32..]);
        Assert.NotEqual(new string('0', 32), id[..32]);
    }

    [Fact]
    public void TheTwoFontsCarryDifferentSubsetTags()
    {
        string text = Encoding.Latin1.GetString(PdfWriter.Write(Sheets.TakeOff(3)).Pdf);
        string[] names = [.. Regex.Matches(text, @"/([A-Z]{6}\+Tautline#20Sans[^\s/]*)").Select(m => m.Groups[1].Value).Distinct().Order()];

        Assert.Equal(2, names.Length);
        Assert.NotEqual(names[0][..6], names[1][..6]);
    }

    [Fact]
    public void NoDateIsInTheFile()
    {
        string text = Encoding.Latin1.GetString(PdfWriter.Write(Sheets.TakeOff(3)).Pdf);

        Assert.DoesNotMatch("CreationDate|ModDate|CreateDate|ModifyDate|MetadataDate", text);
    }

    [Fact]
    public void TheXmpPacketIsWellFormedWhateverTheTitle()
    {
        const string title = "Gate <2> & \"dock\" ½ ≤";
        string text = Encoding.Latin1.GetString(PdfWriter.Write(new PaperDocument(title)).Pdf);
        string packet = Regex.Match(text, @"<x:xmpmeta.*</x:xmpmeta>", RegexOptions.Singleline).Value;
        XDocument xml = XDocument.Parse(Encoding.UTF8.GetString(Encoding.Latin1.GetBytes(packet)));

        Assert.Equal(title, xml.Descendants().Single(e => e.Name.LocalName == "title").Value);
    }

    [Fact]
    public void ATitleFullOfMarkupStillGivesAFile()
    {
        using PdfDocument read = Open(PdfWriter.Write(new PaperDocument(new string('&', 2000))).Pdf);

        Assert.InRange(read.PageCount, 1, 3);
    }

    [Theory]
    [InlineData("<?xpacket begin= <?xpacket end=\"w\"?> /AAAAAA+Tautline endstream endobj")]
    [InlineData("trailer << /ID [<00000000000000000000000000000000><00000000000000000000000000000000>] >> ) ( \\")]
    public void ATitleThatLooksLikeAPartOfTheFileIsOnlyATitle(string title)
    {
        byte[] pdf = PdfWriter.Write(new PaperDocument(title)).Pdf;
        using PdfDocument read = Open(pdf);

        Assert.Equal(title, read.Info.Title);
        Assert.Equal(pdf, PdfWriter.Write(new PaperDocument(title)).Pdf);
        Assert.NotEqual(FileId(pdf), FileId(PdfWriter.Write(new PaperDocument("")).Pdf));
    }

    [Fact]
    public void AnOutsideCheckerFindsNothingAmiss()
    {
        (int exit, string said) = Outside.Run("qpdf", "--check", PdfWriter.Write(Sheets.TakeOff(40)).Pdf);

        Assert.True(exit == 0, said);
        Assert.DoesNotContain("WARNING", said, StringComparison.Ordinal);
    }

    [Fact]
    public void AnOutsideReaderFindsTheWordsInTheirOrder()
    {
        string text = Outside.Run("pdftotext", "-layout", PdfWriter.Write(Sheets.TakeOff(3)).Pdf, "-").Said;

        Assert.Matches(@"(?s)Ballard yard & dock: take-off <1>.*Item\s+Quantity\s+Unit\s+Why.*Line post 3, 2\.375 in × 8′ 6½″\s+3\s+each\s+one per bay less one.*Cautions", text);
    }

    [Fact]
    public void TheTitleAndTheLanguageAreInTheFile()
    {
        using PdfDocument read = Open(PdfWriter.Write(Sheets.TakeOff(3) with { Words = PaperWords.English with { Language = "es-US" } }).Pdf);

        Assert.Equal("Ballard yard & dock: take-off <1>", read.Info.Title);
        Assert.Equal("es-US", read.Language);
    }

    [Fact]
    public void ALongPaperHasAsManyPagesAsItSays()
    {
        PrintedPaper paper = PdfWriter.Write(Sheets.TakeOff(200));
        using PdfDocument read = Open(paper.Pdf);
        string text = Outside.Run("pdftotext", "-layout", paper.Pdf, "-").Said;

        Assert.Equal(read.PageCount, paper.Pages);
        Assert.Contains($"page 1 of {paper.Pages}", text, StringComparison.Ordinal);
        Assert.Contains($"page {paper.Pages} of {paper.Pages}", text, StringComparison.Ordinal);
        Assert.All(Enumerable.Range(1, 200), i => Assert.Contains($"Line post {i},", text, StringComparison.Ordinal));
    }

    [Fact]
    public void ACharacterTheTypefaceLacksIsNamed() =>
        Assert.Equal("中😀", PdfWriter.Write(new PaperDocument("Fence 中 😀 中")).UnknownCharacters);

    [Theory]
    [InlineData("½¼¾⅛⅜⅝⅞ ←↑→↓ ≤≥≈≠−× ° ′ ″ ² ³ • – — … “quoted” ‘so’ € µ Ø √")]
    [InlineData("Señal: ¿dónde está el poste? ÁÉÍÓÚÑÜ áéíóúñü ¡cuidado!")]
    [InlineData("Český plot, čtyři stĺpy, żółw, ğ, ő, ß, Œ")]
    public void TheTypefaceHasTheSignsOfTheTrade(string text) => Assert.Equal("", PdfWriter.Write(new PaperDocument(text)).UnknownCharacters);

    private static PdfDocument Open(byte[] pdf) => PdfReader.Open(new MemoryStream(pdf), PdfDocumentOpenMode.Import);

    private static string FileId(byte[] pdf)
    {
        Match match = Regex.Match(Encoding.Latin1.GetString(pdf), @"/ID\s*\[\s*<(.{32})>\s*<(.{32})>", RegexOptions.RightToLeft);
        return match.Groups[1].Value + match.Groups[2].Value;
    }
}
