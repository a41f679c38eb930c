using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.TapeBook;
using Tautline.Engine.Takeoff;
using Tautline.Engine.Tests.Checks;

namespace Tautline.Engine.Tests.Places;

/// <summary>Literals are those of docs/checks/first-light.md, part B, unless worked beside the check.</summary>
public sealed class PlaceQuantityTests
{
    private const double CubicFoot = 0.028316846592; // 0.3048 cubed

    public static TheoryData<string> Samples
        => [.. Directory.GetFiles(SampleTests.Folder()).Select(f => Path.GetFileName(f)!).Where(f => Path.GetExtension(f) is ".json" or ".tape").Order(StringComparer.Ordinal)];

    [Fact]
    public void ARunHoldsItsFabricRailWireAndFastenings()
    {
        var first = At(Some.Plan(Some.Yard()), new(FencePlaceKind.Run, 0));
        Assert.Equal(235.6875, Inches(first["rail"]), 6);
        Assert.Equal(259.6875, Inches(first["tension-wire"]), 6);
        Assert.Equal(233.6875, Inches(first["fabric"]), 6);
        Assert.Equal((10.0, 10.0), (first["rail-tie"], first["ring"]));
        Assert.Equal((2.0, 12.0, 2.0), (first["tension-bar"], first["tension-band"], first["rail-end"]));
        Assert.Equal((4.0, 16.0), (first["brace-band"], first["carriage-bolt"])); // 2 rail ends and 2 wire ends; 12 + 4
        Assert.DoesNotContain("post", first.Keys);
    }

    [Fact]
    public void TerminalsAndLinePostsStandApart()
    {
        var plan = Some.Plan(Some.Yard());
        var (terminals, between) = (At(plan, new(FencePlaceKind.Terminals, 0)), At(plan, new(FencePlaceKind.LinePosts, 0)));
        Assert.Equal((8.0, 8.0), (terminals["post"], terminals["dome-cap"]));
        Assert.Equal((23.0, 23.0, 138.0), (between["post"], between["loop-cap"], between["post-tie"]));
        Assert.Equal(14.8064, terminals["concrete-bag"] / CubicFoot, 3); // corners 7.4032 and gate posts 7.4032
        Assert.Equal(29.5924, between["concrete-bag"] / CubicFoot, 3);
        Assert.DoesNotContain("post-tie", terminals.Keys);
    }

    [Fact]
    public void GatesHoldTheirLeavesAndHardware()
    {
        var gates = At(Some.Plan(Some.Yard()), new(FencePlaceKind.Gates, 0));
        Assert.Equal(["double-latch", "drop-rod", "fork-latch", "gate-leaf", "hinge-set", "keeper"], gates.Keys.Order(StringComparer.Ordinal));
        Assert.Equal((3.0, 6.0, 2.0), (gates["gate-leaf"], gates["hinge-set"], gates["keeper"])); // a leaf of 44.25 in and two of 92.75
    }

    /// <summary>100 ft of 10-ft panels: 10 panels, 11 stands, 9 joints with two clamps.</summary>
    [Fact]
    public void WorksAndTemporaryFenceAreTheirOwnPlaces()
    {
        var plan = Some.Plan(Extra(Some.Yard(), "yard/leg1"));
        var (works, panels) = (At(plan, new(FencePlaceKind.Works, 0)), At(plan, new(FencePlaceKind.Temporary, 0)));
        Assert.Equal((10.0, 5.0), (new Length(works["old-fence"]).Feet, works["old-post-cut"]));
        Assert.Equal((10.0, 11.0, 18.0), (panels["temporary-panel"], panels["temporary-stand"], panels["temporary-clamp"]));
        Assert.Equal(FencePlaceKind.Temporary, PlaceQuantities.OfLines(plan)[^1].Place.Kind);
    }

    /// <summary>100 ft and 40 ft of the same fence: 10 and 4 bays, 11 and 5 posts, of these 2 and 2 ends.</summary>
    [Fact]
    public void LinesAreToldApart()
    {
        var job = Some.StraightHundred();
        var plan = Some.Plan(job with { Lines = [job.Lines[0], Second([(200, 0), (200, 40)])] });
        double Posts(int line) => PlaceQuantities.OfLines(plan).Where(r => r.Place == new FencePlace(FencePlaceKind.Line, line) && Part(plan, r) == "post").Sum(r => r.Net);
        Assert.Equal((11.0, 5.0), (Posts(0), Posts(1)));
        Assert.Equal(9, At(plan, new(FencePlaceKind.LinePosts, 0))["post"]);
        Assert.Equal(3, At(plan, new(FencePlaceKind.LinePosts, 1))["post"]);
    }

    /// <summary>The second post of a cantilever gate's rollers stands with the gate posts, not with the leaf.</summary>
    [Fact]
    public void TheSecondRollerPostIsATerminal()
    {
        var plan = Some.Plan(LayoutJobs.CornerLot());
        var terminals = plan.Lines[0].Posts.Count(p => p.Kind != Engine.Layout.PostKind.Line);
        Assert.Equal(terminals + 1, At(plan, new(FencePlaceKind.Terminals, 0))["post"]);
    }

    [Fact]
    public void APlanWithAnErrorHasNoRows()
    {
        var plan = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 0)])));
        Assert.True(plan.HasErrors);
        Assert.Empty(PlaceQuantities.Of(plan));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void PlacesSumToTheTakeoffOfEverySample(string name) => SumsToTheTakeoff(Some.Plan(Read(Path.Combine(SampleTests.Folder(), name))));

    [Fact]
    public void PlacesSumToTheTakeoffOfHandCounts()
        => Assert.All([LayoutJobs.CornerLot(), LayoutJobs.Backstop(), LayoutJobs.StepDown(), LayoutJobs.Barbed(), Some.Steep()], job => SumsToTheTakeoff(Some.Plan(job)));

    [Fact]
    public void PlacesSumToTheTakeoffOfRandomJobs()
        => Gen.Select(GenJob.Any, Gen.Double[10, 400], Gen.Bool).Always((job, feet, extra) =>
        {
            var two = job with { Lines = [job.Lines[0], Second([(5000, 0), (5000, feet), (5000 + feet, feet)])] };
            SumsToTheTakeoff(Some.Plan(extra ? Extra(two, "second/leg1") : two));
        }, iter: 200);

    private static void SumsToTheTakeoff(Plan plan)
    {
        Assert.NotEmpty(plan.Takeoff);
        foreach (var rows in new[] { PlaceQuantities.Of(plan), PlaceQuantities.OfLines(plan) })
        {
            Assert.Equal(rows.Count, rows.DistinctBy(r => (r.Place, r.Item)).Count());
            Assert.All(plan.Takeoff, line => Sums(line, rows.Where(r => r.Item == line.Number).Sum(r => r.Net)));
        }
    }

    private static void Sums(TakeoffLine line, double places)
    {
        if (line.NetUnit == QuantityUnit.Each) Assert.Equal(line.Net, places);
        else Assert.InRange(places, line.Net - 1e-9 * Math.Abs(line.Net), line.Net + 1e-9 * Math.Abs(line.Net));
    }

    private static Dictionary<string, double> At(Plan plan, FencePlace place) => PlaceQuantities.Of(plan).Where(r => r.Place == place)
        .GroupBy(r => Part(plan, r)).ToDictionary(g => g.Key, g => g.Sum(r => r.Net));

    private static string Part(Plan plan, PlaceQuantity row) => plan.Takeoff[row.Item - 1].Part;

    private static double Inches(double metres) => new Length(metres).Inches;

    private static Line Second((double, double)[] feet)
        => Some.Line("second", false, feet) with { Order = OrderKey.Spread(2)[1] };

    /// <summary>With 10 ft of old fence cut out of a leg, five posts of it, and 100 ft of temporary fence.</summary>
    private static Job Extra(Job job, string leg) => job with
    {
        Works = [new SiteWork { Id = new("out"), Leg = new(leg), Kind = SiteWork.Removal, From = Length.Zero, To = Length.FromFeet(10), Posts = 5, PostsOut = "cut" }],
        Temporary = [new TemporaryFence { Id = new("panels"), Length = Length.FromFeet(100), Panel = Length.FromFeet(10) }],
    };

    private static Job Read(string path) => path.EndsWith(".tape", StringComparison.Ordinal)
        ? TapeBookReader.Read(File.ReadAllText(path)).Job!
        : JobFile.Read(File.ReadAllBytes(path)).Job!;
}
