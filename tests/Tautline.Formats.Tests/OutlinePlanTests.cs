using Tautline.Engine;
using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Layout;
using Tautline.Engine.Plans;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Formats.Tests;

/// <summary>Real outlines of ../shared/data/lines from file to plan; their facts stand in that folder's README.</summary>
public sealed class OutlinePlanTests
{
    private static readonly Spec sixFoot = new() { Id = new("fence"), Height = Length.FromFeet(6), Brace = "no" };

    private static Plan PlanOf(string file, ImportOptions options, bool grades)
    {
        var import = GeoJsonReader.Read(SharedData.Read(file), options);
        Assert.False(import.HasErrors);
        var job = OutlineJob.Make(import, new("outline"), file, UnitSystem.UsCustomary, sixFoot, grades);
        var reread = JobFile.Read(JobFile.Write(job));
        Assert.Empty(reread.Problems);
        return JobPlanner.Plan(reread.Job!, FenceCatalog.BuiltIn(), Rules.BuiltIn(), BuiltFacts.None);
    }

    /// <summary>Perimeter 3212.569 in the file's international feet (README of the folder); grid lengths asked for.</summary>
    [Fact]
    public void TheAutzenOutlineIsPlannedEndToEnd()
    {
        var options = new ImportOptions { CoordinateSystem = CoordinateSystemChoice.Epsg(2992), Lengths = LengthKind.Grid };
        var plan = PlanOf("lines/autzen-selection-feet.geojson", options, grades: false);
        Assert.False(plan.HasErrors);
        var line = Assert.Single(plan.Lines);
        Assert.True(line.Closed);
        Assert.InRange(line.Level.Feet, 3212.568, 3212.570);
        Assert.Equal(12, line.Posts.Count(p => p.Kind is PostKind.Corner) + plan.Basis.Lines[0].Set.Laid.Terminals.Bends.Count);
        Assert.Equal(line.Level.Nanometres, line.Runs.Sum(r => r.Level.Nanometres));
        Assert.All(line.Runs, r => Assert.True(r.LargestBay.Feet <= 10.0001));
    }

    /// <summary>A mountain walk of 5031.471 m geodesic, taken level: no fence anyone would build, but every leg and corner is planned.</summary>
    [Fact]
    public void TheTrekIsPlannedLevel()
    {
        var plan = PlanOf("lines/trek.geojson", new ImportOptions { SiteElevationMetres = 0 }, grades: false);
        Assert.False(plan.HasErrors);
        var line = Assert.Single(plan.Lines);
        Assert.InRange(line.Level.Metres, 5031.44, 5031.50);
        Assert.Equal(line.Level, line.Along);
        Assert.Equal(line.Level.Nanometres, line.Runs.Sum(r => r.Level.Nanometres));
        Assert.NotEmpty(plan.Takeoff);
    }

    /// <summary>Its elevations climb nine legs steeper than a fence can: each is told, and there is no half plan.</summary>
    [Fact]
    public void GradesNoFenceFollowsAreToldLegByLeg()
    {
        var plan = PlanOf("lines/trek.geojson", new ImportOptions { SiteElevationMetres = 0 }, grades: true);
        Assert.Equal(9, plan.Problems.Count(p => p.Code == ProblemCode.GradeSteep));
        Assert.Empty(plan.Lines);
        Assert.Empty(plan.Takeoff);
    }
}
