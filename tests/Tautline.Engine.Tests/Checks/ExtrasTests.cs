using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Tests.Checks;

/// <summary>The hand counts of docs/checks/extras.md.</summary>
public sealed partial class ExtrasTests
{
    private static Length Feet(double feet) => Length.FromFeet(feet);

    private static Job Hundred => Some.StraightHundred();

    private static Job With(Func<Spec, Spec> change) => Hundred with { Specs = [change(Some.Spec())] };

    private static Job With(params Obstacle[] obstacles) => Hundred with { Obstacles = obstacles };

    private static Obstacle Stretch(string kind, double from, double to, double? width = null, double? depth = null) => new()
    {
        Id = new(kind),
        Leg = new("main/leg1"),
        Kind = kind,
        From = Feet(from),
        To = Feet(to),
        Width = width is { } w ? Length.FromInches(w) : null,
        Depth = depth is { } d ? Feet(d) : null,
    };

    private static SiteWork Work(string id, string kind, double from, double to) => new()
    {
        Id = new(id),
        Leg = new("main/leg1"),
        Kind = kind,
        From = Feet(from),
        To = Feet(to),
    };

    private static double Inches(Length length) => Math.Round(length.Inches, 6);

    private static double Net(Plan plan, string part) => plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Net);

    private static int Buy(Plan plan, string part) => plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Purchase);

    [Fact]
    public void OldFenceComesOutWithItsPostsAndTheirConcrete()
    {
        var plan = Some.Plan(Hundred with
        {
            Works = [Work("old", "removal", 10, 90), Work("stub", "removal", 0, 10) with { Posts = 5, PostsOut = "cut" }],
        });
        Assert.Equal(90, new Length(Net(plan, "old-fence")).Feet, 6);
        Assert.Equal((9, 5), (Net(plan, "old-post"), Net(plan, "old-post-cut")));
        Assert.Equal(13.5, new Volume(Net(plan, "old-concrete")).CubicFeet, 6);
        Assert.Equal((1, 0), (Buy(plan, "old-concrete"), Buy(plan, "old-fence")));
    }

    [Fact]
    public void ClearingIsAnArea()
    {
        var plan = Some.Plan(Hundred with { Works = [Work("brush", "clearing", 0, 100) with { Width = Feet(6) }] });
        Assert.Equal(600, new Area(Net(plan, "clearing")).SquareFeet, 6);
    }

    [Theory]
    [InlineData(150, null, false, 13, 14, 24, 28)]
    [InlineData(96, 10.0, true, 10, 10, 20, 20)]
    public void TemporaryFenceIsPanelsOnStands(double length, double? panel, bool closed, int panels, int stands, int clamps, int bags)
    {
        var plan = Some.Plan(Hundred with
        {
            Temporary = [new() { Id = new("shut"), Length = Feet(length), Panel = panel is { } p ? Feet(p) : null, Closed = closed }],
        });
        Assert.Equal(
            (panels, stands, clamps, bags),
            (Buy(plan, "temporary-panel"), Buy(plan, "temporary-stand"), Buy(plan, "temporary-clamp"), Buy(plan, "ballast")));
    }

    [Fact]
    public void ASwaleAndACulvertAreClosedAndTakeNoPost()
    {
        var plan = Some.Plan(With(Stretch("swale", 30, 50, depth: 3), Stretch("culvert", 70, 74, depth: 2)));
        Assert.Equal(48, new Area(Net(plan, "closure")).SquareFeet, 6);
        Assert.DoesNotContain(plan.Lines[0].Posts, p => p.Station.Feet is (> 30 and < 50) or (> 70 and < 74));
        Assert.Single(plan.Problems, p => p.Code == ProblemCode.BayTooLong);
    }

    [Theory]
    [InlineData(12, false)]
    [InlineData(8, true)]
    public void PostsOnAWallTakePlatesAndKeepTheirDistanceFromItsEdges(double width, bool told)
    {
        var plan = Some.Plan(With(Stretch("wall", 0, 100, width)));
        Assert.Equal((11, 44, 0), (Buy(plan, "base-plate"), Buy(plan, "anchor"), Buy(plan, "concrete-bag")));
        Assert.Equal(told, plan.Problems.Any(p => p.Code == ProblemCode.WallEdge));
        if (told)
            Assert.Equal(
                "The wall is 8\" thick and posts on it need 10 7/8\".",
                ProblemText.Message(plan.Problems.First(p => p.Code == ProblemCode.WallEdge), UnitSystem.UsCustomary));
    }

    [Fact]
    public void AWallWithoutATerminalOnItMayBeThinner()
    {
        bool Told(double from, double to) => Some.Plan(With(Stretch("wall", from, to, 10.5))).Problems.Any(p => p.Code == ProblemCode.WallEdge);
        Assert.False(Told(10, 90));
        Assert.True(Told(0, 90));
        Assert.True(Told(10, 100));
    }

    [Fact]
    public void PostsOfAnOverheadGateReachItsBeam()
    {
        var gate = Some.Gate("lift", "main/leg1", "overhead", 30, 20) with { RunsBack = "end", Post = "4.000-sch40", LeafMass = 300, Clearance = Feet(14) };
        var plan = Some.Plan(Hundred with { Gates = [gate] });
        Assert.Equal([16.5, 16.5], plan.Lines[0].Posts.Where(p => p.Kind == PostKind.Gate).Select(p => Math.Round(p.CutLength.Feet, 9)));
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.GateBeam);
        Assert.DoesNotContain(plan.Problems, p => p.Code is ProblemCode.GateClearanceQuestion or ProblemCode.GateWeightQuestion);
    }

    [Fact]
    public void SlatsScreenAndConcertinaAreCountedWithTheirTies()
    {
        var plan = Some.Plan(With(s => s with
        {
            Slats = new() { PerTenFeet = 35, Lock = "bottom" },
            Screen = new() { Height = Length.FromInches(68) },
            Concertina = new() { Covers = Feet(15), TieSpacing = Feet(5) },
        }));
        Assert.Equal((349, 2, 202, 7, 21), (Buy(plan, "slat"), Buy(plan, "screen"), Buy(plan, "screen-tie"), Buy(plan, "concertina"), Buy(plan, "concertina-tie")));
        Assert.Equal(99.594, new Length(Net(plan, "slat-lock")).Feet, 3);
        Assert.Contains(plan.Problems, p => p.Code == ProblemCode.ScreenWind);
    }

    [Fact]
    public void AColourGoesThroughAllPartsThatShow()
    {
        var plan = Some.Plan(With(s => s with { Colour = "black" }));
        string[] bare = ["concrete-bag", "spoil"];
        Assert.All(plan.Takeoff, t => Assert.Equal(bare.Contains(t.Part) ? null : "black", t.Finish));
        Assert.Contains("fabric", plan.Takeoff.Where(t => t.Finish == "black").Select(t => t.Part));
    }

    [Fact]
    public void SmallPartsComeWithSpares()
    {
        var ties = Assert.Single(Some.Plan(Hundred).Takeoff, t => t.Part == "post-tie");
        Assert.Equal((54, 54, 3), (ties.Net, ties.Purchase, ties.Spare!.Value));
        Assert.Null(Some.Plan(Hundred).Takeoff.First(t => t.Part == "fabric").Spare);
    }

    [Fact]
    public void OverBreakFillsMoreBagsInEveryHole()
    {
        Assert.Equal(35, Buy(Some.Plan(Hundred), "concrete-bag"));
        Assert.Equal(46, Buy(Some.Plan(Hundred with { AsSpecified = [new() { Rule = "concrete.overBreak", Value = 0.5 }] }), "concrete-bag"));
    }

    [Fact]
    public void ARepairBuysOnlyWhatIsNew()
    {
        var standing = new TieIn { Kind = TieIn.Fence, Section = "2.375-sch40" };
        var line = Some.Line("main", false, [(0, 0), (0, 40)]) with
        {
            Start = standing with { Fabric = "woven" },
            Finish = standing,
            Keeps = ["line-posts", "rail", "wire"],
        };
        Pin Pin(double at) => new() { Id = new($"p{at}"), Leg = new("main/leg1"), At = Feet(at), Stands = true };
        var plan = Some.Plan(Some.Job(line) with { Calibrations = [Some.Calibration()], Pins = [Pin(10), Pin(20), Pin(30)] });
        Assert.Equal(475.625, new Length(Net(plan, "fabric")).Inches, 6);
        var bought = plan.Takeoff.ToDictionary(t => t.Part, t => t.Purchase);
        Dictionary<string, int> right = new()
        {
            ["fabric"] = 1,
            ["splice-picket"] = 1,
            ["tension-bar"] = 1,
            ["tension-band"] = 6,
            ["carriage-bolt"] = 6,
            ["post-tie"] = 18,
            ["rail-tie"] = 21,
            ["ring"] = 21,
        };
        Assert.Equal(right.OrderBy(p => p.Key), bought.OrderBy(p => p.Key));
    }

    [Fact]
    public void ARollingGateRollsOnATrack()
    {
        var gate = Some.Gate("roll", "main/leg1", "rolling", 30, 20) with { Post = "4.000-sch40", LeafMass = 300, RunsBack = "end" };
        var plan = Some.Plan(Hundred with { Gates = [gate] });
        var planned = Assert.Single(plan.Lines[0].Gates);
        Assert.Equal((22, 42), (planned.Leaf.Feet, planned.Track!.Value.Feet));
        Assert.Equal((1, 2, 2, 1, 1), (Buy(plan, "rolling-leaf"), Buy(plan, "gate-wheel"), Buy(plan, "guide-roller"), Buy(plan, "slide-latch"), Buy(plan, "slide-stop")));
        Assert.Equal(300, Assert.Single(plan.Takeoff, t => t.Part == "rolling-leaf").Mass!.Value.Kilograms);
        Assert.Equal(2, plan.Takeoff.Where(t => t.Part == "post" && t.Section == "4.000-sch40").Sum(t => t.Purchase));
    }

    [Fact]
    public void AnOverheadGateAsksForItsWeightAndWillNotGuessItsPosts()
    {
        var gate = Some.Gate("lift", "main/leg1", "overhead", 30, 20) with { RunsBack = "end" };
        Assert.Contains(Some.Plan(Hundred with { Gates = [gate] }).Problems, p => p.Code == ProblemCode.GatePostUnnamed);
        var named = Some.Plan(Hundred with { Gates = [gate with { Post = "4.000-sch40" }] });
        Assert.Contains(named.Problems, p => p.Code == ProblemCode.GateWeightQuestion);
        Assert.Contains(named.Problems, p => p.Code == ProblemCode.GateClearanceQuestion);
        Assert.Equal((1, 1, 2), (Buy(named, "overhead-leaf"), Buy(named, "gate-beam"), Buy(named, "trolley")));
    }

    [Fact]
    public void RollFormedPostsTakeNoBarAndFullHoles()
    {
        var plan = Some.Plan(With(s => s with { LinePost = "c-2.25x1.70", TerminalPost = "corner-3.50" }));
        Assert.Equal(28, Buy(plan, "concrete-bag"));
        Assert.Equal((0, 0), (Buy(plan, "tension-bar"), Buy(plan, "tension-band")));
    }

    [Fact]
    public void APinSettlesWhereAPostStands()
    {
        var pin = new Pin { Id = new("p"), Leg = new("main/leg1"), At = Feet(33) };
        var plan = Some.Plan(Hundred with { Pins = [pin] });
        Assert.Equal(33, plan.Lines[0].Posts[4].Station.Feet, 6);
        Assert.Equal((11, 8.25), (plan.Lines[0].Runs[0].Bays, plan.Lines[0].Posts[1].Station.Feet));
        Assert.Equal(9.571, plan.Lines[0].Runs[0].LargestBay.Feet, 3);
        var stands = Some.Plan(Hundred with { Pins = [pin with { Stands = true }] });
        Assert.Equal((10, 9), (Buy(plan, "loop-cap"), Buy(stands, "loop-cap")));
    }

    [Fact]
    public void FabricWeighsWhatItsWireWeighs()
    {
        var fabric = Some.Plan(Hundred).Takeoff.First(t => t.Part == "fabric");
        Assert.Equal(3.925, fabric.Mass!.Value.Pounds / new Length(fabric.Net).Feet, 3);
    }

    [Theory]
    [InlineData(0, 12, "A12")]
    [InlineData(8, 1, "J1")]
    [InlineData(23, 3, "Z3")]
    [InlineData(24, 3, "AA3")]
    public void APostIsMarkedByItsLinesLetterAndItsNumber(int line, int number, string mark)
        => Assert.Equal(mark, PlanWords.Mark(line, Some.Plan(Hundred).Lines[0].Posts[0] with { Number = number }));

    [Theory]
    [InlineData(72, 2, "KT")]
    [InlineData(60, 2, "KK")]
    [InlineData(96, 1.75, "KK")]
    public void EdgesAreTheUsualOnesOfHeightAndMesh(double height, double mesh, string selvage)
    {
        var plan = Some.Plan(With(s => s with { Height = Length.FromInches(height), Mesh = Length.FromInches(mesh) }) with { Calibrations = [] });
        Assert.Equal(selvage, plan.Basis.Specs[0].Selvage);
    }

    [Fact]
    public void ATwistedTopOnALowFenceAndOnFineMeshIsTold()
    {
        Assert.Contains(Some.Plan(With(s => s with { Height = Feet(4), Selvage = "TK" })).Problems, p => p.Code == ProblemCode.SelvageLow);
        Assert.Contains(
            Some.Plan(With(s => s with { Height = Feet(8), Mesh = Length.FromInches(1.75), Selvage = "KT" }) with { Calibrations = [] }).Problems,
            p => p.Code == ProblemCode.SelvageTwistMesh);
    }

    [Fact]
    public void FabricOnTheInsideOfACurveIsTold()
    {
        var line = Some.Line("main", false, [(0, 0), (0, 100)]);
        line = line with
        {
            FabricSide = "left",
            Vertices = [line.Vertices[0] with { Leg = line.Vertices[0].Leg! with { Curve = new() { Radius = Feet(200), Bends = "left" } } }, line.Vertices[1]],
        };
        Assert.Contains(Some.Plan(Some.Job(line)).Problems, p => p.Code == ProblemCode.FabricInside);
        Assert.DoesNotContain(Some.Plan(Some.Job(line with { FabricSide = "right" })).Problems, p => p.Code == ProblemCode.FabricInside);
    }

    [Fact]
    public void ThePlanSaysHowManyDiamondsLieBetweenTies()
    {
        var spec = Some.Plan(Hundred).Specs[0];
        Assert.Equal((8, 8), (spec.TieEvery, spec.RingEvery));
    }
}
