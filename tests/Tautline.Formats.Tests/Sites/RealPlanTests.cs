using Tautline.Formats.Sites;

namespace Tautline.Formats.Tests.Sites;

/// <summary>LandXML of the shared folder plans/. Areas and lengths were stored by the exporting program; the rest is the README's, by plain Python.</summary>
public sealed class RealPlanTests
{
    [Fact]
    public void ASubdivisionHasItsParcels()
    {
        var file = SiteData.Shared("plans/subdivision-1.1-feet.xml");

        var parcels = file.Lines().Where(f => f.Kind == "Parcel").ToList();
        Assert.Equal(83, parcels.Count);
        Assert.All(parcels, p => Assert.Equal(double.Parse(p.Tags["area"], System.Globalization.CultureInfo.InvariantCulture), Math.Abs(p.Area()), 1e-4));
        Assert.Equal(8475233.926, parcels.Sum(p => Math.Abs(p.Area())), 2e-3);
        Assert.Equal(51, parcels.Count(p => p.Vertices.Any(v => v.Bulge != 0)));
        (string Name, double Area, double Perimeter)[] lots = [("Lot #1", 41278.2994, 934.71625), ("Lot #2", 65396.5387, 1027.45999), ("Lot #3", 59257.5202, 1005.84435)];
        foreach (var (name, area, perimeter) in lots)
        {
            var lot = Assert.Single(parcels, p => p.Label == name);
            Assert.Equal(area, Math.Abs(lot.Area()), 1e-4);
            Assert.Equal(perimeter, lot.Length(), 1e-4);
            Assert.True(lot.Closed);
        }
        Assert.Equal(SiteUnit.Foot, file.Claims.Unit);
        Assert.Equal("LandXML 1.1", file.FormatName);
    }

    [Fact]
    public void ASubdivisionHasItsAlignments()
    {
        var alignments = SiteData.Shared("plans/subdivision-1.1-feet.xml").Lines().Where(f => f.Kind == "Alignment").ToDictionary(f => f.Label);

        (string Name, double Length)[] facts =
            [("1stave", 773.57982422), ("2ndave", 811.35096977), ("3rdave", 631.56333512), ("4thave", 971.73509472), ("loop", 7494.17361643), ("mainst", 1390.31276006)];
        Assert.Equal(facts.Select(f => f.Name), alignments.Keys.Order(StringComparer.Ordinal));
        // "Recomputation agrees to the fourth decimal."
        foreach (var (name, length) in facts) Assert.Equal(length, alignments[name].Length(), 1e-4);
        Assert.Equal(11, alignments["loop"].Vertices.Count(v => v.Bulge != 0));
    }

    [Fact]
    public void ASubdivisionHasItsPointsAndTheirMissingHeights()
    {
        var file = SiteData.Shared("plans/subdivision-1.1-feet.xml");

        var points = file.Points().ToList();
        Assert.Equal(639, points.Count);
        Assert.Equal(286, points.Count(p => double.IsNaN(p.Vertices[0].Z)));
        Assert.Equal(400.3534, points.Min(p => p.Vertices[0].Y), 5e-5);
        Assert.Equal(3316.8604, points.Max(p => p.Vertices[0].Y), 5e-5);
        Assert.Equal(-626.2777, points.Min(p => p.Vertices[0].X), 5e-5);
        Assert.Equal(2861.8900, points.Max(p => p.Vertices[0].X), 5e-5);
        Assert.Contains("Surface 'EG': 713 points", string.Join('\n', file.Problems.Select(p => p.Message)), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(2, file.Skipped("Surface"));
    }

    [Fact]
    public void ARoadGivenOnlyByTangentPointsAndStationsIsPutTogether()
    {
        var file = SiteData.Shared("plans/sugar-grove-road-station-equations.xml");

        var road = Assert.Single(file.Lines(), f => f.Label == "Sugar Grove Road");
        Assert.Equal(4731.987549, road.Length(), 0.01);
        Assert.Equal((0, 0), (Math.Round(road.Vertices[0].Y, 1) + 0.0, Math.Round(road.Vertices[0].X, 1) + 0.0));
        var steps = Enumerable.Range(0, road.Vertices.Length - 1)
            .Select(i => SiteGeometry.StepLength(SiteGeometry.Distance(road.Vertices[i], road.Vertices[i + 1]), road.Vertices[i].Bulge)).ToList();
        // Tangents and curves as the README has them; directions are written to four digits of a degree, which at 615 ft is a thousandth of a foot.
        double[] facts = [615.3209, 588.3817, 847.567, 1069.9542, 726.4038, 506.1552, 378.2052];
        Assert.Equal(facts.Length, steps.Count);
        for (var i = 0; i < facts.Length; i++) Assert.Equal(facts[i], steps[i], 5e-3);
        Assert.Equal(50000, road.Stations!.Start);
    }

    [Fact]
    public void StationEquationsNameTheStationsBehindThem()
    {
        var file = SiteData.Shared("plans/sugar-grove-road-station-equations.xml");

        var west = Assert.Single(file.Lines(), f => f.Label == "Penrose Road West");
        Assert.Equal([new StationEquation(0, 50909, 1000)], west.Stations!.Equations);
        Assert.Equal(1114.7237, west.Stations.At(114.7237), 1e-9);
        Assert.Equal(751.2066, west.Length(), 1e-3);
        var east = Assert.Single(file.Lines(), f => f.Label == "Penrose Road East");
        Assert.Equal([new StationEquation(734.1455, 50909, 2734.1455)], east.Stations!.Equations);
        Assert.Equal(734.1455, east.Length(), 1e-3);
        Assert.Equal(2734.1455, east.Stations.At(734.1455), 1e-9);
        Assert.Equal("27+34.15", Stationing.Text(2734.1455, feet: true));
    }
}
