using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;
using Tautline.Formats.Coordinates;

namespace Tautline.Formats.Import;

/// <summary>Makes a job of imported lines: every line a fence line of one spec, its corners vertices.</summary>
public static class OutlineJob
{
    /// <param name="import">A reading without errors, with at least one line.</param>
    /// <param name="id">Id of the new job; ids of lines, vertices and legs are made from their order in the file.</param>
    /// <param name="name">Name of the new job.</param>
    /// <param name="units">How lengths are shown to people.</param>
    /// <param name="spec">What the fence is made of.</param>
    /// <param name="gradeFromElevations">
    /// True to take each leg's grade from the elevations of its two corners, where both have one. What lies between is not known.
    /// </param>
    public static Job Make(ImportResult import, JobId id, string name, UnitSystem units, Spec spec, bool gradeFromElevations)
    {
        var keys = OrderKey.Spread(import.Lines.Length);
        return new Job
        {
            Id = id,
            Name = name,
            Units = units,
            Specs = [spec],
            Coordinates = Frame(import),
            Lines = [.. import.Lines.Select((l, i) => LineOf(l, i, keys[i], spec.Id, gradeFromElevations))],
        };
    }

    private static CoordinateFrame? Frame(ImportResult import) => import is { Origin: { } origin, System: { } system }
        ? new CoordinateFrame
        {
            System = Name(system),
            OriginEast = origin.EastMetres,
            OriginNorth = origin.NorthMetres,
            GroundScale = 1 / origin.GridPerLocal,
        }
        : null;

    private static string Name(CoordinateSystemInfo system)
        => system.EpsgCode is { } code ? string.Create(CultureInfo.InvariantCulture, $"EPSG:{code}") : system.Name;

    private static Line LineOf(ImportedLine line, int index, OrderKey order, SpecId spec, bool grades)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"line{index + 1}");
        var keys = OrderKey.Spread(line.Points.Length);
        return new Line
        {
            Id = new(id),
            Order = order,
            Name = line.Name,
            Closed = line.Closed,
            Spec = spec,
            Vertices = [.. line.Points.Select((p, i) => VertexOf(line, id, i, keys[i], grades))],
        };
    }

    private static Vertex VertexOf(ImportedLine line, string id, int index, OrderKey order, bool grades)
    {
        var point = line.Points[index];
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        var leaves = line.Closed || index < line.Points.Length - 1;
        var grade = leaves && grades ? Grade(point, line.Points[(index + 1) % line.Points.Length]) : 0;
        return new Vertex
        {
            Id = new($"{id}/v{number}"),
            Order = order,
            East = new Length(point.East),
            North = new Length(point.North),
            Leg = leaves ? new Leg { Id = new($"{id}/leg{number}"), Grade = new Slope(grade) } : null,
        };
    }

    private static double Grade(ImportedPoint from, ImportedPoint to)
    {
        var (east, north) = (to.East - from.East, to.North - from.North);
        return from.Elevation is { } a && to.Elevation is { } b ? (b - a) / Math.Sqrt(east * east + north * north) : 0;
    }
}
