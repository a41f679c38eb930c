using CsCheck;
using Tautline.Documents.Fonts;
using Tautline.Documents.Paper;
using Tautline.Documents.Paper.Layout;

namespace Tautline.Documents.Tests;

public sealed class SheetLayoutTests
{
    private const double HalfPoint = 0.5;

    [Fact]
    public void RowsThatFindNoRoomAreCountedOnThePageAndInTheResult()
    {
        PageContent content = Place(Sheets.TakeOff(200));
        int printed = Words(content).Count(w => w.Text == "each");

        // All 200 rows and the one note: what is not printed is counted.
        Assert.Equal(201 - printed, content.LinesNotPrinted);
        Assert.Contains(Words(content), w => w.Text == $"{201 - printed} more lines not printed: this page is full.");
    }

    [Fact]
    public void CautionsStayWhereThePageIsFull()
    {
        PageContent content = Place(Sheets.TakeOff(200));

        Assert.Contains(Words(content), w => w.Text == "• Keep clear of fabric under tension.");
    }

    [Fact]
    public void OneRowTooManyIsOneLine()
    {
        int rows = 1;
        while (Place(Sheets.TakeOff(rows)).LinesNotPrinted == 0)
            rows++;

        // The notice itself takes a row's place, so the first overflow loses the note and the row above it.
        Assert.InRange(Place(Sheets.TakeOff(rows)).LinesNotPrinted, 1, 2);
    }

    [Fact]
    public void AHeadingIsNeverLeftAloneAtTheFoot()
    {
        for (int rows = 20; rows < 50; rows++)
        {
            PaperSheet sheet = Sheets.TakeOff(rows);
            PageContent content = Place(sheet with { Tables = [.. sheet.Tables, .. sheet.Tables] });
            Mark.Words last = Words(content).Last(w => w.Style == TextStyle.Caption);

            Assert.Contains(Words(content), w => w.Style == TextStyle.Cell && w.Y > last.Y);
        }
    }

    [Fact]
    public void CautionsBeyondHalfThePageAreCounted()
    {
        string[] many = [.. Enumerable.Range(1, 100).Select(i => $"Caution {i}")];
        PageContent content = Place(new PaperSheet("Gate") { Cautions = many });
        int printed = Words(content).Count(w => w.Text.StartsWith("• ", StringComparison.Ordinal));

        Assert.InRange(printed, 10, 99);
        Assert.Equal(100 - printed, content.LinesNotPrinted);
    }

    [Fact]
    public void FiguresEndAtTheRightOfTheirColumn()
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();
        PageContent content = new SheetLayout(measure, PageFrame.Of(PaperSize.Letter)).Place(Sheets.TakeOff(12));
        double[] ends = [.. Words(content).Where(w => w.Style == TextStyle.Cell && int.TryParse(w.Text, out _))
            .Select(w => w.X + measure.Width(w.Text, w.Style))];

        Assert.Equal(12, ends.Length);
        Assert.All(ends, end => Assert.Equal(ends[0], end, 6));
    }

    [Fact]
    public void NothingIsDrawnOutsideTheMarginsAndNoPrintedTextIsLost() =>
        SheetGen.Sample(
            sheet =>
            {
                EmbeddedFonts.Use();
                PageFrame frame = PageFrame.Of(sheet.Size);
                using var measure = new TextMeasure();
                PageContent content = new SheetLayout(measure, frame).Place(sheet);

                Assert.All(content.Marks, mark => AssertInside(mark, frame, measure));
                if (content.LinesNotPrinted == 0)
                    Assert.Equal(Letters(Texts(sheet)), Letters(Words(content).Where(w => !IsFurniture(w)).Select(w => w.Text)));
            },
            iter: 150);

    [Fact]
    public void ARowOfAnotherLengthIsRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new PaperTable("Posts", [new("A"), new("B")], [["1", "2"], ["3"]]));

        Assert.StartsWith("Row 2 of 'Posts' has 1 texts for 2 columns.", refused.Message, StringComparison.Ordinal);
    }

    private static readonly Gen<string> TextGen = Gen.String[Gen.Char["abcdefghij WMil.,½′″&<"], 0, 90];

    private static readonly Gen<PaperTable> TableGen =
        from columns in Gen.Int[1, PaperTable.MostColumns]
        from rows in TextGen.Array[columns].Array[0, 12]
        from heads in TextGen.Array[columns]
        select new PaperTable("", [.. heads.Select((h, i) => new PaperColumn(h, (ColumnAlign)(i % 2)))], rows);

    private static readonly Gen<PaperSheet> SheetGen =
        from title in TextGen
        from subtitle in TextGen.Array[0, 3]
        from tables in TableGen.Array[0, 3]
        from notes in TextGen.Array[0, 5]
        from cautions in TextGen.Array[0, 5]
        from footer in TextGen
        from a4 in Gen.Bool
        select new PaperSheet(title)
        {
            Subtitle = subtitle,
            Tables = tables,
            Notes = notes,
            Cautions = cautions,
            Footer = footer,
            Size = a4 ? PaperSize.A4 : PaperSize.Letter,
        };

    private static PageContent Place(PaperSheet sheet)
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();
        return new SheetLayout(measure, PageFrame.Of(sheet.Size)).Place(sheet);
    }

    private static IEnumerable<Mark.Words> Words(PageContent content) => content.Marks.OfType<Mark.Words>();

    private static bool IsFurniture(Mark.Words words) => words.Style == TextStyle.Warning || words.Text == "None.";

    private static IEnumerable<string> Texts(PaperSheet sheet) =>
        sheet.Subtitle.Concat(sheet.Notes).Concat(sheet.Cautions.Select(c => "•" + c))
            .Concat(sheet.Tables.SelectMany(t => t.Rows.SelectMany(r => r).Concat(t.Columns.Select(c => c.Header))))
            .Append(sheet.Title).Append(sheet.Footer);

    private static string Letters(IEnumerable<string> texts) => string.Concat(texts.SelectMany(t => t).Where(c => c != ' ').Order());

    private static void AssertInside(Mark mark, PageFrame frame, TextMeasure measure)
    {
        (double left, double top, double right, double bottom) = mark switch
        {
            Mark.Words w => (w.X, w.Y - w.Style.Ascent, w.X + measure.Width(w.Text, w.Style), w.Y),
            Mark.Rule r => (r.X, r.Y, r.X + r.Width, r.Y),
            Mark.Frame f => (f.X, f.Y, f.X + f.Width, f.Y + f.Height),
            _ => throw new InvalidOperationException(),
        };

        Assert.InRange(left, frame.Left - HalfPoint, frame.Left + frame.Width);
        Assert.InRange(right, frame.Left - HalfPoint, frame.Left + frame.Width + HalfPoint);
        Assert.InRange(top, frame.Top - HalfPoint, frame.Bottom);
        Assert.InRange(bottom, frame.Top - HalfPoint, frame.Bottom + HalfPoint);
    }
}
