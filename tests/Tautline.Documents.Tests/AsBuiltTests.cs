using System.Globalization;
using Tautline.Documents.Paper;
using Tautline.Documents.Scenes;
using Tautline.Documents.Words;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Field.AsBuilt;
using Tautline.Field.Building;
using Tautline.Field.Log;
using Tautline.Papers.Drawings;
using Tautline.Papers.Paper;
using Tautline.Papers.Paper.Layout;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Built;

namespace Tautline.Documents.Tests;

/// <summary>What stands, drawn and on paper.</summary>
public sealed class AsBuiltTests
{
    private static PaperChoice Choice(string language = "en", PaperSize size = PaperSize.Letter, UnitSystem units = UnitSystem.UsCustomary) => new(units, Phrases.Of(language), new(size));

    private static string When(long at) => DateTimeOffset.FromUnixTimeMilliseconds(at).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static (BuiltRecord Record, LogState Log) Built(string sample, Func<Plan, IEnumerable<LogEntry>> day)
    {
        Job job = SamplePlans.Job(sample);
        LogState log = LogState.Of(day(SamplePlans.Of(job)));
        return (BuiltRecord.Of(FieldPlan.Of(job, FenceCatalog.BuiltIn(), RuleSets.For(job), log), log), log);
    }

    /// <summary>
    /// Half a week: posts of the first half of the runs set, the first run tied, the second hung, the third framed; in the last of them one line post a foot and a half
    /// ahead and three quarters of an inch to the right; a gate hung; a post that nobody drew; one whose line is gone; two changes.
    /// </summary>
    private static IEnumerable<LogEntry> HalfAWeek(Plan plan)
    {
        long n = 0;
        LogEntry Entry(string kind) => new() { Device = "phone", Sequence = ++n, Tick = n, At = 1_790_000_000_000 + (n * 3_600_000), Person = "Ines", Kind = kind };
        LogEntry Set(params PostDone[] posts) => Entry(LogEntry.Work) with { Done = new() { Operation = Operations.Set, Count = posts.Length, Posts = posts } };
        LinePlan line = plan.Lines[0];
        int half = (line.Runs.Count + 1) / 2;
        foreach (int run in Enumerable.Range(0, half))
            foreach (int p in RunPosts.Of(line)[run])
                if (run < half - 1 || line.Posts[p].Kind != PostKind.Line || p != Moved(line, half - 1)) yield return Set(Marking.AsPlanned(plan, 0, p));
        PostDone moved = Marking.At(plan, 0, Moved(line, half - 1), line.Posts[Moved(line, half - 1)].Station + Length.FromFeet(1.5));
        Direction way = plan.Basis.Lines[0].Site.Chain.LegFrom(line.Posts[Moved(line, half - 1)].Station.Nanometres).Heading;
        Length right = Length.FromInches(0.75);
        yield return Set(moved with { East = moved.East + (right * way.North), North = moved.North - (right * way.East) });
        yield return Set(Marking.At(plan, 0, Moved(line, half - 1), line.Posts[line.Runs[0].FromPost].Station + Length.FromFeet(5)));
        yield return Set(new PostDone { Leg = new("gone"), At = Length.Zero, East = new(-5_000), North = new(9_000), Number = 7, Line = true });
        List<TodayRow> rows = [.. Today.Of(plan, LogState.Of([])).Rows];
        foreach ((string operation, int run) in new[] { (Operations.Frame, 0), (Operations.Hang, 0), (Operations.Tie, 0), (Operations.Frame, 1), (Operations.Hang, 1), (Operations.Frame, 2) })
            if (rows.FirstOrDefault(r => r.Line == 0 && r.Run == run && r.Operation == operation) is { } row && Marking.Whole(plan, row) is var (done, place)) yield return Entry(LogEntry.Work) with { Done = done, Place = place };
        if (rows.FirstOrDefault(r => r.Operation == Operations.Gate) is { } gate && Marking.Whole(plan, gate) is var (hung, at)) yield return Entry(LogEntry.Work) with { Done = hung, Place = at };
        foreach ((string what, long cents) in new[] { ("Rock at the third post, jackhammer", 12_550L), ("Longer post at the swale", 4_500L) })
            yield return Entry(LogEntry.Change) with
            {
                Text = what,
                Place = Marking.PlaceAt(plan, 0, Length.FromFeet(20)),
                Changed = new() { Quantity = 2, Unit = "hour", UnitCents = cents, TotalCents = 2 * cents, Signer = "The owner" },
            };
    }

    private static int Moved(LinePlan line, int run) => RunPosts.Of(line)[run].First(p => line.Posts[p].Kind == PostKind.Line);

    private static string Words(PaperDocument paper) => string.Join('\n', Sheets.Lay(paper).SelectMany(Sheets.Words).Select(w => w.Text));

    private static Scene Scene(BuiltRecord record, bool onPaper = true, string language = "en", double width = 540, double height = 500)
        => AsBuiltDrawing.Of(record, width, height, new PlanWords(UnitSystem.UsCustomary), Phrases.Of(language), onPaper)!;

    [Fact]
    public void WhatStandsOtherwiseIsToldInTheCrewsWords()
    {
        (BuiltRecord record, LogState log) = Built("level-yard.json", HalfAWeek);
        string said = Words(AsBuiltPaper.Of(record, log, Choice(), When));

        foreach (string told in (string[])["1' 6\" ahead", "3/4\" right", "over tolerance", "not drawn", "Set where no line of the job runs any more: post 7 of 2026-", "Not built yet: A19 – A32.", "All changes together: 341.00.", "not a survey", "Ines", "Gates hung", "1 of 2, 50 %", "2 hour", "251.00"])
            Assert.Contains(told, said, StringComparison.Ordinal);
        Assert.DoesNotContain("What stands is as drawn", said, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereNothingIsBuiltThePaperSaysSo()
    {
        (BuiltRecord record, LogState log) = Built("level-yard.json", _ => []);
        string said = Words(AsBuiltPaper.Of(record, log, Choice(), When));

        Assert.Contains("Nothing is built yet.", said, StringComparison.Ordinal);
        Assert.Contains("0 of 32, 0 %", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Posts that stand otherwise", said, StringComparison.Ordinal);
    }

    /// <summary>In place to a thousandth of a point, the moved post's ring too: what it is off is told in words.</summary>
    [Theory]
    [InlineData("level-yard.json")]
    [InlineData("corner-lot.json")]
    [InlineData("ridge-road.json")]
    public void EveryPostIsDrawnWhereItStands(string sample)
    {
        BuiltRecord record = Built(sample, HalfAWeek).Record;
        Scene scene = Scene(record);

        Assert.Contains(record.Posts, p => p.OutOfLine);
        foreach ((int i, StandingPost post) in record.Posts.Index())
        {
            SceneItem sign = Assert.Single(scene.Items, s => s.Tag == $"stands {i}" && s is not SceneItem.Text);
            (double x, double y) = sign is SceneItem.Circle circle ? (circle.X, circle.Y) : (Middle(((SceneItem.Path)sign).Points, 0), Middle(((SceneItem.Path)sign).Points, 1));
            // A triangle's middle lies a fifth of a sign lower than its place.
            Assert.Equal(post.Post.East.Metres, scene.Origin!.Value.X + (x / scene.UnitsPerMetre), 0.9 / scene.UnitsPerMetre);
            Assert.Equal(post.Post.North.Metres, scene.Origin.Value.Y - (y / scene.UnitsPerMetre), 0.9 / scene.UnitsPerMetre);
            if (post.OutOfLine) Assert.Equal(SceneRole.Warning, sign.Role);
        }
    }

    private static double Middle(IReadOnlyList<double> points, int from)
    {
        double[] all = [.. Enumerable.Range(0, points.Count / 2).Select(i => points[(2 * i) + from])];
        return (all.Min() + all.Max()) / 2;
    }

    /// <summary>The first run is tied, the second hung, the third framed, the rest not begun; one gate of two hangs.</summary>
    [Fact]
    public void WorkIsDrawnHeavierTheFurtherItIs()
    {
        Scene scene = Scene(Built("level-yard.json", HalfAWeek).Record);

        SceneRole[] runs = [.. scene.Items.Where(i => i.Tag.StartsWith("run ", StringComparison.Ordinal)).Select(i => i.Role)];
        Assert.Equal([SceneRole.Terminal, SceneRole.Rail, SceneRole.Axis], runs);
        double[] pens = [.. runs.Select(r => RoleStyle.Of(r).Pen)];
        Assert.Equal(pens.OrderDescending(), pens);
        Assert.Equal(2, scene.Items.Where(i => i.Tag.StartsWith("gate ", StringComparison.Ordinal) && i.Role is SceneRole.Rail or SceneRole.Hidden).Select(i => i.Role).Distinct().Count());
    }

    [Theory]
    [InlineData("level-yard.json", "en", true)]
    [InlineData("creek-yard.json", "es", true)]
    [InlineData("corner-lot.json", "es", false)]
    [InlineData("level-yard.json", "es", false)]
    [InlineData("ridge-road.json", "en", false)]
    public void NoTwoTextsLieOverEachOtherAndNoneLeavesTheSheet(string sample, string language, bool onPaper)
    {
        Scene scene = Scene(Built(sample, HalfAWeek).Record, onPaper, language, onPaper ? 540 : 250, onPaper ? 500 : 320);
        var boxes = scene.Items.OfType<SceneItem.Text>().Select(t => (Text: t.Words, Box: Box(t))).ToList();

        foreach ((int i, (string text, (double Left, double Top, double Right, double Bottom) a)) in boxes.Index())
        {
            Assert.InRange(a.Left, 0, scene.Width);
            Assert.InRange(a.Right, 0, scene.Width);
            Assert.InRange(a.Bottom, 0, scene.Height);
            foreach ((string other, (double Left, double Top, double Right, double Bottom) b) in boxes.Skip(i + 1))
                Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"'{text}' lies over '{other}'");
        }
    }

    private static (double Left, double Top, double Right, double Bottom) Box(SceneItem.Text text)
    {
        double wide = (RoleStyle.Of(text.Role).Bold ? FontWidths.Bold : FontWidths.Regular).Width(text.Words, text.Size);
        double left = text.Anchor switch { TextAnchor.End => text.X - wide, TextAnchor.Middle => text.X - (wide / 2), _ => text.X };
        return (left, text.Y - (0.75 * text.Size), left + wide, text.Y);
    }

    public static TheoryData<string, string, UnitSystem, PaperSize> Every()
    {
        TheoryData<string, string, UnitSystem, PaperSize> all = [];
        foreach (string sample in SamplePlans.Names)
        {
            all.Add(sample, "en", UnitSystem.UsCustomary, PaperSize.Letter);
            all.Add(sample, "es", UnitSystem.Metric, PaperSize.A4);
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void NothingTouchesAnythingElseOrLeavesItsPageAndTheDrawingIsOnTheFirst(string sample, string language, UnitSystem units, PaperSize size)
    {
        (BuiltRecord record, LogState log) = Built(sample, HalfAWeek);
        PaperDocument paper = AsBuiltPaper.Of(record, log, Choice(language, size, units), When);
        IReadOnlyList<LaidPage> pages = Sheets.Lay(paper);
        using var measure = new TextMeasure();

        Assert.Single(pages[0].Marks.OfType<Mark.Drawing>());
        Assert.Equal(paper.Sheets.Count, pages.Count(p => p.First));
        Assert.All(pages.Where(p => p.First), p => Assert.Contains(Sheets.Words(p), w => w.Text == paper.Words.Cautions));
        foreach (LaidPage page in pages)
        {
            PageBox[] boxes = [.. page.Boxes.OrderBy(b => b.Top)];
            Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.First.Bottom <= pair.Second.Top + 0.01, $"{page.Sheet}: {pair.First} {pair.Second}"));
            Assert.All(Sheets.Words(page), w => Assert.InRange(w.X + measure.Width(w.Text, w.Style), page.Frame.Left, page.Frame.Left + page.Frame.Width + 0.5));
        }
    }

    [Fact]
    public void OtherProgramsReadItAndTheSameRecordGivesTheSameBytes()
    {
        (BuiltRecord record, LogState log) = Built("level-yard.json", HalfAWeek);
        byte[] pdf = PdfWriter.Write(AsBuiltPaper.Of(record, log, Choice("es"), When)).Pdf;
        (int exit, string said) = Outside.Run("qpdf", "--check", pdf);

        Assert.True(exit == 0, said);
        Assert.Equal(pdf, PdfWriter.Write(AsBuiltPaper.Of(record, log, Choice("es"), When)).Pdf);
        Assert.Contains("no un levantamiento", Outside.Run("pdftotext", "-layout", pdf, "-").Said, StringComparison.Ordinal);
    }

    [Fact]
    public void APlanWithErrorsHasNoAsBuilt()
    {
        Plan broken = SamplePlans.Of(SamplePlans.Job("level-yard.json") with { Specs = [] });
        Assert.Throws<ArgumentException>(() => AsBuiltPaper.Of(BuiltRecord.Of(broken, broken, LogState.Of([])), LogState.Of([]), Choice(), When));
    }
}
