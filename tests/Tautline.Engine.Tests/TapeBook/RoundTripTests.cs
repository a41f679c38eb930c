using System.Globalization;
using System.Text.Json;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>What was written reads back to the same plan.</summary>
public sealed class RoundTripTests
{
    /// <summary>Walks as people type them: sixty-fourths, minutes of turn.</summary>
    private static readonly Gen<string> genWalk =
        Gen.Select(Gen.Long[12 * 64, 4000 * 64], Gen.Int[-179 * 60, 179 * 60], Gen.Int[-40, 40]).Array[1, 30].Select(legs => string.Join('\n', legs.Select(
            (l, i) => $"{(i == 0 ? "" : Turn(l.Item2))}leg {TapeInches(l.Item1)}{Grade(l.Item3)}")));

    private static readonly string[] words =
    [
        "leg ", "R ", "L ", "90", "100'", "6\"", " ", "\n", "\n", "\n", "close", "gate ", "walk ", "from ", "spec ", "a ", "height ", "line ", "\"", "#", "up ",
        "12%", "1:8", "bearing ", "N 5 E", "measured along", "to ", "east ", "north ", "no-dig ", "ten pickets ", "as specified ", "bay.max ", "\0", "within ",
        "arc ", "right ", "radius ", "turn ", "length ", "tie ", "fence ", "section ", "slab ", "bracketed ", "swale ", "depth ", "wall ", "width ", "pin ", "removal ", "posts ", "7",
        "cantilever ", "rolling ", "run-back ", "end ", "post ", "leaf ", "850 lb", "keeps ", "fabric ", "temporary ", "panel ", "barb ", "slats ", "laced ", "screen ",
        "start ", "facing ", "-", "1/0", "9e9", "°", "centred at ", "{0}",
    ];

    private static readonly Gen<string> genWord = Gen.Int[0, words.Length - 1].Select(i => words[i]);

    [Fact]
    public void JobDrawnAnyhowPlansToTheSameLegs()
        => GenJob.Any.Always(job => Same(job, UnitSystem.UsCustomary) && Same(job, UnitSystem.Metric), iter: 300);

    [Fact]
    public void WalkedSixtyFourthsStayExact() => genWalk.Always(
        walk =>
        {
            var job = Books.Job("spec fence height 6' brace no\nmeasured level\nfacing N 12°34' W\n" + walk);
            var again = Books.Job(TapeBookWriter.Write(job, UnitSystem.UsCustomary).Text);
            Assert.Equal(Books.Legs(job).Select(l => l.LevelNm), Books.Legs(again).Select(l => l.LevelNm));
        },
        iter: 300);

    /// <summary>Straight legs and arcs in turn, each arc turning up to 150 degrees.</summary>
    private static readonly Gen<string> genBends = Gen.Select(Gen.Long[6 * 768, 400 * 768], Gen.Int[1, 150 * 60], Gen.Bool, Gen.Int[-20, 20]).Array[1, 12]
        .Select(arcs => string.Join('\n', arcs.Select(a =>
            $"leg 20'\narc {(a.Item3 ? "right" : "left")} radius {TapeInches(a.Item1 + 768 * 4000 / a.Item2)} turn {a.Item2 / 60}°{a.Item2 % 60:00}'{Grade(a.Item4)}")));

    [Fact]
    public void ArcsComeBackAsLongAsTheyWere() => genBends.Always(
        walk =>
        {
            var job = Books.Job("spec fence height 6' brace no\nmeasured level\nfacing N 12°34' W\n" + walk);
            var arcs = job.Lines[0].Vertices.Select(v => v.Leg?.Curve).OfType<LegCurve>().Select(c => (c.Radius.Nanometres, c.Bends));
            var again = Books.Job(TapeBookWriter.Write(job, UnitSystem.UsCustomary).Text);
            Assert.Equal(arcs, again.Lines[0].Vertices.Select(v => v.Leg?.Curve).OfType<LegCurve>().Select(c => (c.Radius.Nanometres, c.Bends)));
            return Same(job, UnitSystem.UsCustomary) && Same(job, UnitSystem.Metric);
        },
        iter: 200);

    [Fact]
    public void WholeBookReadsBackToTheSameJob() => GenBook.Any.Always(book => Whole(book, UnitSystem.UsCustomary) && Whole(book, UnitSystem.Metric), iter: 300);

    /// <summary>Everything of the job but the last bits of its points; a book sets the stretches of a leg in their order on the ground.</summary>
    private static bool Whole(string book, UnitSystem units)
    {
        var job = Books.Job(book) with { Units = units };
        var written = TapeBookWriter.Write(job, units);
        Assert.Empty(written.Problems);
        var again = Books.Job(written.Text);
        foreach (var (a, b) in job.Lines.SelectMany(l => l.Vertices).Zip(again.Lines.SelectMany(l => l.Vertices)))
        {
            Assert.Equal(a.East.Metres, b.East.Metres, 2e-8);
            Assert.Equal(a.North.Metres, b.North.Metres, 2e-8);
        }
        Assert.Equal(Text(AtNoPoints(job)), Text(AtNoPoints(again)));
        Assert.Equal(written.Text, TapeBookWriter.Write(again, units).Text);
        return true;
    }

    private static Job AtNoPoints(Job job) => job with
    {
        Obstacles = [.. job.Obstacles.OrderBy(o => o.Id.Value, StringComparer.Ordinal)],
        Works = [.. job.Works.OrderBy(w => w.Id.Value, StringComparer.Ordinal)],
        Lines = [.. job.Lines.Select(l => l with { Vertices = [.. l.Vertices.Select(v => v with { East = Length.Zero, North = Length.Zero })] })],
    };

    private static string Text(Job job) => System.Text.Encoding.UTF8.GetString(JobFile.Write(job));

    [Fact]
    public void AnyTextIsReadWithoutAnException()
        => Gen.OneOf(Gen.String, genWord.Array[0, 40].Select(w => string.Concat(w))).Always(
            text => TapeBookReader.Read(text) is { } reading && (reading.Job is null) == reading.HasErrors, iter: 3000);

    /// <summary>The notation promises 1/64 in, 396,875 nm; a written leg ends within 10 nm of its vertex.</summary>
    private static bool Same(Job job, UnitSystem units)
    {
        var written = TapeBookWriter.Write(job, units);
        Assert.DoesNotContain(written.Problems, p => p.Severity == Severity.Error);
        var again = Books.Job(written.Text);
        var (first, second) = (Books.Legs(job), Books.Legs(again));
        Assert.Equal(first.Count, second.Count);
        foreach (var (a, b) in first.Zip(second))
        {
            Assert.InRange(Math.Abs(a.LevelNm - b.LevelNm), 0, 100); // far inside 1/64 in
            Assert.InRange(Math.Abs(a.AlongNm - b.AlongNm), 0, 150);
            Assert.Equal(a.Grade, b.Grade, 1e-12);
        }
        Assert.Equal(job.Gates.Select(g => (g.Kind, g.NearFace.Nanometres, g.Opening.Nanometres)), again.Gates.Select(g => (g.Kind, g.NearFace.Nanometres, g.Opening.Nanometres)));
        Assert.Equal(job.Obstacles.Select(o => (o.From.Nanometres, o.To.Nanometres)), again.Obstacles.Select(o => (o.From.Nanometres, o.To.Nanometres)));
        return true;
    }

    [Fact]
    public void YardIsWrittenAsAPersonWouldTypeIt()
        => Assert.Equal(
            """
            job "test"
            units us
            spec "fence" height 6' gauge 9 line-post 2.375-sch40 terminal-post 2.875-sch40 rail 1.660-sch40 top rail bottom wire brace no
            ten pickets 14" of "fence"

            line "yard"
            leg 60'
            gate walk 4' from 20'
            R 90
            leg 90'
            R 90
            leg 60'
            gate double 16' from 30'
            R 90
            leg 90'
            close

            """.ReplaceLineEndings("\n"),
            TapeBookWriter.Write(Some.Yard(), UnitSystem.UsCustomary).Text);

    [Fact]
    public void ReadingAndWritingComesToRest()
        => genWalk.Always(
            walk =>
            {
                var once = TapeBookWriter.Write(Books.Job("spec fence height 6' brace no\nmeasured along\n" + walk), UnitSystem.UsCustomary).Text;
                Assert.Equal(once, TapeBookWriter.Write(Books.Job(once), UnitSystem.UsCustomary).Text);
            },
            iter: 100);

    [Fact]
    public void WhatTheNotationCannotSayIsTold()
    {
        var job = Some.Yard();
        job = job with
        {
            Name = "the \"old\" yard",
            RuleSet = "county",
            Coordinates = new CoordinateFrame { System = "EPSG:2272" },
            Gates = [.. job.Gates, Some.Gate("lift", "yard/leg2", "lifting", 20, 12), Some.Gate("side", "yard/leg4", "walk", 20, 4) with { RunsBack = "end" }],
            Extra = new Dictionary<string, JsonElement> { ["weather"] = JsonDocument.Parse("1").RootElement },
            Lines = [job.Lines[0], Some.Line("south", false, [(0, -50), (60, -50)], spec: "fence") with { Order = new("z") }],
        };
        var written = TapeBookWriter.Write(job, UnitSystem.UsCustomary);
        Assert.Equal(
            ["name-changed", "not-written", "not-written", "not-written", "not-written"], written.Problems.Select(p => p.Code));
        Assert.Equal(
            [
                "A tape book cannot say: the gate 'lift' of kind 'lifting'.",
                "A tape book cannot say: the coordinate frame 'EPSG:2272'.", "A tape book cannot say: the run-back of the walk gate 'side'.",
                "A tape book cannot say: the field 'weather' of the job.",
            ],
            written.Problems.Skip(1).Select(p => p.Message));
        var remarks = written.Text.Split('\n');
        Assert.All(written.Problems, p => Assert.Equal($"# {p.Message} {p.Hint}", remarks[p.Line - 1]));
        Assert.Equal(["yard", "south"], Books.Job(written.Text).Lines.Select(l => l.Name));
        Assert.Equal("county", Books.Job(written.Text).RuleSet);
    }

    /// <summary>The project runs without culture data, so marks that could do harm are set by hand.</summary>
    [Fact]
    public void CultureChangesNothing()
    {
        const string book = "as specified bay.max 8.5'\nspec fence height 6' mesh 1.75\" gauge 9\nline LINE\nmeasured along\nleg 132.54' up 12.5%\nR 7.25\nLEG 40.4 m";
        var (job, text) = (JobFile.Write(Books.Job(book)), TapeBookWriter.Write(Books.Job(book), UnitSystem.Metric).Text);
        var before = CultureInfo.CurrentCulture;
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator, culture.NumberFormat.NegativeSign) = (",", ".", "\u2212");
        try
        {
            CultureInfo.CurrentCulture = culture;
            Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(job, JobFile.Write(Books.Job(book)));
            Assert.Equal(text, TapeBookWriter.Write(Books.Job(book), UnitSystem.Metric).Text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string TapeInches(long parts) => string.Create(CultureInfo.InvariantCulture, $"{parts / 768}' {parts % 768 / 64} {parts % 64}/64\"");

    private static string Grade(int percent) => percent == 0 ? "" : percent > 0 ? $" up {percent}%" : $" down {-percent}%";

    private static string Turn(int minutes)
        => minutes == 0 ? "" : $"{(minutes > 0 ? "R" : "L")} {Math.Abs(minutes) / 60}°{Math.Abs(minutes) % 60:00}'\n";
}
