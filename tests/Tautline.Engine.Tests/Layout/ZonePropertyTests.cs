using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site;

namespace Tautline.Engine.Tests.Layout;

/// <summary>Random no-dig stretches, overlapping ones too, and random posts that stand already.</summary>
public sealed class ZonePropertyTests
{
    private static readonly Gen<(double At, double Feet, double Clear)> genZone = Gen.Select(
        Gen.Double[0, 1], Gen.OneOf(Gen.Double[0.1, 4], Gen.Double[4, 40]), Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 4], Gen.Double[0, 300]));

    private static readonly Gen<(double Feet, double Turn, double Grade, List<(double At, double Feet, double Clear)> Zones, List<double> Pins)> genLeg = Gen.Select(
        Gen.OneOf(Gen.Double[5, 120], Gen.Double[120, 620]), Gen.OneOf(Gen.Double[-4, 4], Gen.Double[-100, 100]), Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.4, 0.4]),
        genZone.List[0, 2], Gen.Double[0.01, 0.99].List[0, 2]);

    private static readonly Gen<(Job Job, BuiltFacts Built)> genJob = Gen.Select(genLeg.List[1, 4], Gen.Bool, (legs, closed) =>
    {
        var points = Walk(legs.Select(l => (l.Feet, l.Turn)));
        closed &= legs.Count > 2 && Math.Sqrt(points[^1].Item1 * points[^1].Item1 + points[^1].Item2 * points[^1].Item2) > 9;
        var job = Some.Job(Some.Line("main", closed, points, [.. legs.Select(l => l.Grade), 0])) with
        {
            Obstacles = [.. legs.SelectMany((l, i) => l.Zones.Select((z, k) => new Obstacle
            {
                Id = new($"zone{i}-{k}"), Leg = new($"main/leg{i + 1}"), Kind = Obstacle.NoDig, Clearance = Length.FromFeet(z.Clear),
                From = Length.FromFeet(z.At * (l.Feet - Math.Min(z.Feet, l.Feet))), To = Length.FromFeet(z.At * (l.Feet - Math.Min(z.Feet, l.Feet)) + Math.Min(z.Feet, l.Feet)),
            }))],
        };
        return (job, new BuiltFacts([.. legs.SelectMany((l, i) => l.Pins.Select((p, k) => new BuiltPost(new($"pin{i}-{k}"), new($"main/leg{i + 1}"), Length.FromFeet(p * l.Feet))))]));
    });

    [Fact]
    public void BaysSumToTheRunExactly() => Each(plan =>
    {
        foreach (var run in plan.Basis.Lines[0].Runs.Select(r => r.Run))
        {
            Assert.Equal((run.Stretch.FromNm, run.Stretch.ToNm), (run.Stations[0], run.Stations[^1]));
            Assert.All(run.Stations.Zip(run.Stations.Skip(1)), b => Assert.True(b.Second > b.First));
            Assert.Equal(run.AlongNm, Bays(plan, run).Sum());
        }
        Assert.Equal(plan.Basis.Lines[0].Site.Chain.LevelNm, plan.Basis.Lines[0].Runs.Sum(r => r.Run.Stretch.ToNm - r.Run.Stretch.FromNm));
    });

    [Fact]
    public void APostThatStandsIsAPostOfThePlanToTheNanometre() => Each(plan =>
    {
        var stations = plan.Basis.Lines[0].Posts.Select(p => p.StationNm).ToHashSet();
        Assert.All(plan.Basis.Lines[0].Site.Pins, pin => Assert.Contains(pin.StationNm, stations));
    });

    /// <summary>
    /// A line post's hole of 10 in keeps out of every stretch and its clearance, level, round the corner too, to the two
    /// nanometres of bringing a station along a grade; only what had to stand there does not, and then it is told.
    /// </summary>
    [Fact]
    public void NoPostStandsInAStretchUnlessItIsTold() => Each(plan =>
    {
        var site = plan.Basis.Lines[0].Site;
        foreach (var post in plan.Basis.Lines[0].Posts)
            foreach (var obstacle in Reaching(site, post.StationNm, (post.Kind == PostKind.Line ? 5 : 6) * 25_400_000L - 2))
                Assert.Contains(plan.Problems, p => p.Code is ProblemCode.PinInZone or ProblemCode.BuiltInZone or ProblemCode.TerminalInZone
                    && p.Place.Station!.Value.Nanometres == post.StationNm && p.Figures.Any(f => f.Text == obstacle.Id.Value));
    });

    [Fact]
    public void ABayOverTheLimitIsToldAtItsStation() => Each(plan =>
    {
        var told = plan.Problems.Where(p => p.Code == ProblemCode.BayTooLong).Select(p => p.Place.Station!.Value.Nanometres).ToList();
        var over = plan.Basis.Lines[0].Runs.SelectMany(r => r.Run.Stations.Zip(Bays(plan, r.Run))).Where(b => b.Second > 3_048_010_000).Select(b => b.First);
        Assert.Equal(over.Order(), told.Order());
    });

    /// <summary>With nothing in the way the number of bays is the closed form, ceil(S / 10 ft), a hundredth of a millimetre over in each bay not counted.</summary>
    [Fact]
    public void WithNothingInTheWayThereAreAsFewBaysAsTheLimitAllows()
        => Gen.Select(Gen.Double[3, 499], Gen.OneOf(Gen.Const(0.0), Gen.Double[-0.05, 0.05])).Always((feet, grade) =>
        {
            var run = Assert.Single(Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, feet)], [grade]))).Lines[0].Runs);
            var along = feet * Math.Sqrt(1 + grade * grade);
            if (along > 500) return;
            Assert.Equal((int)Math.Ceiling(along / 10.0000328084), run.Bays);
        }, iter: 300);

    private static void Each(Action<Plan> check) => genJob.Always(drawn =>
    {
        var plan = Some.Plan(drawn.Job, drawn.Built);
        if (!plan.HasErrors) check(plan);
    }, iter: 150, print: j => System.Text.Encoding.UTF8.GetString(JobFile.Write(j.Job)) + string.Join(", ", j.Built.Posts));

    private static List<long> Bays(Plan plan, Run run)
        => [.. run.Stations.Zip(run.Stations.Skip(1), (a, b) => plan.Basis.Lines[0].Site.Chain.Along(b) - plan.Basis.Lines[0].Site.Chain.Along(a))];

    /// <summary>By the obstacles as they were entered; a closed line is gone round once either way.</summary>
    private static IEnumerable<Obstacle> Reaching(SiteLine site, long station, long half)
    {
        var rounds = site.Line.Closed ? new[] { -1, 0, 1 } : [0];
        return site.Zones.Where(z => rounds.Any(r =>
            station + r * site.Chain.LevelNm + half > z.FromNm - z.ClearanceNm && station + r * site.Chain.LevelNm - half < z.ToNm + z.ClearanceNm)).Select(z => z.Obstacle);
    }

    private static (double, double)[] Walk(IEnumerable<(double Feet, double Turn)> legs)
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
