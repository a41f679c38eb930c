using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Spec = Tautline.Engine.Jobs.Spec;

namespace Tautline.Engine.Tests.Symmetry;

/// <summary>
/// One line as two that meet at a terminal: two end posts stand where one post stood. By the hand count of
/// docs/checks/first-light.md a 6-ft terminal of 2.875 in on the level is ordered 9 ft long, weighs 104 in of 5.79 lb/ft = 50.18
/// lb, stands in a hole of 12 x 30 in (3,392.920 cu in) with 1.85079 cu ft of concrete in 4 bags, under a dome cap.
/// </summary>
public sealed class SplitLineTests
{
    private const double CubicFoot = 0.028316846592;
    private const double CubicInch = 1.6387064e-5;

    private static readonly (string What, double Net)[] onePost =
    [
        ("concrete-bag", 1.85079 * CubicFoot),
        ("dome-cap 2.875-sch40", 1),
        ("post 2.875-sch40 2743200000", 1),
        ("spoil", 3392.920 * CubicInch),
    ];

    /// <summary>Parts whose net quantity differs, by how much, in order of their names.</summary>
    private static List<(string What, double Net)> Differences(Plan one, Plan two)
    {
        var (before, after) = (one.Takeoff.ToDictionary(Needs.Key, t => t.Net), two.Takeoff.ToDictionary(Needs.Key, t => t.Net));
        return [.. before.Keys.Union(after.Keys).Select(k => (k, after.GetValueOrDefault(k) - before.GetValueOrDefault(k)))
            .Where(d => Math.Abs(d.Item2) > 1e-6).OrderBy(d => d.k, StringComparer.Ordinal)];
    }

    private static void AssertDiffers((string What, double Net)[] expected, Plan one, Plan two)
    {
        var found = Differences(one, two);
        Assert.Equal(expected.Select(e => e.What), found.Select(f => f.What));
        Assert.All(expected.Zip(found), p => Assert.Equal(p.First.Net, p.Second.Net, 6));
        var posts = (Plan plan) => plan.Takeoff.Where(t => t.Part == "post").Sum(t => t.Mass!.Value.Kilograms);
        Assert.Equal(50.18 * 0.45359237, posts(two) - posts(one), 2);
        Assert.Equal(4, two.Takeoff.Single(t => t.Part == "concrete-bag").Purchase - one.Takeoff.Single(t => t.Part == "concrete-bag").Purchase);
    }

    /// <summary>The line up to a vertex, and from it on under ids of its own.</summary>
    private static Job Split(Job job, int at)
    {
        var line = job.Lines[0];
        var meeting = line.Vertices[at];
        return job with
        {
            Lines =
            [
                line with { Order = new("5"), Vertices = [.. line.Vertices.Take(at), meeting with { Leg = null }] },
                line with { Id = new("second"), Order = new("7"), Vertices = [meeting with { Id = new("second/v1") }, .. line.Vertices.Skip(at + 1)] },
            ],
        };
    }

    private static Job Level((double, double)[] points, Spec? spec = null) => Some.Job(Some.Line("main", false, points), spec ?? Some.Spec());

    /// <summary>Four corners or fewer, turning by 6 degrees and more, and any of them made the end of two lines.</summary>
    [Fact]
    public void SplitAtACornerALineTakesOnePostMore()
        => Gen.Select(Gen.Select(Gen.Double[8, 140], Gen.OneOf(Gen.Double[6, 130], Gen.Double[-130, -6])).List[2, 5], Gen.Int[0, 3], Gen.Bool, Gen.Bool)
            .Always((legs, at, rail, brace) =>
            {
                var spec = Some.Spec() with { Top = rail ? "rail" : "wire", Brace = brace ? "yes" : "no" };
                var job = Level(Walk(legs), spec);
                AssertDiffers(onePost, Some.Plan(job), Some.Plan(Split(job, 1 + at % (legs.Count - 1))));
            }, iter: 200);

    [Fact]
    public void SplitWhereTheSpecChangesALineTakesOnePostMore()
    {
        var line = Some.Line("main", false, [(0, 0), (0, 60), (0, 100)]);
        var job = Some.Job(
            line with { Vertices = [line.Vertices[0], line.Vertices[1] with { Leg = line.Vertices[1].Leg! with { Spec = new("wired") } }, line.Vertices[2]] },
            Some.Spec(), Some.Spec(id: "wired") with { Top = "wire" });
        AssertDiffers(onePost, Some.Plan(job), Some.Plan(Split(job, 1)));
    }

    /// <summary>640 ft have a pull post in the middle; the vertex that is put there is no terminal of its own.</summary>
    [Fact]
    public void SplitAtItsPullPostALineTakesOnePostMore()
    {
        var whole = Level([(0, 0), (0, 640)]);
        var pointed = Level([(0, 0), (0, 320), (0, 640)]);
        Assert.Empty(Differences(Some.Plan(whole), Some.Plan(pointed)));
        AssertDiffers(onePost, Some.Plan(pointed), Some.Plan(Split(pointed, 1)));
    }

    /// <summary>
    /// At a right angle to the right, with arms of 12 in leaning left, the strands at 4, 8 and 12 in go on to their mitre, 24 in on each
    /// of the two runs. Two ends have no mitre, and an arm each in place of a cap.
    /// </summary>
    [Fact]
    public void SplitAtAnOuterCornerTheBarbedWireLosesItsMitre()
    {
        var job = Level([(0, 0), (0, 50), (60, 50)], Some.Spec() with { Barb = new Barb { Strands = 3, Lean = "left", HeightIs = "fabric" } });
        (string, double)[] expected =
        [
            ("barb-arm-terminal 2.875-sch40", 1), ("barbed-wire", -48 * 0.0254), onePost[0], onePost[2], onePost[3],
        ];
        AssertDiffers(expected, Some.Plan(job), Some.Plan(Split(job, 1)));
    }

    private static (double, double)[] Walk(List<(double Feet, double Turn)> legs)
    {
        var (east, north, heading) = (0.0, 0.0, 0.0);
        List<(double, double)> points = [(0, 0)];
        foreach (var (feet, turn) in legs)
        {
            heading += turn * Math.PI / 180;
            points.Add((east += feet * Math.Sin(heading), north += feet * Math.Cos(heading)));
        }
        return [.. points];
    }
}
