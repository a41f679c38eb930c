using Tautline.Formats.Import;
using Tautline.Formats.Sites;
using Tautline.Formats.Sites.Xml;

namespace Tautline.Formats.Tests.Sites;

/// <summary>Files of the shared folders lines/, survey/ and malformed/. Lengths in degrees are geodesic on WGS 84, by PROJ 9.1; all facts are the READMEs'.</summary>
public sealed class RealLineTests
{
    [Fact]
    public void ABerlinExtractHasItsFencesAndGates()
    {
        var file = SiteData.Shared("lines/neukolln-berlin.osm");

        var fences = file.Lines().Where(f => f.Layer == "fence").ToList();
        Assert.Equal(15, fences.Count);
        Assert.Equal(691.34, fences.Sum(Degrees.Length), 0.01);
        var gates = file.Points().Where(f => f.Tags.GetValueOrDefault("barrier") == "gate").ToList();
        Assert.Equal(21, gates.Count);
        Assert.Equal(2, file.Lines().Count(f => f.Layer == "gate" && f.Tags["barrier"] == "gate"));
        var places = fences.SelectMany(f => f.Vertices).Select(v => (v.X, v.Y)).ToHashSet();
        Assert.Equal(9, file.Points().Count(f => places.Contains((f.Vertices[0].X, f.Vertices[0].Y))));
        var chainLink = Assert.Single(fences, f => f.Tags.GetValueOrDefault("fence_type") == "chain_link");
        Assert.Equal(("way/857838260", 5), (chainLink.Tags["osm"], chainLink.Vertices.Length));
        Assert.Equal(54.77, Degrees.Length(chainLink), 0.005);
        Assert.Contains(file.Points(), p => p.Tags["osm"] == "node/7997479989" && chainLink.Vertices.Any(v => (v.X, v.Y) == (p.Vertices[0].X, p.Vertices[0].Y)));
        var lower = Assert.Single(fences, f => f.Tags["osm"] == "way/1071898073");
        Assert.Equal(32, lower.Vertices.Length);
        Assert.Equal(137.94, Degrees.Length(lower), 0.005);
        Assert.Equal(2, file.Points().Count(p => p.Tags.GetValueOrDefault("barrier") == "swing_gate" && lower.Vertices.Any(v => (v.X, v.Y) == (p.Vertices[0].X, p.Vertices[0].Y))));
        var ring = Assert.Single(fences, f => f.Tags["osm"] == "way/982345699");
        Assert.Equal((true, 48, "0.3"), (ring.Closed, ring.Vertices.Length, ring.Tags["height"])); // 49 nodes, the last is the first
        Assert.Equal(252.27, Degrees.Length(ring), 0.005);
        Assert.DoesNotContain(file.Layers, l => l.Proposed && l.Name != "fence");
        Assert.Equal(18, file.Skipped("relation"));
    }

    [Fact]
    public void ALondonSquareHasItsTwoClosedFences()
    {
        var file = SiteData.Shared("lines/nelson-square-london.osm");

        var fences = file.Lines().Where(f => f.Layer == "fence").ToList();
        Assert.Equal(["way/58780085", "way/93197239"], fences.Select(f => f.Tags["osm"]).Order(StringComparer.Ordinal));
        Assert.All(fences, f => Assert.True(f.Closed));
        Assert.Equal(391.97, fences.Sum(Degrees.Length), 0.005);
        Assert.Equal((16, 11), (fences.Max(f => f.Vertices.Length), fences.Min(f => f.Vertices.Length)));
        Assert.Equal(8, file.Points().Count(f => f.Tags.GetValueOrDefault("barrier") == "gate"));
        var places = fences.SelectMany(f => f.Vertices).Select(v => (v.X, v.Y)).ToHashSet();
        Assert.Equal(5, file.Points().Count(f => places.Contains((f.Vertices[0].X, f.Vertices[0].Y))));
    }

    [Fact]
    public void MountainTracksAreNotJoined()
    {
        var file = SiteData.Shared("lines/korita-zbevnica.gpx");

        Assert.Equal("GPX 1.0", file.FormatName);
        var tracks = file.Lines().ToList();
        double[] lengths = [8643.67, 2285.05, 3985.57];
        Assert.Equal(3, tracks.Count);
        for (var i = 0; i < 3; i++) Assert.Equal(lengths[i], Degrees.Length(tracks[i]), 0.005);
        Assert.Equal(14914.28, tracks.Sum(Degrees.Length), 0.01);
        Assert.Equal(358 + 176 + 337 + 2, file.Positions);
        Assert.Equal((722.087402, 1050.858154), (tracks[0].Vertices.Min(v => v.Z), tracks[0].Vertices.Max(v => v.Z)));
        Assert.Equal(2, file.Points().Count());
        Assert.Equal(1, file.Skipped("trkseg")); // the empty one
    }

    [Fact]
    public void ATrackWithSpikesIsReadAndItsJumpsAreTold()
    {
        var file = SiteData.Shared("malformed/track-with-extremes.gpx");

        Assert.Equal(25, file.Positions);
        var track = Assert.Single(file.Lines());
        Assert.Equal(2207.08, Degrees.Length(track), 0.005);
        Assert.Equal((10, 30), (file.Extent!.Value.Lowest, file.Extent.Value.Highest));
        // "Two position spikes and one height spike put in on purpose."
        Assert.Contains("at points 7, 14;", file.Problem("Jumps").Message);
        Assert.Contains("at point 3.", file.Problem("HeightJumps").Message);
        Assert.Equal(ProblemSeverity.Warning, file.Problem("Jumps").Severity);
        Assert.False(file.HasErrors);
    }

    [Fact]
    public void HarbourWallsHaveTheirLengthsAndNoHeights()
    {
        var file = SiteData.Shared("lines/harbour-walls.kml");

        var walls = file.Lines().ToList();
        Assert.Equal(2, walls.Count);
        Assert.Equal((24.785, 25.094), (Math.Round(Degrees.Length(walls[0]), 3), Math.Round(Degrees.Length(walls[1]), 3)));
        Assert.All(walls, w => Assert.All(w.Vertices, v => Assert.True(double.IsNaN(v.Z))));
        Assert.All(walls, w => Assert.Equal("SF Marina Harbor Master", w.Label));
    }

    [Fact]
    public void ACutKmlIsRefusedWithItsLine()
    {
        var file = SiteData.Shared("malformed/truncated.kml");

        Assert.Empty(file.Features);
        var problem = file.Problem("NotXml");
        Assert.Equal(ProblemSeverity.Error, problem.Severity);
        // The list breaks off in line 36; the text ends there.
        Assert.InRange(problem.Where.Line!.Value, 35, 38);
        Assert.Contains("'Building 40'", problem.Message);
    }

    [Fact]
    public void StockpilesHaveTheirOutlinesAndNoHeights()
    {
        var file = SiteData.Shared("lines/alabama-stockpiles-ftus.shp");

        var piles = file.Lines().ToList();
        Assert.Equal(16, piles.Count);
        Assert.Equal(2807, file.Positions);
        Assert.Equal(10206.324, piles.Sum(p => p.Length()), 1e-3);
        Assert.Equal(389885.017, piles.Sum(p => Math.Abs(p.Area())), 1e-2);
        var box = file.Extent!.Value;
        Assert.Equal((2185641.2124, 1171251.0001), (Math.Round(box.West, 4), Math.Round(box.South, 4)));
        Assert.Equal((2188474.6623, 1172980.7133), (Math.Round(box.East, 4), Math.Round(box.North, 4)));
        Assert.All(piles, p => Assert.All(p.Vertices, v => Assert.True(double.IsNaN(v.Z))));
        Assert.All(piles, p => Assert.Equal("Feet", p.Tags["MapUnits"]));
        // The file's own fault: every record leaves its measures out of its length (GDAL finds the records by the .shx).
        Assert.Contains("16 records are longer", file.Problem("MeasuresNotCounted").Message);
        // What the definition says, and what its number would say: Foot_US and EPSG:26930, which is in metres.
        Assert.Equal((SiteUnit.SurveyFoot, 26930), (file.Claims.Unit, file.Claims.SystemCode));
    }

    [Fact]
    public void AnOutlineInFeetKeepsItsClaim()
    {
        var file = SiteData.Shared("lines/autzen-selection-feet.geojson");

        var ring = Assert.Single(file.Lines());
        Assert.True(ring.Closed);
        Assert.Equal(19, file.Positions);
        Assert.Equal(3212.569, ring.Length(), 6e-4);
        Assert.Equal(703744.58, Math.Abs(ring.Area()), 6e-3);
        Assert.Equal(2991, file.Claims.SystemCode);
        Assert.Equal((420.5098, 438.7100), (Math.Round(file.Extent!.Value.Lowest, 4), Math.Round(file.Extent.Value.Highest, 4)));
    }

    [Fact]
    public void AWalkIsInDegrees()
    {
        var file = SiteData.Shared("lines/trek.geojson");

        var line = Assert.Single(file.Lines());
        Assert.Equal(120, line.Vertices.Length);
        Assert.Equal(5031.471, Degrees.Length(line), 1e-3);
        Assert.True(file.Claims.Degrees);
        Assert.Equal((1298, 2295), (file.Extent!.Value.Lowest, file.Extent.Value.Highest));
    }

    [Fact]
    public void ASurveyOfAParkAsksForItsColumnsAndThenHasItsPoints()
    {
        var bytes = SharedData.Read("survey/independence-park-topo0.asc");
        var asked = SiteReader.Read(bytes, new() { SourceName = "independence-park-topo0.asc" });
        Assert.Contains(asked.Questions, q => q.Kind == SiteQuestionKind.Columns);

        var file = SiteReader.Read(bytes, SiteAnswers.Apply(new(), SiteQuestionKind.Columns, "PNEZD")!);

        Assert.Equal(1311, file.Features.Length);
        Assert.Equal(94, file.Features.Count(f => f.Layer == "EC"));
        var box = file.Extent!.Value;
        Assert.Equal((538402.68483, 539259.64397, 1454146.84700, 1455709.87032), (box.South, box.North, box.West, box.East));
        Assert.Equal((583.02092, 701.09828), (box.Lowest, box.Highest));
    }

    [Fact]
    public void APrintOutOfATotalStationAsksForBoth()
    {
        var bytes = SharedData.Read("survey/oxford-archaeology-tcr705.txt");
        var asked = SiteReader.Read(bytes);
        Assert.Equal([SiteQuestionKind.Columns, SiteQuestionKind.PlaceHolders], asked.Questions.Select(q => q.Kind).Order().Reverse().OrderBy(k => k));

        var options = SiteAnswers.Apply(SiteAnswers.Apply(new(), SiteQuestionKind.Columns, "PENZD")!, SiteQuestionKind.PlaceHolders, "leave-out")!;
        var file = SiteReader.Read(bytes, options);

        Assert.Equal(42, file.Features.Length);
        var box = file.Extent!.Value;
        Assert.Equal((993.626, 1004.293, 997.323, 1008.034), (box.West, box.East, box.South, box.North));
    }
}
