using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Tests.Reasons;

namespace Tautline.Engine.Tests.Checks;

/// <summary>
/// The jobs counted by hand in docs/checks/layout.md before the code: a corner lot with an arc and a cantilever gate, a backstop of
/// laced widths, a step-down with two tie-ins, barbed wire on a corner. Rows of layout.csv, sources in their last column.
/// </summary>
public sealed class LayoutTests
{
    private static readonly Dictionary<string, Plan> plans = new()
    {
        ["D"] = Some.Plan(LayoutJobs.CornerLot()),
        ["E"] = Some.Plan(LayoutJobs.Backstop()),
        ["F"] = Some.Plan(LayoutJobs.StepDown()),
        ["F11"] = Some.Plan(LayoutJobs.EightToFour()),
        ["G"] = Some.Plan(LayoutJobs.Barbed()),
    };

    public static TheoryData<string, string, string> Rows()
    {
        var rows = new TheoryData<string, string, string>();
        foreach (var row in Csv().Where(r => plans.ContainsKey(r[0]) && Found(r[0], r[1]) is not null)) rows.Add(row[0], row[1], row[2]);
        return rows;
    }

    private static IEnumerable<string[]> Csv()
        => File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", "layout.csv")).Skip(1).Select(l => l.Split(','));

    [Fact]
    public void NoneOfTheJobsHasAnError()
        => Assert.Empty(plans.SelectMany(p => p.Value.Problems.Where(q => q.Severity == Severity.Error).Select(q => $"{p.Key} {q.Place.Path}: {ProblemText.Message(q, UnitSystem.UsCustomary)}")));

    private static string? Found(string job, string item)
        => new LayoutCount(plans[job]).Answer(item) ?? (job == "F11" ? null : new HandCount(plans[job]).Answer(item));

    [Theory]
    [MemberData(nameof(Rows))]
    public void AgreesWithTheHandCount(string job, string item, string expected)
        => Assert.True(FirstLightTests.Agrees(expected, Found(job, item)!), $"{job}, {item}: by hand {expected}, planned {Found(job, item)}");

    /// <summary>How many rows of the page the tests do not look up; the number may only fall.</summary>
    [Fact]
    public void FewRowsOfThePageAreNotLookedUp()
    {
        var unknown = Csv().Where(r => plans.ContainsKey(r[0]) && Found(r[0], r[1]) is null).Select(r => $"{r[0]},{r[1]}").ToList();
        Assert.True(unknown.Count <= 82, string.Join("\n", unknown));
    }

    [Theory]
    [InlineData(500, 79)]
    [InlineData(499, 98)]
    [InlineData(201, 40)]
    [InlineData(200, 53)]
    [InlineData(150, 40)]
    [InlineData(101, 27)]
    [InlineData(100, 32)]
    [InlineData(60, 19)]
    public void BaysOfAQuarterCircleByItsRadius(int radiusFeet, int bays)
    {
        Assert.Equal(bays.ToString(CultureInfo.InvariantCulture), Csv().Single(r => r[0] == "H" && r[1] == $"bays of a 90 degree arc at radius {radiusFeet} ft")[2]);
        Assert.Equal(bays, Some.Plan(LayoutJobs.Arc(radiusFeet)).Lines[0].Runs.Single().Bays);
    }

    /// <summary>check_jobs.md job 9: 1,984 ft of strand before tails; the same arms leaning in, a V, a turn of 60 degrees.</summary>
    [Theory]
    [InlineData("left", 3, 90, 1984)]
    [InlineData("right", 3, 90, 1976)]
    [InlineData("both", 6, 90, 3960)]
    [InlineData("left", 3, 60, 1982.309)]
    [InlineData("left", 3, 0, 1980)]
    public void StrandsByTheLeanOfTheArms(string lean, int strands, double turn, double feet)
        => Assert.Equal(feet, new Length(Some.Plan(LayoutJobs.Barbed(lean, strands, turn)).Takeoff.Single(t => t.Part == "barbed-wire").Net).Feet, 3);

    [Fact]
    public void ARunBackThatIsTooShortIsTold()
    {
        Assert.DoesNotContain(plans["D"].Problems, p => p.Code == ProblemCode.RunBackShort);
        var job = LayoutJobs.CornerLot("start");
        Assert.DoesNotContain(Some.Plan(job).Problems, p => p.Code == ProblemCode.RunBackShort); // 360 in asked, 360 in there
        var near = job with { Gates = [job.Gates[0] with { NearFace = Length.FromFeet(29) }] };
        Assert.Contains(Some.Plan(near).Problems, p => p.Code == ProblemCode.RunBackShort);
        Assert.Contains(Some.Plan(job with { Gates = [job.Gates[0] with { RunsBack = null }] }).Problems, p => p.Code == ProblemCode.RunsBackUnknown);
    }

    [Fact]
    public void AGateOnAnArcAndARadiusTooTightAreErrors()
    {
        var job = LayoutJobs.CornerLot();
        var onArc = job with { Gates = [job.Gates[0] with { Leg = new("lot/leg2") }] };
        Assert.Contains(Some.Plan(onArc).Problems, p => p.Code == ProblemCode.GateOnCurve);
        var arc = job.Lines[0].Vertices[1];
        var tight = arc with { Leg = arc.Leg! with { Curve = new LegCurve { Radius = Length.FromFeet(100), Bends = "right" } } };
        var line = job.Lines[0] with { Vertices = [job.Lines[0].Vertices[0], tight, .. job.Lines[0].Vertices.Skip(2)] };
        Assert.Contains(Some.Plan(job with { Lines = [line] }).Problems, p => p.Code == ProblemCode.CurveTight && p.Place.Path == "lines[0].vertices[1].leg.curve.radius");
    }

    [Fact]
    public void WithBarbTheHeightIsAskedFor()
    {
        var job = LayoutJobs.Barbed();
        var open = job with { Specs = [job.Specs[0] with { Height = Length.FromFeet(8), Barb = job.Specs[0].Barb! with { HeightIs = null } }] };
        Assert.Contains(Some.Plan(open).Problems, p => p.Code == ProblemCode.BarbHeightQuestion);
        var overall = open with { Specs = [open.Specs[0] with { Barb = open.Specs[0].Barb! with { HeightIs = "overall" } }] };
        Assert.Equal(7, Some.Plan(overall).Specs[0].Height.Feet, 9);
    }

    /// <summary>Posts on a slab are cored or plated, driven posts take no concrete: MIL-HDBK-1013/10 and a state DOT text, docs/calculation.md 21.</summary>
    [Fact]
    public void SupportsFollowTheGroundAndTheSpec()
    {
        var slab = new Obstacle { Id = new("slab"), Leg = new("main/leg1"), Kind = Obstacle.Slab, From = Length.FromFeet(15), To = Length.FromFeet(35), Support = "plated" };
        var rock = slab with { Id = new("rock"), Kind = Obstacle.Rock, From = Length.FromFeet(55), To = Length.FromFeet(65), Support = null };
        var job = Some.StraightHundred();
        var plan = Some.Plan(job with { Obstacles = [slab, rock], Specs = [job.Specs[0] with { LineSupport = "driven" }] });
        int Of(string part) => plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Purchase);
        // Line posts at 10..90 ft: 20 and 30 on the slab, 60 in rock, six driven; only the two ends take concrete.
        Assert.Equal((2, 8, 8), (Of("base-plate"), Of("anchor"), Of("concrete-bag")));
        var cored = plan.Lines[0].Posts[6];
        Assert.Equal((3.375, 12), (Math.Round(cored.HoleDiameter.Inches, 6), Math.Round(cored.HoleDepth.Inches, 6)));
        Assert.Equal(36, plan.Lines[0].Posts[1].HoleDepth.Inches, 6);
        Assert.Equal(1, Of("grout"));
        FactCheck.All(plan);
    }

    [Fact]
    public void EveryFactOfTheseJobsIsRecomputed()
    {
        foreach (var plan in plans.Values) FactCheck.All(plan);
        FactCheck.All(Some.Plan(LayoutJobs.Arc(150)));
    }
}
