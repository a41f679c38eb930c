using System.Text.Json;
using System.Text.RegularExpressions;
using Tautline.Documents.Paper;
using Tautline.Documents.Words;
using Tautline.Engine.Jobs;
using Tautline.Engine.Picture;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Takeoff;
using Tautline.Field.Inspecting;
using Tautline.Papers.Paper;
using Tautline.Papers.Paper.Layout;
using Tautline.Papers.Plans;
using Tautline.Papers.Plans.Office;
using Tautline.Papers.Plans.Packet;

namespace Tautline.Documents.Tests;

/// <summary>The papers of every sample, laid out and printed.</summary>
public sealed partial class PacketTests
{
    private static PaperChoice Choice(UnitSystem units = UnitSystem.UsCustomary, string language = "en", PaperSize size = PaperSize.Letter) => new(units, Phrases.Of(language), new(size));

    private static PaperDocument Packet(string sample, PaperChoice? choice = null) => CrewPacket.Of(SamplePlans.Of(sample), choice ?? Choice());

    private static string Words(IReadOnlyList<LaidPage> pages) => string.Join('\n', pages.SelectMany(Sheets.Words).Select(w => w.Text));

    public static TheoryData<string, string, UnitSystem, PaperSize> Every()
    {
        TheoryData<string, string, UnitSystem, PaperSize> all = [];
        foreach (string sample in SamplePlans.Names)
        {
            all.Add(sample, "en", UnitSystem.UsCustomary, PaperSize.Letter);
            all.Add(sample, "es", UnitSystem.Metric, PaperSize.A4);
        }

        foreach (PaperSize size in Enum.GetValues<PaperSize>()) all.Add("creek-yard.json", "es", UnitSystem.UsCustomary, size);
        return all;
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void NothingOnAPacketTouchesAnythingElseOrLeavesItsPage(string sample, string language, UnitSystem units, PaperSize size)
    {
        PaperDocument paper = Packet(sample, Choice(units, language, size));
        IReadOnlyList<LaidPage> pages = Sheets.Lay(paper);
        using var measure = new TextMeasure();

        Assert.Equal(paper.Sheets.Count, pages.Count(p => p.First));
        foreach (LaidPage page in pages)
        {
            PageBox[] boxes = [.. page.Boxes.OrderBy(b => b.Top)];
            Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.First.Bottom <= pair.Second.Top + 0.01, $"{page.Sheet}: {pair.First} {pair.Second}"));
            Assert.All(Sheets.Words(page), w => Assert.InRange(w.X + measure.Width(w.Text, w.Style), page.Frame.Left, page.Frame.Left + page.Frame.Width + 0.5));
            Assert.All(page.Marks.OfType<Mark.Drawing>(), d => Assert.InRange(d.Y + d.Scene.Height, 0, page.Frame.Bottom + 0.5));
        }
    }

    [Fact]
    public void ARunHasASheetAndSoHaveTerminalsAndGates()
    {
        PaperDocument paper = Packet("level-yard.json");
        string[] names = [.. paper.Sheets.Select(s => s.Name)];

        Assert.Equal(["Run 1: A1 to A3", "Run 2: A4 to A8", "Run 3: A8 to A18", "Run 4: A18 to A21", "Run 5: A22 to A24", "Run 6: A24 to A1", "Job"], names[..7]);
        Assert.Equal(8, names.Count(n => n.StartsWith("Terminal ", StringComparison.Ordinal)));
        Assert.Contains("Walk gate 4' 0\", A3 to A4", names);
        Assert.Contains("Double gate 16' 0\", A21 to A22", names);
        Assert.Equal("Quality checklist", names[^1]);
        Assert.All(paper.Sheets, s => Assert.NotEmpty(s.Code));
    }

    /// <summary>Both sides of one sheet, on a level yard, over a hill, and on runs of up to 480 ft with ten rolls each.</summary>
    [Theory]
    [InlineData("level-yard.json")]
    [InlineData("goat-hill.json")]
    [InlineData("larkspur-ground.json")]
    [InlineData("ridge-road.json")]
    public void ARunTakesTheTwoSidesOfOneSheet(string sample)
    {
        IReadOnlyList<LaidPage> pages = Sheets.Lay(Packet(sample));

        Assert.All(pages.Where(p => p.Sheet.StartsWith("Run ", StringComparison.Ordinal)).GroupBy(p => p.Sheet), g => Assert.Equal(2, g.Count()));
    }

    /// <summary>Figures of docs/checks: the level yard is counted by hand there.</summary>
    [Fact]
    public void TheFiguresOfTheLevelYardStandOnItsSheets()
    {
        string said = Words(Sheets.Lay(Packet("level-yard.json")));

        foreach (string figure in (string[])["19' 5 11/16\"", "1 down, then every 4 diamonds, last one 2½; on a bar of 70\"", "6 each", "every 8 diamonds (22 3/8\")", "10 × 30 in".Replace("×", "x", StringComparison.Ordinal), "8' 8\""])
            Assert.Contains(figure, said, StringComparison.Ordinal);
    }

    /// <summary>Whatever carries a unit on a paper is a number of the plan, in its words: nothing is worked out on the way to paper.</summary>
    [Theory]
    [InlineData("level-yard.json", UnitSystem.UsCustomary)]
    [InlineData("goat-hill.json", UnitSystem.UsCustomary)]
    [InlineData("larkspur-ground.json", UnitSystem.UsCustomary)]
    [InlineData("creek-yard.json", UnitSystem.Metric)]
    public void EveryLengthOnAPacketIsANumberOfThePlan(string sample, UnitSystem units)
    {
        Plan plan = SamplePlans.Of(sample);
        var words = new PlanWords(units);
        HashSet<string> known = [];
        using (JsonDocument json = JsonDocument.Parse(PlanFile.Indented(plan)))
            foreach (double number in Numbers(json.RootElement)) Know(known, words, number);
        foreach (double limit in plan.Basis.Rules.All.Select(l => l.Value).Concat(plan.Basis.Specs.Select(s => s.Fabric.Mesh.Metres)).Concat(plan.Basis.Specs.Select(s => s.Height.Metres))) Know(known, words, limit);
        for (int line = 0; line < plan.Lines.Count; line++)
            for (int run = 0; run < plan.Lines[line].Runs.Count; run++)
                if (HangCards.Seat(plan, line, run) is var seat)
                    foreach (Length one in (Length[])[seat.TopOver.Low, seat.TopOver.High, seat.Gap.Low, seat.Gap.High, seat.FabricTop.Low, seat.FabricTop.High, seat.Plumb]) Know(known, words, one.Metres);

        // Tolerances of checks are the list's own.
        foreach (CheckItem check in InspectionList.Of(plan.Basis.Rules).Where(c => c.Measure == CheckMeasure.Length))
            foreach (CheckBound? end in (CheckBound?[])[check.Least, check.Most]) Know(known, words, end?.Value ?? 0);
        foreach (PlaceQuantity place in PlaceQuantities.Of(plan)) Know(known, words, place.Net);
        foreach (ProfileGate gate in plan.Lines.SelectMany((_, i) => ProfileStage.Of(plan, i).Gates)) Know(known, words, gate.Tall.Metres);
        foreach (LegPicture leg in PictureStage.Of(plan, units).Legs)
            foreach (Match figure in Figure().Matches(leg.Length)) known.Add(figure.Value);
        // Warnings are the Engine's own sentences, and the job's total is a sum it makes itself.
        Know(known, words, PlanTotals.Of(plan).Fence.Metres);
        PaperDocument paper = CrewPacket.Of(plan, Choice(units));
        LaidPage[] pages = [.. Sheets.Lay(paper).Where(p => p.Sheet != "Job")];
        IEnumerable<string> drawn = pages.SelectMany(p => p.Marks.OfType<Mark.Drawing>()).SelectMany(d => d.Scene.Items.OfType<Documents.Scenes.SceneItem.Text>()).Select(t => t.Words);
        IEnumerable<string> texts = pages.SelectMany(Sheets.Words).Select(w => w.Text).Concat(drawn);
        string[] strangers = [.. texts.SelectMany(t => Figure().Matches(t).Select(m => m.Value)).Where(f => !known.Contains(f)).Distinct()];

        Assert.Empty(strangers);
    }

    private static void Know(HashSet<string> known, PlanWords words, double number)
    {
        known.Add(words.Long(new Length(number)));
        known.Add(words.Short(new Length(number)));
        known.Add(words.Signed(new Length(number)));
    }

    private static IEnumerable<double> Numbers(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Number => [element.GetDouble()],
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Numbers(p.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Numbers),
        _ => [],
    };

    // Not the seconds of a bearing, 2°51'45".
    [GeneratedRegex("""-?[0-9][0-9,]*' [0-9]+( [0-9]+/[0-9]+)?"|(?<!' )(?<!')(?<![0-9/] )-?\b[0-9]+( [0-9]+/[0-9]+)?"|[0-9][0-9,]*\.[0-9]{3} m\b|-?[0-9]+ mm\b""")]
    private static partial Regex Figure();

    [Fact]
    public void BothLanguagesSayTheSameThingsInTheirOwnWords()
    {
        string english = Words(Sheets.Lay(Packet("goat-hill.json", Choice(language: "en")))), spanish = Words(Sheets.Lay(Packet("goat-hill.json", Choice(language: "es"))));

        Assert.Contains("Front: hang the fabric", english, StringComparison.Ordinal);
        Assert.Contains("Frente: colgar la malla", spanish, StringComparison.Ordinal);
        Assert.Contains("rombos", spanish, StringComparison.Ordinal);
        foreach (string foreign in (string[])["diamonds", "picket", "fabric", "Cautions", "page 1 of"]) Assert.DoesNotContain(foreign, WithoutWarnings(spanish), StringComparison.Ordinal);
    }

    /// <summary>Warnings and sources are the Engine's own sentences, which are English.</summary>
    private static string WithoutWarnings(string said) => string.Join('\n', said.Split('\n').Where(l => !l.Contains("spec", StringComparison.Ordinal) && !l.Contains("ASTM", StringComparison.Ordinal)));

    [Fact]
    public void TheSamePlanGivesTheSameBytes()
    {
        byte[] one = PdfWriter.Write(Packet("corner-lot.json")).Pdf, other = PdfWriter.Write(Packet("corner-lot.json")).Pdf;

        Assert.Equal(one, other);
    }

    [Theory]
    [InlineData("corner-lot.json", PaperKind.Packet)]
    [InlineData("ball-field.json", PaperKind.Drawings)]
    [InlineData("bank.json", PaperKind.Reasons)]
    [InlineData("sloped-lot.json", PaperKind.Submittal)]
    public void OtherProgramsReadEveryPaper(string sample, PaperKind kind)
    {
        byte[] pdf = PdfWriter.Write(PaperMaker.Of(kind, SamplePlans.Of(sample), Choice(language: "es"))).Pdf;
        (int exit, string said) = Outside.Run("qpdf", "--check", pdf);

        Assert.True(exit == 0, said);
        string text = Outside.Run("pdftotext", "-layout", pdf, "-").Said;
        Assert.Contains("página 1 de", text, StringComparison.Ordinal);
        string[] fonts = [.. Outside.Made("pdffonts", ["paper.pdf"], "paper.pdf", pdf).Split('\n').Where(l => l.Contains("Tautline", StringComparison.Ordinal))];
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f => Assert.Matches(@"\byes\s+yes\s+yes\b", f));
    }

    [Fact]
    public void LongNamesAndForeignLettersArePrintedOrTold()
    {
        Job job = SamplePlans.Job("level-yard.json");
        Job named = job with { Name = string.Concat(Enumerable.Repeat("The very long name of a storage yard by the river ", 12)) + "مخزن 🚧", Lines = [.. job.Lines.Select(l => l with { Name = new string('W', 300) })] };
        PrintedPaper printed = PdfWriter.Write(CrewPacket.Of(SamplePlans.Of(named), Choice()));

        Assert.Contains("خ", printed.UnknownCharacters, StringComparison.Ordinal);
        Assert.Contains("U+1F6A7", Outside.Run("pdftotext", "-layout", printed.Pdf, "-").Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TwoThousandPostsAndThreeMilesArePrinted()
    {
        Job job = SamplePlans.Job("level-yard.json");
        Line line = job.Lines[0];
        Vertex Far(int i, double east, double north) => line.Vertices[i] with { East = new Length(east), North = new Length(north) };
        Job far = job with { Gates = [], Lines = [line with { Closed = false, Vertices = [Far(0, 0, 0), Far(1, 2000, 1000), Far(2, 4700, 900) with { Leg = null }] }] };
        Plan plan = SamplePlans.Of(far);
        List<(int Done, int Of)> told = [];
        PaperDocument paper = await CrewPacket.OfAsync(plan, Choice(), (n, of) =>
        {
            told.Add((n, of));
            return Task.CompletedTask;
        });
        PrintedPaper printed = PdfWriter.Write(paper);

        Assert.InRange(plan.Lines[0].Posts.Count, 1600, 2200);
        Assert.Equal(Enumerable.Range(1, paper.Sheets.Count).Select(n => (n, paper.Sheets.Count)), told);
        Assert.True(printed.Pages > 50);
        Assert.Equal("", printed.UnknownCharacters);
    }

    /// <summary>Any two samples, though the one has parts both bare and black.</summary>
    [Fact]
    public void AnySampleIsComparedWithAnyOther()
    {
        Plan[] plans = [.. SamplePlans.Names.Select(SamplePlans.Of)];
        foreach (Plan one in plans)
            foreach (Plan other in plans)
                Assert.NotEmpty(RevisionPaper.Of(one, other, Choice()).Sheets);
    }

    [Fact]
    public void APlanWithErrorsHasNoPapers()
    {
        Job job = SamplePlans.Job("level-yard.json");
        foreach (Job wrong in (Job[])[job with { Specs = [] }, job with { Lines = [], Gates = [] }])
        {
            Plan plan = SamplePlans.Of(wrong);
            Assert.True(plan.HasErrors);
            foreach (PaperKind kind in Enum.GetValues<PaperKind>()) Assert.Throws<ArgumentException>(() => PaperMaker.Of(kind, plan, Choice()));
        }
    }
}
