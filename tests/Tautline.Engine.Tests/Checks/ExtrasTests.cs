using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Reasons;

namespace Tautline.Engine.Tests.Checks;

/// <summary>The hand counts of docs/checks/extras.md.</summary>
public sealed class ExtrasTests
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

    private static Obstacle Face(double from, double to, double? width = 12) => Stretch("wall", from, to, width) with { Support = "bracketed" };

    private static string Said(Plan plan, ProblemCode code) => ProblemText.Message(plan.Problems.First(p => p.Code == code), UnitSystem.UsCustomary);

    [Fact]
    public void PostsOnAWallsFaceTakeBracketsAndNoHole()
    {
        var plan = Some.Plan(With(Face(10, 90)));
        Assert.Equal((18, 36, 0), (Buy(plan, "wall-bracket"), Buy(plan, "anchor"), Buy(plan, "base-plate")));
        Assert.Equal(8, Buy(plan, "concrete-bag"));
        Assert.Equal(3.927, new Volume(Net(plan, "spoil")).CubicFeet, 3);
        var post = plan.Lines[0].Posts[1];
        Assert.Equal((70, 88, 90), (Inches(post.AboveGround), Inches(post.CutLength), Inches(post.OrderLength)));
        Assert.Equal((2, 4), (post.Brackets, post.Anchors));
        Assert.Null(plan.Lines[0].Posts[0].Brackets);
        Assert.Equal(
            "Posts hang on brackets on the face of the wall 'wall': the fence stands 7 3/16\" off the wall's centre.", Said(plan, ProblemCode.WallFaceNote));
        Assert.Equal(
            "Posts hang on brackets on the face of the wall 'wall', the lowest 1' 6\" down; nothing here proves wall, brackets or anchors.",
            Said(plan, ProblemCode.BracketProof));
        Assert.DoesNotContain(plan.Problems, p => p.Code is ProblemCode.BracketTerminal or ProblemCode.WallEdge or ProblemCode.WallFaceQuestion);
    }

    [Fact]
    public void TheJobSaysHowFarDownTheFaceTheLowestBracketSits()
    {
        var post = Some.Plan(With(Face(10, 90) with { Depth = Feet(2) })).Lines[0].Posts[1];
        Assert.Equal((94, 96), (Inches(post.CutLength), Inches(post.OrderLength)));
        foreach (var depth in (double[])[0, -1, 100, double.NaN])
            Assert.True(Some.Plan(With(Face(10, 90) with { Depth = new Length(depth) })).HasErrors);
    }

    [Fact]
    public void TerminalsOnBracketsAreTold()
    {
        var plan = Some.Plan(With(Face(0, 100)));
        Assert.Equal((22, 44), (Buy(plan, "wall-bracket"), Buy(plan, "anchor")));
        Assert.Equal((92, 96), (Inches(plan.Lines[0].Posts[0].CutLength), Inches(plan.Lines[0].Posts[0].OrderLength)));
        Assert.Equal(2, plan.Problems.Count(p => p.Code == ProblemCode.BracketTerminal));
        Assert.Contains("stands 7 7/16\" off", Said(plan, ProblemCode.WallFaceNote));
    }

    [Fact]
    public void BracketsAndAnchorsGoByTheRules()
    {
        RuleOverride Own(string rule, double value) => new() { Rule = rule, Value = value };
        var plan = Some.Plan(With(Face(10, 90)) with { AsSpecified = [Own("bracket.perPost", 3), Own("bracket.anchors", 4)] });
        Assert.Equal((27, 108), (Buy(plan, "wall-bracket"), Buy(plan, "anchor")));
        Assert.Contains(
            Some.Plan(With(Face(10, 90)) with { AsSpecified = [Own("bracket.perPost", 1.5)] }).Problems, p => p.Code == ProblemCode.RuleValue);
    }

    [Fact]
    public void ConcreteUnderThePostIsForPostsInConcrete()
    {
        var below = new RuleOverride { Rule = "hole.concreteBelow", Value = Length.FromInches(6).Metres };
        double Cut(params Obstacle[] obstacles) => Inches(Some.Plan(With(obstacles) with { AsSpecified = [below] }).Lines[0].Posts[1].CutLength);
        Assert.Equal((88, 70, 82), (Cut(Face(10, 90)), Cut(Stretch("wall", 10, 90, 12)), Cut(Stretch("slab", 10, 90))));
    }

    [Fact]
    public void AWallFaceAsksForItsThicknessAndIsAWalls()
    {
        Assert.Contains(Some.Plan(With(Face(10, 90, null))).Problems, p => p.Code == ProblemCode.WallFaceQuestion);
        var slab = Some.Plan(With(Face(10, 90) with { Kind = "slab" }));
        Assert.Equal("'bracketed' is not a choice here.", Said(slab, ProblemCode.SpecChoice));
    }

    private static Plan SteppedDown(double? classes)
    {
        var line = Some.Line("main", false, [(0, 0), (0, 40), (0, 70), (0, 130)], spec: "six");
        SpecId[] specs = [new("six"), new("five"), new("four")];
        line = line with { Vertices = [.. line.Vertices.Select((v, i) => v.Leg is { } leg ? v with { Leg = leg with { Spec = specs[i] } } : v)] };
        return Some.Plan(Some.Job(line, Some.Spec(6, "six"), Some.Spec(5, "five"), Some.Spec(4, "four")) with
        {
            AsSpecified = classes is { } most ? [new() { Rule = "post.lengthClasses", Value = most }] : [],
        });
    }

    /// <summary>'count x order length: cut off in all', inches, for the posts of a plan.</summary>
    private static string[] Lengths(Plan plan) => [.. plan.Takeoff.Where(t => t.Part == "post").Select(
        t => $"{t.Section} {t.Net} {t.Purchase} x {Inches(t.Size!.Value)}{(t.CutOffs is { } off ? $": {Inches(off)}" : "")}")];

    [Fact]
    public void PostsAreBoughtInFewLengthsWithLeastCutOff()
    {
        string[] asNeeded =
        [
            "2.375-sch40 5 5 x 72", "2.375-sch40 2 2 x 90", "2.375-sch40 3 3 x 102", "2.875-sch40 1 1 x 78", "2.875-sch40 1 1 x 90", "2.875-sch40 2 2 x 108",
        ];
        Assert.Equal(asNeeded, Lengths(SteppedDown(null)));
        Assert.Equal(asNeeded, Lengths(SteppedDown(3)).Select(l => l.Split(':')[0]));
        Assert.Equal(
            ["2.375-sch40 5 5 x 72: 10", "2.375-sch40 5 5 x 102: 40", "2.875-sch40 2 2 x 90: 17", "2.875-sch40 2 2 x 108: 8"], Lengths(SteppedDown(2)));
        Assert.Equal(["2.375-sch40 10 10 x 102: 200", "2.875-sch40 4 4 x 108: 61"], Lengths(SteppedDown(1)));
    }

    [Fact]
    public void APostTellsItsLengthAndWhatIsCutOff()
    {
        var plan = SteppedDown(2);
        var fiveFoot = plan.Lines[0].Posts[5];
        Assert.Equal((85, 102, 17), (Inches(fiveFoot.CutLength), Inches(fiveFoot.OrderLength), Inches(fiveFoot.CutOff!.Value)));
        Assert.All(SteppedDown(null).Lines[0].Posts, p => Assert.Null(p.CutOff));
        var why = Facts.Why(plan, new(FactKind.OrderLength, 0, 5))!;
        Assert.Equal("next chosen length(up(cut-length / post.orderStep) x post.orderStep)", ExprText.Symbols(why));
        Assert.Equal([72, 102], ExprText.Ladder(why).Select(l => Inches(new Length(l.Value))));
        Assert.Equal("order-length - cut-length", ExprText.Symbols(Facts.Why(plan, new(FactKind.CutOff, 0, 5))!));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.5)]
    [InlineData(-2)]
    public void ANumberOfLengthsIsACount(double classes) => Assert.Contains(SteppedDown(classes).Problems, p => p.Code == ProblemCode.RuleValue);

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

    private static Plan Sliding(double near, double opening, string back, double[]? own = null, Func<Job, Job>? change = null)
    {
        var job = Some.Job(Some.Line("main", false, [(0, 0), (0, own is null ? 100 : 200)])) with
        {
            Gates = [Some.Gate("drive", "main/leg1", "cantilever", near, opening) with { RunsBack = back }],
            AsSpecified = own is not { Length: 2 } ? [] : [new() { Rule = "gate.cantileverTail", Value = own[0] }, new() { Rule = "gate.cantileverOverhang", Value = Feet(own[1]).Metres }],
        };
        return Some.Plan(change is null ? job : change(job));
    }

    [Theory]
    [InlineData(8, 6.5, 14.5)]
    [InlineData(10, 6.5, 16.5)]
    [InlineData(10.5, 7.5, 18)]
    [InlineData(12, 7.5, 19.5)]
    [InlineData(16, 10, 26)]
    [InlineData(20, 10, 30)]
    [InlineData(22, 11, 33)]
    [InlineData(24, 12, 36)]
    [InlineData(30, 15, 45)]
    public void ACantileverLeafHasTheTailItsOpeningAsks(double opening, double tail, double leaf)
    {
        var gate = Sliding(30, opening, "end", []).Lines[0].Gates[0];
        Assert.Equal((tail, leaf), (Math.Round(gate.Tail!.Value.Feet, 9), Math.Round(gate.Leaf.Feet, 9)));
    }

    [Theory]
    [InlineData(0.5, 5, 10)]
    [InlineData(0, 5, 5)]
    public void TheMakersOwnTailGoesOverBoth(double share, double least, double tail)
        => Assert.Equal(tail, Sliding(30, 20, "end", [share, least]).Lines[0].Gates[0].Tail!.Value.Feet, 9);

    [Fact]
    public void TheTailSaysWhy()
    {
        var plan = Sliding(30, 16, "end");
        Assert.Equal("larger(opening x gate.cantileverTail, gate.cantileverOverhang)", ExprText.Symbols(Facts.Why(plan, new(FactKind.Tail, 0))!));
        Assert.Equal("first roller post + tail", ExprText.Symbols(Facts.Why(plan, new(FactKind.SecondRoller, 0))!));
        Assert.Equal("opening + tail", ExprText.Symbols(Facts.Why(plan, new(FactKind.Leaf, 0))!));
    }

    [Theory]
    [InlineData(30, "end", null, 674, 12.3333)]
    [InlineData(30, "start", null, 238, 0.6667)]
    [InlineData(35, "end", null, 734, 2.8)]
    [InlineData(35, "end", 68.0, 734, 19.0)]
    [InlineData(35, "end", 66.0, 734, null)]
    public void ASecondRollerPostNearAPostOfTheFenceIsTold(double near, string back, double? pin, double station, double? apart)
    {
        var plan = Sliding(near, 16, back, change: j => pin is not { } at ? j : j with { Pins = [new() { Id = new("p"), Leg = new("main/leg1"), At = Feet(at) }] });
        Assert.Equal(station, Inches(plan.Lines[0].Gates[0].SecondRoller!.Value));
        var told = plan.Problems.Where(p => p.Code == ProblemCode.RollerNearPost).Select(p => Math.Round(new Length(p.Figures[1].Value).Inches, 4));
        Assert.Equal(apart is { } d ? [d] : [], told);
    }

    /// <summary>100 ft square, gate in the last leg with its far face at 86 ft: first roller post 86 ft 2 in, second 96 ft 2 in, 46 in before the corner at the start.</summary>
    [Theory]
    [InlineData(70, 0)]
    [InlineData(72.5, 1)]
    public void ASecondRollerPostIsHeldAgainstTheCornerTheLineComesBackTo(double near, int told)
    {
        var square = Some.Job(Some.Line("main", true, [(0, 0), (0, 100), (100, 100), (100, 0)])) with
        {
            Gates = [Some.Gate("drive", "main/leg4", "cantilever", near, 16) with { RunsBack = "end" }],
        };
        Assert.Equal(told, Some.Plan(square).Problems.Count(p => p.Code == ProblemCode.RollerNearPost));
    }

    [Fact]
    public void ASecondRollerPostInANoDigStretchIsTold()
    {
        var plan = Sliding(30, 16, "end", change: j => j with { Obstacles = [Stretch("no-dig", 56, 57)] });
        Assert.Equal("The second roller post of the gate 'drive' stands in the no-dig stretch 'no-dig' or its clearance.", Said(plan, ProblemCode.RollerInZone));
        Assert.DoesNotContain(Sliding(30, 16, "start").Problems, p => p.Code == ProblemCode.RollerInZone);
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
