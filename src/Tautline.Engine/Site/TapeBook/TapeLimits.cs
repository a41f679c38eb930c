using System.Text.Json;
using Tautline.Engine.Jobs;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What a job holds that no statement of a tape book stands for.</summary>
internal static class TapeLimits
{
    public static IEnumerable<string> Of(Job job)
    {
        if (job.Coordinates is { } frame) yield return $"the coordinate frame '{frame.System}'";
        foreach (var part in job.MustUnderstand) yield return $"that '{part}' must be understood";
        foreach (var lost in Unplaced(job)) yield return lost;
        foreach (var lost in job.Specs.SelectMany(OfSpec)) yield return lost;
        foreach (var lost in job.Lines.SelectMany(OfLine)) yield return lost;
        foreach (var pin in job.Pins) yield return $"the pin '{pin.Id.Value}'";
        foreach (var work in job.Works) yield return $"the work '{work.Id.Value}'";
        foreach (var fence in job.Temporary) yield return $"the temporary fence '{fence.Id.Value}'";
        foreach (var gate in job.Gates.Where(g => g.Post is not null || g.LeafMass is not null || g.Clearance is not null))
            yield return $"the post, weight and clearance of the gate '{gate.Id.Value}'";
        foreach (var obstacle in job.Obstacles.Where(o => o.Width is not null || o.Depth is not null))
            yield return $"the width and depth of the obstacle '{obstacle.Id.Value}'";
        foreach (var (extra, owner) in Extras(job))
            if (extra is not null)
                foreach (var field in extra.Keys) yield return $"the field '{field}' of {owner}";
    }

    private static IEnumerable<string> OfSpec(Spec spec)
    {
        if (spec.Middle is not null) yield return $"the middle rail of '{spec.Id.Value}'";
        if (spec.Bottom == "rail") yield return $"the bottom rail of '{spec.Id.Value}'";
        if (spec.Laced is not null) yield return $"the laced widths of '{spec.Id.Value}'";
        if (spec.Coating is not null || spec.Colour is not null) yield return $"the coating of '{spec.Id.Value}'";
        if (spec.Slats is not null) yield return $"the slats of '{spec.Id.Value}'";
        if (spec.Screen is not null) yield return $"the screen of '{spec.Id.Value}'";
        if (spec.Concertina is not null) yield return $"the concertina of '{spec.Id.Value}'";
        if (spec.Barb is not null) yield return $"the barbed wire of '{spec.Id.Value}'";
        if (spec.LineSupport is not null || spec.TerminalSupport is not null) yield return $"how the posts of '{spec.Id.Value}' are held";
    }

    private static IEnumerable<string> OfLine(Line line)
    {
        if (line.Start is not null || line.Finish is not null) yield return $"what the line '{line.Id.Value}' ties to";
        if (line.FabricSide is not null) yield return $"the side of the fabric of '{line.Id.Value}'";
        if (line.Keeps.Count > 0) yield return $"what the repair of '{line.Id.Value}' keeps";
        foreach (var leg in line.Vertices.Select(v => v.Leg).OfType<Leg>().Where(l => l.Curve is not null))
            yield return $"the curve of the leg '{leg.Id.Value}'";
    }

    /// <summary>Gates and obstacles whose leg no line walks.</summary>
    private static IEnumerable<string> Unplaced(Job job)
    {
        var legs = job.Lines.SelectMany(Walked).Select(v => v.Leg?.Id).OfType<LegId>().ToHashSet();
        foreach (var gate in job.Gates.Where(g => !legs.Contains(g.Leg))) yield return $"the gate '{gate.Id.Value}', whose leg is not walked";
        foreach (var obstacle in job.Obstacles.Where(o => !legs.Contains(o.Leg)))
            yield return $"the obstacle '{obstacle.Id.Value}', whose leg is not walked";
    }

    /// <summary>The vertices a leg leaves: of an open line all but the last.</summary>
    private static IEnumerable<Vertex> Walked(Line line)
        => line.Vertices.OrderBy(v => v.Order).Take(line.Closed ? line.Vertices.Count : line.Vertices.Count - 1);

    private static IEnumerable<(IDictionary<string, JsonElement>? Extra, string Owner)> Extras(Job job)
    {
        yield return (job.Extra, "the job");
        foreach (var own in job.AsSpecified) yield return (own.Extra, $"the limit '{own.Rule}'");
        foreach (var spec in job.Specs) yield return (spec.Extra, $"the spec '{spec.Id.Value}'");
        foreach (var calibration in job.Calibrations) yield return (calibration.Extra, $"the calibration of '{calibration.Spec.Value}'");
        foreach (var gate in job.Gates) yield return (gate.Extra, $"the gate '{gate.Id.Value}'");
        foreach (var obstacle in job.Obstacles) yield return (obstacle.Extra, $"the obstacle '{obstacle.Id.Value}'");
        foreach (var spec in job.Specs)
        {
            yield return (spec.Slats?.Extra, $"the slats of '{spec.Id.Value}'");
            yield return (spec.Screen?.Extra, $"the screen of '{spec.Id.Value}'");
            yield return (spec.Concertina?.Extra, $"the concertina of '{spec.Id.Value}'");
        }
        foreach (var line in job.Lines)
        {
            yield return (line.Extra, $"the line '{line.Id.Value}'");
            foreach (var vertex in line.Vertices) yield return (vertex.Extra, $"the vertex '{vertex.Id.Value}'");
        foreach (var leg in line.Vertices.Select(v => v.Leg).OfType<Leg>()) yield return (leg.Extra, $"the leg '{leg.Id.Value}'");
        }
    }
}
