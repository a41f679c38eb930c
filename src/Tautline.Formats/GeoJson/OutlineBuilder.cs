using System.Collections.Immutable;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.GeoJson;

/// <summary>
/// Lays lines on the grid, chooses the job's origin (the first position rounded to whole 100 m) and brings lengths to
/// the ground: every distance from the origin is divided by the combined factor at the middle of the outline. One factor
/// for the whole job keeps shapes and angles; what it neglects is reported as <see cref="CoordinateSystemInfo.ScaleSpread"/>.
/// </summary>
internal sealed class OutlineBuilder(List<RawLine> lines, FileFrame frame, ImportOptions options, ProblemList problems)
{
    private const double OriginStep = 100; // m
    private const double LargestQuietSpread = 2e-5; // 20 mm in a kilometre, about what a good tape does
    private const double LargestGrid = 1e8; // m; no grid on the earth has such numbers
    private const double NearlyClosedGap = 0.5; // m

    private readonly LinearUnit _heightUnit = options.ElevationUnit ?? frame.Unit;

    private sealed record GridLine(RawLine Raw, (double East, double North)[] Places);

    public ImportResult Build()
    {
        var grid = lines.Select(l => new GridLine(l, [.. l.Positions.Select(frame.ToGrid)])).Where(OnTheGrid).ToList();
        if (grid.Count == 0) return new();
        var bounds = grid.SelectMany(l => l.Places).Aggregate(PlanBounds.Nothing, (box, p) => box.With(p.East, p.North));
        if (Describe(bounds) is not { } system) return new();
        var origin = Origin(grid[0].Places[0], system);
        TellSize(bounds);
        TellUnits();
        return new() { System = system, Origin = origin, Lines = [.. grid.Select(l => ToLine(l, origin))] };
    }

    private bool OnTheGrid(GridLine line)
    {
        if (line.Places.All(p => Math.Abs(p.East) < LargestGrid && Math.Abs(p.North) < LargestGrid)) return true; // false for NaN
        problems.Add(GeoJsonFindings.NoGridPosition(line.Raw.Name), line.Raw.Feature, line.Raw.Offset);
        return false;
    }

    private static JobOrigin Origin((double East, double North) first, CoordinateSystemInfo system) =>
        new(ToStep(first.East), ToStep(first.North), system.LengthsAreGround ? system.CombinedFactor : 1);

    private static double ToStep(double metres) => Math.Round(metres / OriginStep) * OriginStep;

    private CoordinateSystemInfo? Describe(PlanBounds bounds)
    {
        if (frame.Projection is not { } projection) return Local();
        if (projection.ToGeographic(bounds.MiddleX, bounds.MiddleY) is { } middle) return Describe(projection, middle, bounds);
        problems.Add(GeoJsonFindings.OutsideArea(frame.FileCoordinates, "has no place on the earth", ""));
        return null;
    }

    private CoordinateSystemInfo Describe(GridProjection projection, GeographicPoint middle, PlanBounds bounds)
    {
        var scale = projection.PointScaleFactor(middle);
        var height = SiteElevation();
        var radius = projection.System.Ellipsoid.MeanRadius(middle.Latitude);
        var system = new CoordinateSystemInfo
        {
            EpsgCode = projection.System.EpsgCode,
            Name = projection.System.Name,
            FileCoordinates = frame.FileCoordinates,
            Source = projection.System.Source,
            Middle = middle,
            PointScaleFactor = scale,
            SiteElevationMetres = height,
            ElevationFactor = radius / (radius + height),
            ScaleSpread = Spread(projection, bounds, scale),
            LengthsAreGround = options.Lengths == LengthKind.Ground,
        };
        TellLengths(system);
        return system;
    }

    private CoordinateSystemInfo Local() => new()
    {
        Name = $"local {frame.Unit.Name()}",
        FileCoordinates = frame.FileCoordinates,
        Source = "stated by the user",
        LengthsAreGround = true,
    };

    private void TellLengths(CoordinateSystemInfo system)
    {
        problems.Add(system.LengthsAreGround ? GeoJsonFindings.GroundLengths(system) : GeoJsonFindings.GridLengths(system));
        if (system.ScaleSpread > LargestQuietSpread) problems.Add(GeoJsonFindings.WideSpread(system.ScaleSpread));
    }

    private double SiteElevation()
    {
        if (options.SiteElevationMetres is { } stated) return Plausible(stated);
        var heights = lines.SelectMany(l => l.Positions).Select(p => _heightUnit.ToMetres(p.Z)).ToList();
        if (heights.Exists(double.IsNaN)) return ZeroBecause(GeoJsonFindings.HeightAssumedZero);
        return Plausible(heights.Average());
    }

    // From below the Dead Sea's shore to above the highest summit.
    private double Plausible(double height) =>
        height is >= -450 and <= 9000 ? height : ZeroBecause(GeoJsonFindings.HeightImplausible(height));

    private double ZeroBecause(Finding finding)
    {
        problems.Add(finding);
        return 0;
    }

    private static double Spread(GridProjection projection, PlanBounds box, double middle)
    {
        (double East, double North)[] corners = [(box.Left, box.Bottom), (box.Left, box.Top), (box.Right, box.Bottom), (box.Right, box.Top)];
        return corners.Select(c => projection.ToGeographic(c.East, c.North)).OfType<GeographicPoint>()
            .Select(p => Math.Abs(projection.PointScaleFactor(p) / middle - 1)).DefaultIfEmpty(0).Max();
    }

    private void TellSize(PlanBounds bounds)
    {
        if (bounds.Size < 0.1) problems.Add(GeoJsonFindings.VerySmall(bounds.Size));
        if (bounds.Size > 100_000) problems.Add(GeoJsonFindings.VeryLarge(bounds.Size));
    }

    private void TellUnits()
    {
        var assumed = options.ElevationUnit is null && _heightUnit != LinearUnit.Metre;
        if (assumed && lines.Exists(l => l.Positions.Exists(p => p.HasZ))) problems.Add(GeoJsonFindings.ElevationsConverted(_heightUnit));
    }

    private ImportedLine ToLine(GridLine line, JobOrigin origin)
    {
        var points = ImmutableArray.CreateBuilder<ImportedPoint>(line.Places.Length);
        for (var i = 0; i < line.Places.Length; i++)
        {
            var (east, north) = origin.ToLocal(line.Places[i].East, line.Places[i].North);
            points.Add(new(east, north, Height(line.Raw.Positions[i])));
        }

        TellGap(line.Raw, points[0], points[^1]);
        return new() { Name = line.Raw.Name, Closed = line.Raw.Closed, Points = points.MoveToImmutable(), Properties = line.Raw.Properties };
    }

    private double? Height(RawPosition position) => position.HasZ ? Math.Round(_heightUnit.ToMetres(position.Z), 6) : null;

    private void TellGap(RawLine line, ImportedPoint first, ImportedPoint last)
    {
        if (line.Closed || line.Positions.Count < 4) return;
        double east = last.East - first.East, north = last.North - first.North;
        var gap = Math.Sqrt(east * east + north * north);
        if (gap is > 0 and < NearlyClosedGap) problems.Add(GeoJsonFindings.NearlyClosed(line.Name, gap), line.Feature, line.Offset);
    }
}
