using CsCheck;
using Tautline.Engine.Editing;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Picture;
using Tautline.Engine.Quantities;
using Tautline.Engine.Tests.Symmetry;
using static Tautline.Engine.Tests.Editing.Edits;

namespace Tautline.Engine.Tests.Editing;

/// <summary>The picture of a plan: hand-worked places, and what holds for every job.</summary>
public sealed class PlanPictureTests
{
    private static PlanPicture Of(Job job) => PictureStage.Of(Some.Plan(job));

    private static double[] InFeet(IEnumerable<double> metres) => [.. metres.Select(m => Math.Round(m / 0.3048, 4) + 0.0)];

    /// <summary>100 ft in ten bays: eleven posts ten feet apart going north.</summary>
    [Fact]
    public void PostsStandAlongTheLine()
    {
        var picture = Of(Some.StraightHundred());
        Assert.Equal(Enumerable.Range(0, 11).SelectMany(i => new[] { 0.0, 10 * i }), InFeet(picture.PostsAt.ToArray()));
        Assert.Equal([PostKind.End, .. Enumerable.Repeat(PostKind.Line, 9), PostKind.End], picture.PostKinds.ToArray().Select(k => (PostKind)k));
        Assert.Equal([0, 0, 0, 10], picture.Runs.ToArray());
        Assert.Equal([0, 9, 10], picture.Bays.ToArray()[^3..]);
        var leg = Assert.Single(picture.Legs);
        Assert.Equal(("100' 0\"", "N 0° E"), (leg.Length, leg.Bearing));
        Assert.Equal(["0+00", "1+00"], picture.Stations.Select(s => s.Words));
        Assert.Equal([0, 0, 0, 100], InFeet(picture.Extent));
    }

    [Fact]
    public void AClosedLineComesBackToItsFirstPost()
    {
        var picture = Of(Some.Yard());
        var bays = picture.Bays.ToArray();
        Assert.Equal(0, bays[^1]);
        Assert.Equal(["R 90°", "R 90°", "R 90°", "R 90°"], picture.Vertices.Select(v => v.Turn));
        Assert.Equal(45, picture.Vertices[0].Inside, 6);
    }

    /// <summary>A walk gate of 4 ft from 20 ft on, going north: hinged at (0, 20), its tip swings west.</summary>
    [Fact]
    public void AWalkGateSwings()
    {
        var gate = Of(Some.Yard()).Gates.First(g => g.Kind == "walk");
        Assert.Equal([0, 20, 0, 24], InFeet(gate.Faces));
        var closed = InFeet(gate.Leaves[0]);
        var open = InFeet(gate.Open[0]);
        Assert.Equal((0.0, 20.0), (closed[0], closed[1]));
        Assert.Equal(-(closed[3] - 20), open[2], 4);
        Assert.Equal(20, open[3], 4);
        Assert.Equal(13 * 2, gate.Arcs[0].Count);
        Assert.Equal(2, Of(Some.Yard()).Gates.First(g => g.Kind == "double").Leaves.Count);
    }

    /// <summary>A cantilever gate that runs back to the end of its leg lies behind its opening when open.</summary>
    [Fact]
    public void ASlidingGateTravels()
    {
        var job = Some.StraightHundred() with { Gates = [Some.Gate("slide", "main/leg1", "cantilever", 20, 14) with { RunsBack = "end" }] };
        var gate = Assert.Single(Of(job).Gates);
        Assert.Equal(20, InFeet(gate.Leaves[0])[1]);
        Assert.Equal(34, InFeet(gate.Open[0])[1]);
        Assert.Equal(2, gate.Roller.Count);
    }

    /// <summary>A quarter circle of 40 ft: no point of its path is farther than 5 mm from the arc, nor is the middle between two.</summary>
    [Fact]
    public void AnArcIsDrawnWithinItsSagitta()
    {
        var bent = Done(LegEdits.SetCurve(Some.Job(Some.Line("main", false, [(0, 0), (40, 40)])), new("main/leg1"), new LegCurve { Radius = Feet(40), Bends = "right" }));
        var picture = Of(bent);
        var points = picture.LegPaths.Points.ToArray();
        Assert.True(points.Length > 20);
        double FromCentre(double e, double n) => Math.Sqrt((e - 40 * 0.3048) * (e - 40 * 0.3048) + n * n);
        for (var i = 2; i < points.Length; i += 2)
        {
            Assert.Equal(40 * 0.3048, FromCentre(points[i], points[i + 1]), 6);
            Assert.InRange(FromCentre((points[i - 2] + points[i]) / 2, (points[i - 1] + points[i + 1]) / 2), 40 * 0.3048 - 0.005, 40 * 0.3048 + 1e-6);
        }
        Assert.Equal("62' 10\", R 40' 0\"", picture.Legs[0].Length);
    }

    [Fact]
    public void AJobWithErrorsIsStillDrawn()
    {
        var job = Yard() with { Gates = [Some.Gate("gate", "main/leg1", "walk", 70, 4)], Obstacles = [Obstacle("gas", "main/leg2", "no-dig", 10, 12)] };
        var plan = Some.Plan(job);
        Assert.True(plan.HasErrors);
        var picture = PictureStage.Of(plan);
        Assert.Equal(0, picture.PostKinds.Length);
        Assert.Equal(4, picture.Legs.Count);
        Assert.Single(picture.Gates);
        Assert.Equal([10, 60, 12, 60], InFeet(Assert.Single(picture.Stretches).Path));
        Assert.Contains(picture.Problems, p => p.Severity == Engine.Problems.Severity.Error);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void NoFigureIsTooWildToBeDrawn(double metres)
    {
        var line = Yard().Lines[0];
        var job = Yard() with
        {
            Lines = [line with { Vertices = [.. line.Vertices.Take(3), line.Vertices[3] with { East = new(metres) }] }],
            Gates = [Some.Gate("gate", "main/leg1", "walk", 70, 4) with { NearFace = new(metres), Opening = new(metres) }],
            Obstacles = [Obstacle("gas", "main/leg2", "no-dig", 10, 12) with { To = new(metres) }],
            Pins = [new Pin { Id = new("pin"), Leg = new("main/leg1"), At = new(metres) }],
        };
        Assert.Equal(4, Of(job).Vertices.Count);
        Assert.NotNull(VertexEdits.Move(job, new("main/v4"), At(90, 0)));
    }

    [Fact]
    public void EveryJobIsDrawnWithAllOfItsPosts()
        => GenFence.Any.Always(job =>
        {
            var plan = Some.Plan(job);
            var picture = PictureStage.Of(plan);
            Assert.Equal(plan.Lines.Sum(l => l.Posts.Count), picture.PostKinds.Length);
            Assert.Equal(plan.Lines.Sum(l => l.Runs.Sum(r => r.Bays)), picture.Bays.Length / 3);
            Assert.All(picture.Bays.ToArray().Where((_, i) => i % 3 != 0), p => Assert.InRange(p, 0, picture.PostKinds.Length - 1));
        }, iter: 200, print: Json);

    /// <summary>50,000 posts on one straight line of 94.7 miles.</summary>
    [Fact]
    public void FiftyThousandPostsAreDrawnAtOnce()
    {
        var plan = Some.Plan(Some.Job(Some.Line("main", false, [(0, 0), (0, 500_000)])));
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var picture = PictureStage.Of(plan);
        Assert.True(picture.PostKinds.Length >= 50_001);
        Assert.True(watch.ElapsedMilliseconds < 1_000, $"{watch.ElapsedMilliseconds} ms");
    }
}
