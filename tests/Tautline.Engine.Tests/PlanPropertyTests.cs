using System.Globalization;
using CsCheck;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Tests.Reasons;

namespace Tautline.Engine.Tests;

/// <summary>What holds for every plan, whatever was walked.</summary>
public sealed class PlanPropertyTests
{
    [Fact]
    public void StationsSumToTheLineExactlyInNanometres()
        => GenJob.Any.Always(job =>
        {
            var plan = Some.Plan(job);
            var line = Assert.Single(plan.Lines);
            var stations = line.Posts.Select(p => p.Station.Nanometres).ToList();
            Assert.Equal(line.Level.Nanometres, stations.Zip(stations.Skip(1), (a, b) => b - a).Sum());
            Assert.All(stations.Zip(stations.Skip(1)), p => Assert.True(p.Second > p.First));
            var fence = line.Runs.Sum(r => r.Level.Nanometres) + line.Gates.Sum(g => g.Centres.Nanometres);
            Assert.Equal(line.Level.Nanometres, fence);
        }, iter: 200);

    [Fact]
    public void NoBayIsOverTheMaximumUnlessItIsReported()
        => GenJob.Any.Always(job =>
        {
            var plan = Some.Plan(job);
            var over = plan.Lines[0].Runs.Count(r => r.LargestBay.Feet > 10.0001);
            Assert.True(over <= plan.Problems.Count(p => p.Code == ProblemCode.BayTooLong));
        }, iter: 200);

    [Fact]
    public void EveryFactIsRecomputedFromItsReasons() => GenJob.Any.Always(job => FactCheck.All(Some.Plan(job)), iter: 25);

    [Fact]
    public void CultureNeverMatters()
    {
        var job = Some.Yard();
        var hashes = new[] { "", "de-DE", "tr-TR", "ar-SA", "th-TH" }.Select(name => In(Culture(name), () => (PlanFile.Hash(Some.Plan(JobFile.Read(JobFile.Write(job)).Job!)), Words(job))));
        Assert.Single(hashes.Distinct());
    }

    /// <summary>The same walk in the other direction needs the same things.</summary>
    [Fact]
    public void AReversedLineTakesTheSameMaterial()
        => GenJob.Any.Where(j => j.Gates.Count == 0).Always(job =>
        {
            var plain = job with { Obstacles = [] };
            Assert.Equal(Material(Some.Plan(plain)), Material(Some.Plan(plain with { Lines = [Reversed(plain.Lines[0])] })));
        }, iter: 100);

    [Fact]
    public void AStandingPostIsAFixedPointOfThePlan()
    {
        var built = new BuiltFacts([new BuiltPost(new("b1"), new("main/leg1"), Length.FromFeet(37.25))]);
        var plan = Some.Plan(Some.StraightHundred(), built);
        Assert.Contains(plan.Lines[0].Posts, p => p.Station.Nanometres == Length.FromFeet(37.25).Nanometres && p.Kind == PostKind.Line);
        Assert.Equal(11, plan.Lines[0].Runs[0].Bays);
    }

    /// <summary>Without a top rail a wire runs at the top: twice the wire and rings of a railed line, no rail, caps without loops.</summary>
    [Fact]
    public void ALineWithoutATopRailHasAWireAtTheTop()
    {
        var railed = Some.Plan(Some.StraightHundred());
        var wired = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 100)]), Some.Spec() with { Top = "wire" }) with { Calibrations = [Some.Calibration()] });
        double Net(Plan plan, string part) => plan.Takeoff.Where(t => t.Part == part).Sum(t => t.Net);
        Assert.Equal(2 * 1221.125, new Length(Net(wired, "tension-wire")).Inches, 6);
        Assert.Equal(106, Net(wired, "ring"));
        Assert.Equal(4, Net(wired, "brace-band"));
        Assert.Equal(0, Net(wired, "rail") + Net(wired, "rail-end") + Net(wired, "loop-cap"));
        Assert.Equal(11, Net(wired, "dome-cap"));
        Assert.Equal(53, Net(railed, "ring"));
    }

    private static string Words(Job job) => string.Join('|', Some.Plan(job).Problems.Select(p => ProblemText.Message(p, UnitSystem.UsCustomary)));

    private static string Material(Plan plan)
        => string.Join('\n', plan.Takeoff.Select(t => $"{t.Part} {t.Section} {t.Size?.Nanometres} {t.Purchase} {Math.Round(t.Net, 6)}"));

    private static Line Reversed(Line line)
    {
        var points = line.Vertices.Reverse().ToList();
        var keys = OrderKey.Spread(points.Count);
        return line with
        {
            Vertices = [.. points.Select((v, i) => v with
            {
                Order = keys[i],
                Leg = i + 1 < points.Count ? points[i + 1].Leg! with { Grade = new(-points[i + 1].Leg!.Grade.Ratio) } : null,
            })],
        };
    }

    /// <summary>A culture with its own decimal sign even where the machine has no culture data.</summary>
    private static CultureInfo Culture(string name)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        if (name.Length > 0) (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NegativeSign) = (name[0] == 'd' ? "," : "٫", "−");
        return culture;
    }

    private static T In<T>(CultureInfo culture, Func<T> work)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
            return work();
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }
}
