using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;

namespace Tautline.Engine.Tests.TapeBook;

/// <summary>Good statements and the jobs they give; every expected value is typed.</summary>
public sealed class StatementTests
{
    /// <summary>Points in feet, worked on squared paper.</summary>
    public static TheoryData<string, double[]> Walks => new()
    {
        { "leg 100'", [0, 0, 0, 100] },
        { "leg 30' \n R 90 \n leg 40'", [0, 0, 0, 30, 40, 30] },
        { "leg 30' \n L 90 \n leg 40'", [0, 0, 0, 30, -40, 30] },
        { "LEG 30' \n right 90° \n Leg 40 FT", [0, 0, 0, 30, 40, 30] },
        { "facing due E \n leg 10' \n R 90 \n leg 10'", [0, 0, 10, 0, 10, -10] },
        { "start 5' west 7' 6\" south \n leg 10'", [-5, -7.5, -5, 2.5] },
        { "leg 10' bearing S 90 W \n leg 10'", [0, 0, -10, 0, -20, 0] },
        { "leg 10' bearing due W \n R 90 \n leg 10'", [0, 0, -10, 0, -10, 10] },
        { "leg to 30' east 40' north \n leg 50'", [0, 0, 30, 40, 60, 80] },
        { "leg to 30' west 40' south \n L 90 \n leg 50'", [0, 0, -30, -40, 10, -70] },
        { "leg 40' \n arc right radius 30' turn 90° \n leg 20'", [0, 0, 0, 40, 30, 70, 50, 70] },
        { "arc left radius 30' turn 90", [0, 0, -30, 30] },
        { "arc right radius 30' length 47.123889804'", [0, 0, 30, 30] }, // 15 pi ft
        { "arc right radius 30' to 30' east 30' north \n leg 10'", [0, 0, 30, 30, 40, 30] },
        { "leg 10' \n R 90 \n arc left radius 20' turn 90 deg \n leg 5'", [0, 0, 0, 10, 20, 30, 20, 35] },
        { "arc right radius 30' turn 90 bearing due E", [0, 0, 30, -30] },
        { "leg 132-6.5", [0, 0, 0, 132.541667] },
        { "leg 132' 6 1/2\"   # by wheel", [0, 0, 0, 132.541667] },
        { "leg 132\u2019 6 1/2\u201D", [0, 0, 0, 132.541667] },
        { "leg 30.48 m", [0, 0, 0, 100] },
        { "leg 10'\r\n\r\nR 90\r\nleg 20'\r\n", [0, 0, 0, 10, 20, 10] },
    };

    [Theory, MemberData(nameof(Walks))]
    public void WalkLeadsToThesePoints(string walk, double[] expected)
    {
        var points = Books.Points(Books.Job(Books.Spec + walk));
        Assert.Equal(expected, points.SelectMany(p => new[] { p.East, p.North }));
    }

    [Fact]
    public void SpecHoldsEveryClause()
    {
        var job = Books.Clean("""
            spec "park side" height 8' mesh 1 3/4" gauge 6 selvage tt line-post 2.375-sch40 terminal-post 2.875-sch40 rail 1.660-sch40 top wire bottom none brace yes roll 25'
            leg 50'
            """);
        Assert.Equal(
            new Spec
            {
                Id = new("spec/park-side"),
                Name = "park side",
                Height = Length.FromFeet(8),
                Mesh = Length.FromInches(1.75),
                Gauge = "6",
                Selvage = "TT",
                LinePost = "2.375-sch40",
                TerminalPost = "2.875-sch40",
                RailSection = "1.660-sch40",
                Top = "wire",
                Bottom = "none",
                Brace = "yes",
                Roll = Length.FromFeet(25),
            },
            Assert.Single(job.Specs));
    }

    [Fact]
    public void SpecHoldsWhatDressesAndHoldsTheFence()
    {
        var job = Books.Clean("""
            spec works height 8' selvage TK middle rail bottom rail laced 2 line-support driven terminal-support plated barb 6 both height-is overall coating polymer color olive-green slats 37.5 lock top screen 6' screen-roll 25' concertina 20' ties 18"
            leg 50'
            """);
        Assert.Equal(
            new Spec
            {
                Id = new("spec/works"),
                Name = "works",
                Height = Length.FromFeet(8),
                Selvage = "TK",
                Middle = "rail",
                Bottom = "rail",
                Laced = 2,
                LineSupport = "driven",
                TerminalSupport = "plated",
                Barb = new() { Strands = 6, Lean = "both", HeightIs = "overall" },
                Coating = "polymer",
                Colour = "olive-green",
                Slats = new() { PerTenFeet = 37.5, Lock = "top" },
                Screen = new() { Height = Length.FromFeet(6), Roll = Length.FromFeet(25) },
                Concertina = new() { Covers = Length.FromFeet(20), TieSpacing = Length.FromInches(18) },
            },
            Assert.Single(job.Specs));
    }

    /// <summary>850 lb are 385.5535145 kg.</summary>
    [Fact]
    public void GateThatSlidesHasItsRunBackPostWeightAndClearance()
    {
        var job = Books.Clean(Books.Spec + """
            line a
            leg 300'
            gate cantilever 20' from 40' run-back start
            gate rolling 24' from 90' post 4.000-sch40 run-back end leaf 850 lb
            gate overhead 24' centred at 220' run-back end post "6.625-sch40" leaf 390.5kg clearance 15' 6"
            gate walk 4' from 280' post 2.875-sch40
            """);
        Assert.Equal(
            [
                ("a/gate1", "cantilever", 40, "start", null, null, null), ("a/gate2", "rolling", 90, "end", "4.000-sch40", 385.5535145, null),
                ("a/gate3", "overhead", 208, "end", "6.625-sch40", 390.5, 15.5), ("a/gate4", "walk", 280, null, "2.875-sch40", null, null),
            ],
            job.Gates.Select(g => (g.Id.Value, g.Kind, F(g.NearFace), g.RunsBack, g.Post, g.LeafMass is { } m ? Math.Round(m, 9) : (double?)null, g.Clearance is { } c ? F(c) : (double?)null)));
    }

    [Fact]
    public void ObstacleHoldsItsKindAndWhatItStates()
    {
        var job = Books.Clean(Books.Spec + """
            line a
            leg 300'
            slab 18' to 42' plated clear 6"
            rock 45' to 55' cored
            wall 60' to 80' width 12" plated "dock edge"
            tree 90' to 92' clear 1'
            wet 100' to 110'
            swale 120' to 126' depth 18"
            culvert 140' to 144' depth 2' clear 1' "24-in pipe"
            wet 200' to 210' cored
            wall 220' to 230' bracketed width 9" depth 18"
            wall 240' to 250' bracketed
            """);
        Assert.Equal(
            [
                ("a/slab1", "slab", 18, 42, "plated", null, null, 0.5, ""), ("a/rock1", "rock", 45, 55, "cored", null, null, 0, ""),
                ("a/wall1", "wall", 60, 80, "plated", 1, null, 0, "dock edge"), ("a/tree1", "tree", 90, 92, null, null, null, 1, ""),
                ("a/wet1", "wet", 100, 110, null, null, null, 0, ""), ("a/swale1", "swale", 120, 126, null, null, 1.5, 0, ""),
                ("a/culvert1", "culvert", 140, 144, null, null, 2, 1, "24-in pipe"), ("a/wet2", "wet", 200, 210, "cored", null, null, 0, ""),
                ("a/wall2", "wall", 220, 230, "bracketed", 0.75, 1.5, 0, ""), ("a/wall3", "wall", 240, 250, "bracketed", null, null, 0, ""),
            ],
            job.Obstacles.Select(o => (o.Id.Value, o.Kind, F(o.From), F(o.To), o.Support, N(o.Width), N(o.Depth), F(o.Clearance), o.Note)));
    }

    [Fact]
    public void LineHoldsItsTiesItsFabricAndWhatARepairKeeps()
    {
        var line = Books.Clean(Books.Spec + "line a\ntie start to wall\nkeeps line-posts wire\nleg 50'\ntie finish to fence section 2.375-sch40 woven\nfabric left").Lines[0];
        Assert.Equal(new TieIn { Kind = "wall" }, line.Start);
        Assert.Equal(new TieIn { Kind = "fence", Section = "2.375-sch40", Fabric = "woven" }, line.Finish);
        Assert.Equal("left", line.FabricSide);
        Assert.Equal(["line-posts", "wire"], line.Keeps);
    }

    /// <summary>On 3-4-5 ground 50 ft along are 40 ft level.</summary>
    [Fact]
    public void PinsAndWorkAreMeasuredAsTheirLegWas()
    {
        var job = Books.Clean(Books.Spec + """
            line a
            measured along
            leg 100' up 3:4
            pin 50' stands
            pin 25'
            removal 0' to 50' posts 7 cut "old chain link"
            clearing 50' to 75' width 4'
            removal 75' to 100'
            """);
        Assert.Equal([("a/pin1", 40, true), ("a/pin2", 20, false)], job.Pins.Select(p => (p.Id.Value, F(p.At), p.Stands)));
        Assert.Equal(
            [
                ("a/removal1", 0, 40, 7, "cut", null, "old chain link"), ("a/clearing1", 40, 60, null, null, 4, ""),
                ("a/removal2", 60, 80, (int?)null, null, (double?)null, ""),
            ],
            job.Works.Select(w => (w.Id.Value, F(w.From), F(w.To), w.Posts, w.PostsOut, N(w.Width), w.Note)));
    }

    [Fact]
    public void TemporaryFenceIsHeld()
    {
        var job = Books.Clean(Books.Spec + "temporary 300' panel 12' closed \"site front\"\ntemporary 40 m\nleg 20'");
        Assert.Equal(
            [("temporary/site-front", "site front", 300, 12, true), ("temporary/fence", "", 131.233595801, (double?)null, false)],
            job.Temporary.Select(t => (t.Id.Value, t.Name, F(t.Length), N(t.Panel), t.Closed)));
    }

    [Fact]
    public void SlopingArcMeasuredAlongTheGroundIsShorterInPlan()
    {
        var job = Books.Clean(Books.Spec + "measured along\narc right radius 40' length 50' up 3:4\nno-dig 10' to 15'");
        Assert.Equal((12_192_000_000, 15_240_000_000), Books.Legs(job) is [var leg] ? (leg.LevelNm, leg.AlongNm) : default);
        Assert.Equal((40, "right"), (F(job.Lines[0].Vertices[0].Leg!.Curve!.Radius), job.Lines[0].Vertices[0].Leg!.Curve!.Bends));
        Assert.Equal((8, 12), (F(job.Obstacles[0].From), F(job.Obstacles[0].To)));
    }

    [Fact]
    public void HeadIsHeld()
    {
        var job = Books.Clean("""
            job "Back yard"
            units metric
            as specified bay.max 8' "drawing C-3"
            as specified terminal.turn 10 deg
            as specified terminal.gradeChange 12%
            as specified hole.timesPost 3
            as specified bag.yield 0.6 ft3
            spec fence height 6'
            ten pickets 14"
            leg 50 m
            """);
        Assert.Equal(("job/back-yard", "Back yard", UnitSystem.Metric), (job.Id.Value, job.Name, job.Units));
        Assert.Equal(
            [("bay.max", 2.4384, "drawing C-3"), ("terminal.turn", 10, ""), ("terminal.gradeChange", 0.12, ""), ("hole.timesPost", 3, ""), ("bag.yield", 0.0169901, "")],
            job.AsSpecified.Select(o => (o.Rule, Math.Round(o.Value, 7), o.Source)));
        Assert.Equal(("spec/fence", 0.3556), (job.Calibrations[0].Spec.Value, Math.Round(job.Calibrations[0].TenPickets.Metres, 9)));
    }

    [Fact]
    public void GateIsMeasuredFromTheStartOfTheLegAboveIt()
    {
        var job = Books.Clean(Books.Spec + """
            line north
            leg 60'
            gate walk 4' from 20'
            R 90
            leg 100'
            gate double 16' centred at 38'
            gate walk 42" centered at 60'
            """);
        Assert.Equal(
            [("north/gate1", "north/leg1", "walk", 20, 4), ("north/gate2", "north/leg2", "double", 30, 16), ("north/gate3", "north/leg2", "walk", 58.25, 3.5)],
            job.Gates.Select(g => (g.Id.Value, g.Leg.Value, g.Kind, Math.Round(g.NearFace.Feet, 9), Math.Round(g.Opening.Feet, 9))));
    }

    [Fact]
    public void NoDigStretchIsHeldWithItsClearanceAndNote()
    {
        var job = Books.Clean(Books.Spec + "line north\nleg 60'\nno-dig 31' to 33' 6\" clear 2' \"gas # line\"\nno-dig 40' to 41'");
        Assert.Equal(
            [("north/no-dig1", "north/leg1", "no-dig", 31, 33.5, 2, "gas # line"), ("north/no-dig2", "north/leg1", "no-dig", 40, 41, 0, "")],
            job.Obstacles.Select(o => (o.Id.Value, o.Leg.Value, o.Kind, F(o.From), F(o.To), F(o.Clearance), o.Note)));
    }

    /// <summary>A 3-4-5 triangle: 75 % rises 3 in 4, so 50 ft along the ground are 40 ft level.</summary>
    [Fact]
    public void SlopingLegMeasuredAlongTheGroundIsShorterInPlan()
    {
        var job = Books.Clean(Books.Spec + "measured along\nleg 50' up 3:4\ngate walk 4' from 25'\nno-dig 10' to 15'\nleg 50' down 75%\nleg 50'");
        Assert.Equal([0, 40, 80, 130], job.Lines[0].Vertices.Select(v => F(v.North)));
        Assert.Equal([0.75, -0.75, 0], job.Lines[0].Vertices.SkipLast(1).Select(v => v.Leg!.Grade.Ratio));
        Assert.Equal((20, 4), (F(job.Gates[0].NearFace), F(job.Gates[0].Opening)));
        Assert.Equal((8, 12), (F(job.Obstacles[0].From), F(job.Obstacles[0].To)));
    }

    [Fact]
    public void SlopingLegMeasuredLevelIsAsLongInPlan()
    {
        var job = Books.Clean(Books.Spec + "leg 10'\nmeasured level\nleg 50' up 3:4\nleg 50' bearing due E down 7 deg");
        Assert.Equal([0, 10, 60, 60], job.Lines[0].Vertices.Select(v => F(v.North)));
        Assert.Equal(-0.122784561, Math.Round(job.Lines[0].Vertices[2].Leg!.Grade.Ratio, 9)); // tan 7 deg, table
    }

    [Fact]
    public void HeightMakesASpecOfItsOwnFromTheNextLegOn()
    {
        var job = Books.Clean("spec fence height 6' gauge 11 brace no\nleg 20'\nheight 4'\nleg 20'\nheight 6'\nleg 20'\nheight 4'\nleg 20'");
        Assert.Equal([("spec/fence", 6, "11"), ("spec/fence-4", 4, "11")], job.Specs.Select(s => (s.Id.Value, F(s.Height), s.Gauge)));
        Assert.Equal("spec/fence", job.Lines[0].Spec.Value);
        Assert.Equal([null, "spec/fence-4", null, "spec/fence-4"], job.Lines[0].Vertices.SkipLast(1).Select(v => v.Leg!.Spec?.Value));
    }

    [Fact]
    public void SpecChangesFromTheNextLegOn()
    {
        var job = Books.Clean("spec yard height 6' brace no\nspec park height 4' gauge 11\nline a\nspec park\nleg 20'\nspec yard\nleg 20'");
        Assert.Equal("spec/park", job.Lines[0].Spec.Value);
        Assert.Equal([null, "spec/yard"], job.Lines[0].Vertices.SkipLast(1).Select(v => v.Leg!.Spec?.Value));
    }

    [Fact]
    public void SeveralLinesHaveIdsFromTheirNames()
    {
        var job = Books.Clean("job north\n" + Books.Spec + "line \"North side\"\nleg 20'\nline north-side\nstart 50' east 0' north\nleg 20'\nline spec\nstart 90' east 0' north\nleg 20'\nline\nstart 120' east 0' north\nleg 9'");
        Assert.Equal(["north-side", "north-side-2", "spec-2", "line-4"], job.Lines.Select(l => l.Id.Value));
        Assert.Equal(["north-side/v1", "north-side/v2"], job.Lines[0].Vertices.Select(v => v.Id.Value));
        Assert.False(Some.Plan(job).HasErrors);
        Assert.Equal(["North side", "north-side", "spec", "line 4"], Some.Plan(job).Lines.Select(l => l.Name));
    }

    [Fact]
    public void SameBookGivesTheSameJobFile()
    {
        const string book = "spec fence height 6' brace no\nleg 100' bearing N 37 E\nR 12.5\nleg 20'";
        Assert.Equal(JobFile.Write(Books.Job(book)), JobFile.Write(Books.Job("\uFEFF" + book.Replace("\n", "\r\n", StringComparison.Ordinal))));
    }

    private static double? N(Length? length) => length is { } value ? F(value) : null;

    private static double F(Length length) => Math.Round(length.Feet, 9);
}
