using Tautline.Cli.Terminal;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;
using Tautline.Formats.GeoJson;
using Tautline.Formats.Import;

namespace Tautline.Cli.Input;

/// <summary>Makes a job of an outline: its lines, and one spec for all of them.</summary>
internal static class OutlineJob
{
    private static readonly SpecId fence = new("fence");

    public static LoadedJob Read(string path, byte[] bytes, OutlineChoices choices, UnitSystem units)
    {
        var result = GeoJsonReader.Read(bytes, new ImportOptions { SourceName = path, CoordinateSystem = choices.System });
        List<Finding> findings = [.. result.Problems.Select(Describe)];
        if (result.Lines.IsEmpty) return LoadedJob.Of(path, default, null, findings);
        var height = choices.Height ?? Length.FromFeet(6);
        findings.Add(Assumed(path, height, choices.Height is null, units));
        return LoadedJob.Of(path, default, JobOf(path, result, height, units), findings);
    }

    private static Job JobOf(string path, ImportResult result, Length height, UnitSystem units) => new()
    {
        Id = new("outline"),
        Name = Path.GetFileNameWithoutExtension(path),
        Units = units,
        Coordinates = FrameOf(result),
        Specs = [new Spec { Id = fence, Height = height }],
        Lines = [.. result.Lines.Zip(OrderKey.Spread(result.Lines.Length), (line, order) => (line, order)).Select((l, i) => LineOf(l.line, l.order, i + 1))],
    };

    private static CoordinateFrame? FrameOf(ImportResult result) => result is { System: { } system, Origin: { } origin }
        ? new CoordinateFrame
        {
            System = system.EpsgCode is { } code ? $"EPSG:{code}" : system.Name,
            OriginEast = origin.EastMetres,
            OriginNorth = origin.NorthMetres,
            GroundScale = 1 / origin.GridPerLocal,
        }
        : null;

    private static Line LineOf(ImportedLine line, OrderKey order, int number)
    {
        var id = $"line-{number}";
        var orders = OrderKey.Spread(line.Points.Length);
        return new Line
        {
            Id = new(id),
            Order = order,
            Name = line.Name,
            Closed = line.Closed,
            Spec = fence,
            Vertices = [.. line.Points.Select((_, i) => VertexOf(line, i, orders[i], id))],
        };
    }

    private static Vertex VertexOf(ImportedLine line, int at, OrderKey order, string id)
    {
        var point = line.Points[at];
        var leaves = at + 1 < line.Points.Length || line.Closed;
        return new Vertex
        {
            Id = new($"{id}-vertex-{at + 1}"),
            Order = order,
            East = new(point.East),
            North = new(point.North),
            Leg = leaves ? new Leg { Id = new($"{id}-leg-{at + 1}"), Grade = GradeOf(point, line.Points[(at + 1) % line.Points.Length]) } : null,
        };
    }

    /// <summary>Rise over run where both ends have an elevation, else level.</summary>
    private static Slope GradeOf(ImportedPoint from, ImportedPoint to)
    {
        var (east, north) = (to.East - from.East, to.North - from.North);
        var run = Math.Sqrt(east * east + north * north);
        return run > 0 && to.Elevation - from.Elevation is { } rise ? new Slope(rise / run) : default;
    }

    private static Finding Assumed(string path, Length height, bool guessed, UnitSystem units) => new(
        Severity.Note, "OutlineSpec", path,
        $"An outline names no fence: planned is {LengthText.Show(height, units)} fabric, 2-in mesh, 9 gauge, top rail, bottom wire, no gates.",
        guessed ? "Give --spec HEIGHT for another height; make a job file for anything else." : "Make a job file for anything but the height.");

    private static Finding Describe(ImportProblem problem) => new(
        problem.Severity switch
        {
            ProblemSeverity.Error => Severity.Error,
            ProblemSeverity.Warning => Severity.Warning,
            _ => Severity.Note,
        },
        problem.Code, problem.Where.ToString(), problem.Message, problem.Hint);
}
