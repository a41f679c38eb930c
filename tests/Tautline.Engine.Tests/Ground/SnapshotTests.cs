using Tautline.Engine.Jobs;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Engine.Site.Ground;
using Tautline.Engine.Site.Snapshot;

namespace Tautline.Engine.Tests.Ground;

/// <summary>The ground a job keeps: real surfaces cut to a corridor and planned on. Files as data/terrain/README.md describes them.</summary>
public sealed class SnapshotTests
{
    private static readonly GroundSource source = new() { File = "survey", Sha256 = "00" };

    /// <summary>The gully grid about a local origin of 559700 east, 4380300 north.</summary>
    private static GridSurface Gully()
    {
        var (frame, heights, noData) = SharedGround.AsciiGrid("terrain/west-bijou-gully-3m.asc");
        return new GridSurface(frame with { West = frame.West - 559700, North = frame.North - 4380300 }, heights, noData);
    }

    private static TriangleSurface Lot()
    {
        var (points, faces) = SharedGround.LandXml("terrain/lot-survey-tin-metres.xml", "Surface 2018-00-00");
        return TriangleSurface.Of([.. points.Select(p => p with { East = p.East - 4950, North = p.North - 4960 })], faces);
    }

    private static Job Metres(params (double East, double North)[] points)
        => Some.Job(Some.Line("main", false, [.. points.Select(p => (p.East / 0.3048, p.North / 0.3048))]));

    [Fact]
    public void AJobPlansOnTheGullyItKeeps()
    {
        var surface = Gully();
        var job = Metres((55, 60), (70, 100), (75, 128));
        var kept = job with { Ground = SnapshotCutter.Cut(surface, job, new Length(8), source) };
        var line = Some.Plan(kept).Lines[0];
        Assert.True(line.Posts.Count > 20);
        foreach (var post in line.Posts)
            Assert.Equal(surface.HeightAt(post.East.Metres, post.North.Metres)!.Value, post.GroundHeight!.Value.Metres, 1.1e-3);
    }

    /// <summary>Bilinear at (559770, 4380400) = 1712.681020, by the README.</summary>
    [Fact]
    public void TheKeptGroundHasTheStatedHeight()
    {
        var job = Metres((70, 95), (70, 105));
        var line = Some.Plan(job with { Ground = SnapshotCutter.Cut(Gully(), job, new Length(3), source), Pins = [new Pin { Id = new("p"), Leg = new("main/leg1"), At = new Length(5) }] }).Lines[0];
        Assert.Equal(1712.681020, line.Posts.Single(p => Math.Abs(p.Station.Metres - 5) < 1e-6).GroundHeight!.Value.Metres, 1e-3);
    }

    [Fact]
    public void TrianglesKeptGiveTheSameProfile()
    {
        var surface = Lot();
        var job = Metres((10, 8), (40, 12), (70, 30));
        var kept = SnapshotCutter.Cut(surface, job, new Length(2), source)!;
        Assert.True(kept.Faces.Count / 3 < surface.FaceCount);
        var again = TriangleSurface.Of([.. kept.Points.Chunk(3).Select(p => new GroundPoint(p[0], p[1], p[2]))], kept.Faces);
        var path = GroundPath.Through(new(10, 8), new(40, 12), new(70, 30));
        var (whole, cut) = (surface.Along(path), again.Along(path));
        Assert.Equal(whole.Gaps.Count, cut.Gaps.Count);
        foreach (var stretch in whole.Stretches)
            foreach (var point in stretch.Points.Skip(1).SkipLast(1))
                Assert.Equal(point.Height, cut.HeightAt(point.Station)!.Value, 1e-4);
    }

    [Fact]
    public void ALineMayBeMovedWithinTheCorridorAndNotOutOfIt()
    {
        var job = Metres((60, 90), (70, 110));
        var kept = SnapshotCutter.Cut(Gully(), job, new Length(8), source);
        Assert.DoesNotContain(Some.Plan(Metres((65, 90), (75, 110)) with { Ground = kept }).Problems, p => p.Code is ProblemCode.GroundGap or ProblemCode.GroundOutside);
        Assert.Contains(Some.Plan(Metres((20, 190), (30, 210)) with { Ground = kept }).Problems, p => p.Code == ProblemCode.GroundOutside);
    }

    [Fact]
    public void AKeptSurfaceSurvivesTheJobFile()
    {
        var job = Metres((60, 90), (70, 110));
        job = job with { Ground = SnapshotCutter.Cut(Gully(), job, new Length(8), source) };
        var back = JobFile.Read(JobFile.Write(job)).Job!;
        Assert.Equal(job.Ground!.Grid!.Parts.SelectMany(p => p.Heights), back.Ground!.Grid!.Parts.SelectMany(p => p.Heights));
        Assert.Equal(PlanFile.Hash(Some.Plan(job)), PlanFile.Hash(Some.Plan(back)));
    }

    [Theory]
    [InlineData("points", "{\"points\": [1, 2], \"faces\": [0, 1, 2]}")]
    [InlineData("faces", "{\"points\": [0, 0, 0, 1, 0, 0, 0, 1, 0], \"faces\": [0, 1, 3]}")]
    [InlineData("grid", "{\"grid\": {\"rows\": 1, \"columns\": 5, \"west\": 0, \"north\": 0, \"cellEast\": 1, \"cellNorth\": 1}}")]
    [InlineData("grid", "{\"grid\": {\"rows\": 3, \"columns\": 3, \"west\": 0, \"north\": 0, \"cellEast\": 1, \"cellNorth\": 1, \"parts\": [{\"row\": 2, \"column\": 2, \"heights\": [1, 2]}]}}")]
    public void AKeptSurfaceThatCannotBeIsToldAtItsPlace(string where, string ground)
    {
        var text = System.Text.Encoding.UTF8.GetString(JobFile.Write(Some.StraightHundred()));
        var end = text.LastIndexOf('}');
        var job = JobFile.Read(System.Text.Encoding.UTF8.GetBytes($"{text[..end]}, \"ground\": {ground.Insert(1, "\"source\": {\"file\": \"x\", \"sha256\": \"00\"}, \"width\": 5, ")}}}")).Job!;
        var problem = Assert.Single(Some.Plan(job).Problems, p => p.Code == ProblemCode.SnapshotBroken);
        Assert.StartsWith($"ground.{where}", problem.Place.Path, StringComparison.Ordinal);
    }
}
