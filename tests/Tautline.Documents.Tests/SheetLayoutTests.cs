using CsCheck;
using Tautline.Documents.Paper;
using Tautline.Papers.Fonts;
using Tautline.Papers.Paper;
using Tautline.Papers.Paper.Layout;

namespace Tautline.Documents.Tests;

public sealed class SheetLayoutTests
{
    private const double HalfPoint = 0.5;

    [Fact]
    public void EveryRowIsPrintedOnceHoweverManyPagesItTakes()
    {
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.TakeOff(200));

        Assert.InRange(pages.Count, 4, 6);
        Assert.Equal(200, pages.SelectMany(Sheets.Words).Count(w => w.Text == "each"));
    }

    [Fact]
    public void ATableThatBreaksSaysItsCaptionAndHeadsAgain()
    {
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.TakeOff(200));

        Assert.All(pages.Where(p => Sheets.Words(p).Any(w => w.Text == "each")), page => Assert.Single(Sheets.Words(page), w => w.Text == "Quantity"));
        Assert.All(pages.Skip(1).SkipLast(1), page => Assert.Single(Sheets.Words(page), w => w.Text == "Take-off, continued"));
        Assert.All(pages.Skip(1), page => Assert.Single(Sheets.Words(page), w => w.Text == "Ballard yard & dock: take-off <1>, continued"));
    }

    [Fact]
    public void CautionsStandOnTheFirstPageOfTheirSheetHoweverFullItIs()
    {
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.TakeOff(200));

        Assert.Contains(Sheets.Words(pages[0]), w => w.Text == "• Keep clear of fabric under tension.");
        Assert.DoesNotContain(pages.Skip(1).SelectMany(Sheets.Words), w => w.Text == "• Keep clear of fabric under tension.");
    }

    [Fact]
    public void CautionsBeyondHalfThePageComeFirstAndAllOfThem()
    {
        string[] many = [.. Enumerable.Range(1, 100).Select(i => $"Caution {i}")];
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.Of(new PaperSheet("Gate") { Cautions = many, Blocks = [new PaperBlock.Words("Two leaves.")] }));

        Assert.Equal(100, pages.SelectMany(Sheets.Words).Count(w => w.Text.StartsWith("• ", StringComparison.Ordinal)));
        Assert.Contains(Sheets.Words(pages[^1]), w => w.Text == "Two leaves.");
    }

    [Fact]
    public void AHeadingIsNeverLeftAloneAtTheFoot()
    {
        for (int rows = 20; rows < 60; rows++)
        {
            IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.Of(new PaperSheet("A") { Blocks = [Sheets.Table(rows), new PaperBlock.Heading("Next"), Sheets.Table(3)] }));
            LaidPage page = pages.Single(p => Sheets.Words(p).Any(w => w.Text == "Next"));
            Mark.Words heading = Sheets.Words(page).Single(w => w.Text == "Next");

            Assert.Contains(Sheets.Words(page), w => w.Style == TextStyle.Cell && w.Y > heading.Y);
        }
    }

    [Fact]
    public void ASheetStartsOnAPageOfItsOwn()
    {
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.Of(new PaperSheet("One"), new PaperSheet("Two") { Format = new(PaperSize.Tabloid, Landscape: true) }));

        Assert.Equal(["One", "Two"], pages.Select(p => p.Sheet));
        Assert.Equal((1224, 792), (pages[1].Frame.PageWidth, pages[1].Frame.PageHeight));
        Assert.Contains(Sheets.Words(pages[1]), w => w.Text == "page 2 of 2");
    }

    [Fact]
    public void ANewPageIsTurnedOnceAndNeverBeforeAnythingStands()
    {
        PaperBlock[] blocks = [new PaperBlock.NewPage(), new PaperBlock.Words("Front"), new PaperBlock.NewPage(), new PaperBlock.NewPage(), new PaperBlock.Words("Back")];
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.Of(new PaperSheet("A") { Blocks = blocks }));

        Assert.Equal(2, pages.Count);
        Assert.Contains(Sheets.Words(pages[1]), w => w.Text == "Back");
    }

    [Fact]
    public void ARowHigherThanAPageGoesOnOverTheNext()
    {
        string text = string.Join(' ', Enumerable.Range(1, 3000).Select(i => $"word{i}"));
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Sheets.Of(new PaperSheet("A") { Blocks = [new PaperTable("T", [new("No."), new("What")], [["1", text]])] }));

        Assert.Equal(3000, pages.SelectMany(Sheets.Words).SelectMany(w => w.Text.Split(' ')).Count(w => w.StartsWith("word", StringComparison.Ordinal)));
        Assert.All(pages, Holds);
    }

    [Fact]
    public void FiguresEndAtTheRightOfTheirColumn()
    {
        EmbeddedFonts.Use();
        using var measure = new TextMeasure();
        double[] ends = [.. Sheets.Lay(Sheets.TakeOff(12)).SelectMany(Sheets.Words).Where(w => w.Style == TextStyle.Cell && int.TryParse(w.Text, out _))
            .Select(w => w.X + measure.Width(w.Text, w.Style))];

        Assert.Equal(12, ends.Length);
        Assert.All(ends, end => Assert.Equal(ends[0], end, 6));
    }

    [Fact]
    public void ARowToTickHasABoxAndRoomToWrite()
    {
        PaperTable table = new("Checks", [new("", ColumnAlign.Tick), new("What"), new("Measured", ColumnAlign.Blank)], [["", "Plumb", ""], ["", "Height", ""]]);
        LaidPage page = Sheets.Lay(Sheets.Of(new PaperSheet("A") { Blocks = [table] }))[0];

        Assert.Equal(2, page.Marks.OfType<Mark.Frame>().Count());
        double[] lines = [.. Sheets.Words(page).Where(w => w.Text is "Plumb" or "Height").Select(w => w.Y)];
        Assert.InRange(lines[1] - lines[0], 17, 20);
    }

    /// <summary>The first row of a QR code's finder is seven dark squares (ISO/IEC 18004, 6.3.3), behind a rim of four light ones.</summary>
    [Fact]
    public void TheCodeOfASheetStandsInItsCorner()
    {
        LaidPage page = Sheets.Lay(Sheets.Of(new PaperSheet("A") { Code = "ballard-yard A 0123" }))[0];
        Mark.Code code = Assert.Single(page.Marks.OfType<Mark.Code>());

        Assert.Equal(page.Frame.Left + page.Frame.Width, code.X + code.Size, 6);
        Assert.Equal("....#######.", string.Concat(Enumerable.Range(0, 12).Select(i => code.Matrix.IsDark(4, i) ? '#' : '.')));
        Assert.DoesNotContain(Enumerable.Range(0, code.Matrix.Size), i => code.Matrix.IsDark(3, i));
    }

    [Fact]
    public void NothingTouchesAnythingElseAndNoTextIsLost() =>
        PaperGen.Always(
            paper =>
            {
                IReadOnlyList<LaidPage> pages = Sheets.Lay(paper);

                Assert.All(pages, Holds);
                Assert.Equal(Letters(Texts(paper)), Letters(pages.SelectMany(Own)));
            },
            iter: 200);

    [Fact]
    public void ARowOfAnotherLengthIsRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new PaperTable("Posts", [new("A"), new("B")], [["1", "2"], ["3"]]));

        Assert.StartsWith("Row 2 of 'Posts' has 1 texts for 2 columns.", refused.Message, StringComparison.Ordinal);
    }

    private static readonly Gen<string> TextGen = Gen.String[Gen.Char["abcdefghij WMil.,½′″&<"], 0, 90];

    private static readonly Gen<PaperBlock> TableGen =
        from columns in Gen.Int[1, PaperTable.MostColumns]
        from rows in TextGen.Array[columns].Array[1, 60]
        select (PaperBlock)new PaperTable("", [.. Enumerable.Range(0, columns).Select(i => new PaperColumn("", (ColumnAlign)(i % 2)))], rows);

    private static readonly Gen<PaperBlock> BlockGen = Gen.OneOf(
        TableGen,
        TextGen.Select(t => (PaperBlock)new PaperBlock.Words(t)),
        TextGen.Select(t => (PaperBlock)new PaperBlock.Words(t, true, "12.")),
        TextGen.Select(t => (PaperBlock)new PaperBlock.Heading(t)),
        TextGen.Array[0, 5].Select(t => (PaperBlock)new PaperBlock.Lines(t)),
        Gen.Select(TextGen, TextGen).Array[0, 9].Select(f => (PaperBlock)new PaperBlock.Facts(f, 2)),
        Gen.Const((PaperBlock)new PaperBlock.NewPage()));

    private static readonly Gen<PaperSheet> SheetGen =
        from name in TextGen
        from head in TextGen.Array[0, 12]
        from blocks in BlockGen.Array[0, 6]
        from cautions in TextGen.Array[0, 5]
        from code in Gen.Bool
        select new PaperSheet(name) { Head = head, Blocks = blocks, Cautions = cautions, Code = code ? "A1" : "" };

    private static readonly Gen<PaperDocument> PaperGen =
        from title in TextGen
        from sheets in SheetGen.Array[1, 3]
        from size in Gen.Int[0, 3]
        from landscape in Gen.Bool
        select new PaperDocument(title) { Sheets = sheets, Format = new((PaperSize)size, landscape), Footer = "" };

    /// <summary>The texts of a page without what the layout says of itself: the number, 'Cautions', and the name again at the top.</summary>
    private static IEnumerable<string> Own(LaidPage page)
    {
        double again = page.First ? 0 : page.Boxes.First(b => b.Kind == "head").Bottom;
        return Sheets.Words(page).Where(w => w.Y > again && w.Text != "Cautions" && !(w.Style == TextStyle.Foot && w.Text.StartsWith("page ", StringComparison.Ordinal))).Select(w => w.Text);
    }

    private static IEnumerable<string> Texts(PaperDocument paper) =>
        paper.Sheets.SelectMany(s => s.Blocks.SelectMany(Texts).Concat(s.Head).Append(s.Name).Concat(s.Cautions.Select(c => "•" + c)).Append(paper.Title == s.Name ? "" : paper.Title));

    private static IEnumerable<string> Texts(PaperBlock block) => block switch
    {
        PaperTable t => t.Rows.SelectMany(r => r),
        PaperBlock.Words w => [w.Text, w.Mark],
        PaperBlock.Heading h => [h.Text],
        PaperBlock.Lines l => l.Labels,
        PaperBlock.Facts f => f.Rows.SelectMany(r => new[] { r.Label, r.Value }),
        _ => [],
    };

    /// <summary>How often each letter stands there.</summary>
    private static string Letters(IEnumerable<string> texts) =>
        string.Join(' ', texts.SelectMany(t => t).Where(c => c != ' ').GroupBy(c => c).OrderBy(g => g.Key).Select(g => $"{g.Key}{g.Count()}"));

    private static void Holds(LaidPage page)
    {
        using var measure = new TextMeasure();
        PageBox[] boxes = [.. page.Boxes.OrderBy(b => b.Top).ThenBy(b => b.Bottom)];
        foreach ((PageBox above, PageBox below) in boxes.Zip(boxes.Skip(1))) Assert.True(above.Bottom <= below.Top + 0.001, $"{above} and {below}");
        Assert.All(boxes, b => Assert.InRange(b.Bottom, page.Frame.Top, page.Frame.Bottom + HalfPoint));
        Assert.All(page.Marks, mark => AssertInside(mark, page.Frame, measure));
        AssertApart([.. Sheets.Words(page)], measure);
    }

    /// <summary>No two texts lie over each other.</summary>
    private static void AssertApart(Mark.Words[] words, TextMeasure measure)
    {
        var lines = words.Where(w => w.Text.Trim().Length > 0).Select(w => (w.X, Right: w.X + measure.Width(w.Text, w.Style), Top: w.Y - (w.Style.Size * 0.7), w.Y, w.Text)).OrderBy(w => w.Top).ToArray();
        for (int i = 0; i < lines.Length; i++)
        {
            for (int j = i + 1; j < lines.Length && lines[j].Top < lines[i].Y - 0.01; j++)
                Assert.False(lines[i].X < lines[j].Right - 0.01 && lines[j].X < lines[i].Right - 0.01, $"'{lines[i]}' lies over '{lines[j]}'");
        }
    }

    private static void AssertInside(Mark mark, PageFrame frame, TextMeasure measure)
    {
        (double left, double top, double right, double bottom) = mark switch
        {
            Mark.Words w => (w.X, w.Y - w.Style.Ascent, w.X + measure.Width(w.Text, w.Style), w.Y),
            Mark.Rule r => (r.X, r.Y, r.X + r.Width, r.Y),
            Mark.Frame f => (f.X, f.Y, f.X + f.Width, f.Y + f.Height),
            Mark.Code c => (c.X, c.Y, c.X + c.Size, c.Y + c.Size),
            _ => throw new InvalidOperationException(),
        };

        Assert.InRange(left, frame.Left - HalfPoint, frame.Left + frame.Width);
        Assert.InRange(right, frame.Left - HalfPoint, frame.Left + frame.Width + HalfPoint);
        Assert.InRange(top, frame.Top - HalfPoint, frame.Bottom);
        Assert.InRange(bottom, frame.Top - HalfPoint, frame.Bottom + HalfPoint);
    }
}
