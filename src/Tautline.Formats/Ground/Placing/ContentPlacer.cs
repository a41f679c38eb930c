using Tautline.Engine.Site.Ground;
using Tautline.Formats.Coordinates;
using Tautline.Formats.Import;

namespace Tautline.Formats.Ground.Placing;

/// <summary>Makes surfaces of a file's content, in the job's metres.</summary>
internal sealed class ContentPlacer(LinearUnit plan, LinearUnit heights, PlanMap map, ProblemList problems)
{
    /// <summary>For points, metres; null to keep all faces.</summary>
    public double? LongestEdge { get; init; }

    public double Metres(double height) => heights.ToMetres(height);

    public PlacedGround Place(GroundContent content) => content switch
    {
        PointContent points => Points(points),
        FaceContent faces => Faces(faces),
        _ => Grid((GridContent)content),
    };

    private (double East, double North) ToJob(double east, double north) => map.ToJob(plan.ToMetres(east), plan.ToMetres(north));

    private GroundPoint PointOf(double east, double north, double height)
    {
        var (e, n) = ToJob(east, north);
        return new(e, n, Metres(height));
    }

    private PlacedGround Points(PointContent content)
    {
        // A point without height becomes unusable, and keeps its place in the count for the breaklines.
        var all = content.Points.Select(p => PointOf(p.East, p.North, p.Height ?? double.NaN)).ToArray();
        var with = Enumerable.Range(0, all.Length).Where(i => content.Points[i].Height is not null).ToArray();
        var made = Triangulation.Of(new()
        {
            Points = [.. with.Select(i => all[i])],
            Breaklines = [.. content.Breaklines.Select(l => new Breakline([.. l.Points.Select(i => all[i])]))],
            LongestEdge = LongestEdge,
        });
        Tell(made.Findings, number => number < with.Length ? NameOf(content.Points[with[(int)number]]) : "A point of a breakline");
        if (made.Triangles is not { } triangles)
        {
            problems.Add(PlacementFindings.NoSurface);
            return new() { Sha256 = "" };
        }
        problems.Add(PlacementFindings.Made(with.Length, triangles.FaceCount));
        TellSteepness(triangles);
        return new() { Surface = made.Surface, Extent = ExtentOf(triangles), Sha256 = "" };
    }

    private static string NameOf(SurveyPoint point) => GroundFindings.Text($"{(point.Name.Length > 0 ? $"Point {point.Name}" : "The point")} (line {point.Line})");

    private void TellSteepness(TriangleSurface triangles)
    {
        var slopes = new FaceContent
        {
            Name = "",
            Points = [.. triangles.Points.ToArray().Select(p => new FilePoint(p.East, p.North, p.Height))],
            Faces = [.. triangles.Corners],
        }.Slopes;
        // Already in metres both ways; the words are those of the units stated.
        if (slopes is not null) SteepGround.Tell(slopes, plan, heights, problems, factor: 1);
    }

    private PlacedGround Faces(FaceContent content)
    {
        var surface = TriangleSurface.Of([.. content.Points.Select(p => PointOf(p.East, p.North, p.Height))], content.Faces);
        Tell(surface.Findings, number => GroundFindings.Text($"Point {number + 1} of the file"));
        return new() { Surface = Trimmed(surface, content), Extent = ExtentOf(surface), Sha256 = "" };
    }

    /// <summary>Faces marked as not seen are the exporter's own trimming; only a surface without any is cut along its boundaries.</summary>
    private IGroundSurface Trimmed(TriangleSurface surface, FaceContent content)
    {
        var outer = content.Boundaries.FirstOrDefault(b => b.Kind.Equals("outer", StringComparison.OrdinalIgnoreCase));
        var voids = content.Boundaries.Where(b => b.Kind.Equals("void", StringComparison.OrdinalIgnoreCase)).ToList();
        if (content.InvisibleFaces > 0 || (outer is null && voids.Count == 0)) return surface;
        problems.Add(LandXml.LandXmlFindings.Trimmed(voids.Count + (outer is null ? 0 : 1)));
        var trimmed = TrimmedSurface.Of(surface, outer is null ? null : Ring(outer), [.. voids.Select(Ring)]);
        Tell(trimmed.Findings, _ => "");
        return trimmed;
    }

    private IReadOnlyList<PlanPoint> Ring(FileLine line) => [.. line.Points.Select(p => ToJob(p.East, p.North)).Select(p => new PlanPoint(p.East, p.North))];

    private PlacedGround Grid(GridContent content)
    {
        // On the job's own grid the cells stay upright and only change size; else the surface is asked where it lies.
        var origin = map is SameGridMap same ? same.Origin : new(0, 0, 1);
        var surface = SurfaceOf(content, FrameOf(content, origin));
        var extent = content.Extent.Scaled(plan.ToMetres(1));
        return new() { Surface = map is SameGridMap ? surface : new MappedSurface(surface, map), Extent = InJob(extent), Sha256 = "" };
    }

    private GridFrame FrameOf(GridContent content, JobOrigin origin) => new(
        content.Rows, content.Columns,
        (plan.ToMetres(content.West) - origin.EastMetres) / origin.GridPerLocal,
        (plan.ToMetres(content.North) - origin.NorthMetres) / origin.GridPerLocal,
        plan.ToMetres(content.CellEast) / origin.GridPerLocal,
        plan.ToMetres(content.CellNorth) / origin.GridPerLocal,
        GridHeights.AtCentres);

    // Heights in metres are used as they are, not copied.
    private GridSurface SurfaceOf(GridContent content, GridFrame frame)
    {
        if (content.Wide.Length > 0) return new(frame, heights == LinearUnit.Metre ? content.Wide : Array.ConvertAll(content.Wide, Metres));
        return new(frame, heights == LinearUnit.Metre ? content.Narrow : Array.ConvertAll(content.Narrow, h => (float)Metres(h)));
    }

    private GroundExtent InJob(GroundExtent file)
    {
        (double East, double North)[] corners = [(file.West, file.South), (file.West, file.North), (file.East, file.South), (file.East, file.North)];
        return corners.Select(c => map.ToJob(c.East, c.North)).Aggregate(GroundExtent.Nothing, (box, p) => box.With(p.East, p.North));
    }

    private static GroundExtent? ExtentOf(TriangleSurface surface)
    {
        var box = GroundExtent.Nothing;
        foreach (var corner in surface.Corners) box = box.With(surface.Points[corner].East, surface.Points[corner].North);
        return box.IsEmpty ? null : box;
    }

    private void Tell(IReadOnlyList<GroundFinding> findings, Func<double, string> point)
    {
        foreach (var found in findings)
            if (PlacementFindings.Of(found, point) is { } finding) problems.Add(finding);
    }
}
