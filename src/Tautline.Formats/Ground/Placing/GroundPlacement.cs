using Tautline.Formats.Coordinates;
using Tautline.Formats.Ground.Placing;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground;

/// <summary>
/// Lays the ground of a file under a job: plan coordinates from the file's system and unit to the job's own metres, with the job's ground-to-grid
/// factor; heights from their unit to metres, and by nothing else.
/// </summary>
public static class GroundPlacement
{
    private const double FarAway = 10_000; // metres; our own practice: no site is larger
    private const double LargestHeightDoubt = 300; // metres, 47 millionths of a length; our own practice

    /// <summary>Places a file that is ready.</summary>
    /// <param name="file">As read, with nothing open.</param>
    /// <param name="job">The coordinates it is laid in.</param>
    /// <param name="longestEdge">For points: from the rim inwards, faces with a longer outer edge, in metres, are taken away. Null to keep all.</param>
    public static PlacedGround Place(GroundFile file, GroundTarget job, double? longestEdge = null)
    {
        var problems = new ProblemList(file.SourceName, null, eachKind: 20);
        var placed = file is { IsReady: true, Content: { } content, PlanUnit: { } plan, HeightUnit: { } heights, System: { } system }
            && MapOf(system, job, problems) is { } map
                ? Placed(new ContentPlacer(plan, heights, map, problems) { LongestEdge = longestEdge }, content, map, job, problems)
                : new() { Sha256 = file.Sha256 };
        if (!file.IsReady) problems.Add(PlacementFindings.NotReady);
        return placed with { Sha256 = file.Sha256, Problems = problems.ToImmutable() };
    }

    /// <summary>
    /// The window of a file, in its own coordinates, that holds a part of a job; null where the two systems do not meet.
    /// </summary>
    /// <param name="fileSystem">The file's system.</param>
    /// <param name="job">The job's coordinates.</param>
    /// <param name="part">The part, in the job's metres.</param>
    /// <param name="margin">Metres added on each side.</param>
    public static GroundExtent? WindowFor(CoordinateSystemChoice fileSystem, GroundTarget job, GroundExtent part, double margin)
    {
        if (MapOf(fileSystem, job, new("")) is not { } map) return null;
        var box = part.Widened(margin);
        var window = GroundExtent.Nothing;
        // Sides may bend on another grid; their middles are taken too.
        foreach (var east in (double[])[box.West, (box.West + box.East) / 2, box.East])
            foreach (var north in (double[])[box.South, (box.South + box.North) / 2, box.North])
            {
                var (e, n) = map.ToFile(east, north);
                window = window.With(e, n);
            }
        return window.IsEmpty || !double.IsFinite(window.Size) ? null : window.Scaled(1 / UnitOf(fileSystem).ToMetres(1));
    }

    private static LinearUnit UnitOf(CoordinateSystemChoice system) =>
        system.LocalUnit ?? CoordinateSystemCatalog.FindProjected(system.EpsgCode!.Value)?.Unit ?? LinearUnit.Metre;

    private static PlacedGround Placed(ContentPlacer placer, GroundContent content, PlanMap map, GroundTarget job, ProblemList problems)
    {
        problems.Add(PlacementFindings.Placed(map.Words));
        var placed = placer.Place(content);
        if (placed.Extent is { } extent) TellPlace(extent, content, placer, job, problems);
        return placed with { How = map.Words };
    }

    private static PlanMap? MapOf(CoordinateSystemChoice file, GroundTarget job, ProblemList problems)
    {
        if (file.LocalUnit is not null)
        {
            if (job.System.EpsgCode is not { } onGrid) return new SameGridMap(job.Origin, "the site's own grid");
            problems.Add(PlacementFindings.TakenAsJobs($"EPSG:{onGrid}"));
            return new SameGridMap(new(0, 0, 1), "the job's own");
        }
        var code = file.EpsgCode!.Value;
        if (job.System.EpsgCode is not { } jobCode) return Refuse(PlacementFindings.JobHasNoGrid($"EPSG:{code}"), problems);
        if (code == jobCode) return new SameGridMap(job.Origin, $"EPSG:{code}");
        if (CoordinateSystemCatalog.FindProjected(code) is not { } fileGrid) return Refuse(PlacementFindings.UnknownSystem("ground", code), problems);
        if (CoordinateSystemCatalog.FindProjected(jobCode) is not { } jobGrid) return Refuse(PlacementFindings.UnknownSystem("job", jobCode), problems);
        if (fileGrid.Ellipsoid != jobGrid.Ellipsoid) problems.Add(PlacementFindings.NoDatumChange(Datum(fileGrid), Datum(jobGrid)));
        return new TwoGridMap(new(fileGrid), new(jobGrid), job.Origin);
    }

    private static string Datum(ProjectedSystem grid) => grid.Ellipsoid.Name == "GRS 1980" ? "NAD83" : grid.Ellipsoid.Name;

    private static PlanMap? Refuse(Finding finding, ProblemList problems)
    {
        problems.Add(finding);
        return null;
    }

    private static void TellPlace(GroundExtent extent, GroundContent content, ContentPlacer placer, GroundTarget job, ProblemList problems)
    {
        var (east, north) = (Math.Clamp(0, extent.West, extent.East), Math.Clamp(0, extent.South, extent.North));
        var away = Math.Sqrt(east * east + north * north);
        var isFrame = job.Origin is { EastMetres: 0, NorthMetres: 0 };
        if (!isFrame && away > FarAway) problems.Add(PlacementFindings.FarAway(away / 1000));
        if (job is { Origin.GridPerLocal: not 1, System.EpsgCode: { } code } && CoordinateSystemCatalog.FindProjected(code) is { } grid)
            TellFactor(grid, content, placer, job, problems);
    }

    /// <summary>The job's factor tells the height it was made for: factor over the grid's own scale is R/(R + h).</summary>
    private static void TellFactor(ProjectedSystem grid, GroundContent content, ContentPlacer placer, GroundTarget job, ProblemList problems)
    {
        var projection = new GridProjection(grid);
        if (projection.ToGeographic(job.Origin.EastMetres, job.Origin.NorthMetres) is not { } place) return;
        var elevationFactor = job.Origin.GridPerLocal / projection.PointScaleFactor(place);
        var implied = grid.Ellipsoid.MeanRadius(place.Latitude) * (1 / elevationFactor - 1);
        var middle = (placer.Metres(content.Heights.Lowest) + placer.Metres(content.Heights.Highest)) / 2;
        if (Math.Abs(implied - middle) > LargestHeightDoubt) problems.Add(PlacementFindings.FactorForOtherHeight(implied, middle));
    }
}
