using System.Text.Json;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>What a job holds that no statement of a tape book stands for.</summary>
internal static class TapeLimits
{
    public static IEnumerable<string> Of(Job job)
    {
        if (job.Coordinates is { } frame) yield return $"the coordinate frame '{frame.System}'";
        if (job.Ground is { } ground) yield return $"the ground kept from '{ground.Source.File}'";
        foreach (var stock in job.Stock) yield return $"the fabric in stock '{stock.Id.Value}'";
        foreach (var seen in job.Seen) yield return $"what was seen of roll {seen.Number} of '{seen.Stock}'";
        foreach (var note in job.Hangs) yield return $"the note on hanging '{note.Id.Value}'";
        if (job.HangOrder is { } order) yield return $"the hanging order '{order}'";
        foreach (var spec in job.Specs.Where(s => s.CutFrom is not null)) yield return $"the taller fabric that '{spec.Id.Value}' is trimmed from";
        foreach (var part in job.MustUnderstand) yield return $"that '{part}' must be understood";
        foreach (var lost in Unplaced(job)) yield return lost;
        foreach (var lost in job.Gates.Where(Knows).SelectMany(OfGate)) yield return lost;
        foreach (var lost in job.Obstacles.Where(Knows).SelectMany(OfObstacle)) yield return lost;
        foreach (var lost in job.Works.Where(Knows).SelectMany(OfWork)) yield return lost;
        foreach (var lost in job.Lines.SelectMany(OfLine)) yield return lost;
        foreach (var (extra, owner) in Extras(job))
            if (extra is not null)
                foreach (var field in extra.Keys) yield return $"the field '{field}' of {owner}";
    }

    /// <summary>
    /// Whether a book can say the ground of a line: shots alone, none below zero, each with a height or a reading, and in the order the legs are
    /// walked, for a book has them below their legs.
    /// </summary>
    public static bool Says(Line line)
    {
        if (line.Ground is not { } ground) return true;
        var legs = Walked(line).Select(v => v.Leg?.Id).ToList();
        var walked = ground.Shots.Select(s => legs.IndexOf(s.Leg)).ToList();
        return ground is { From: null, Shots.Count: > 0 } && walked.TrueForAll(w => w >= 0) && walked.SequenceEqual(walked.Order())
            && ground.Shots.All(s => s is not { Height: null, Rod: null } && s.At.Metres >= 0 && !(s.Height < Length.Zero) && !(s.Rod < Length.Zero) && !(s.Again < Length.Zero));
    }

    public static bool Knows(Gate gate) => GateStatement.Slides(gate.Kind) || gate.Kind is Gate.Walk or Gate.Double;

    public static bool Knows(Obstacle obstacle) => StretchStatements.Obstacles.ContainsKey(obstacle.Kind);

    public static bool Knows(SiteWork work) => work.Kind is SiteWork.Removal or SiteWork.Clearing;

    /// <summary>Parts stated of a kind of gate that has no use for them.</summary>
    private static IEnumerable<string> OfGate(Gate gate)
    {
        var of = $"of the {gate.Kind} gate '{gate.Id.Value}'";
        if (gate.RunsBack is not null && !GateStatement.Has(gate.Kind, "run-back")) yield return $"the run-back {of}";
        if (gate.LeafMass is not null && !GateStatement.Has(gate.Kind, "leaf")) yield return $"the weight {of}";
        if (gate.Clearance is not null && !GateStatement.Has(gate.Kind, "clearance")) yield return $"the clearance {of}";
    }

    private static IEnumerable<string> OfObstacle(Obstacle obstacle)
    {
        var of = $"of the {obstacle.Kind} '{obstacle.Id.Value}'";
        if (obstacle.Support is { } held && !StretchStatements.Has(obstacle.Kind, held == "bracketed" ? held : "cored")) yield return $"the support {of}";
        if (obstacle.Width is not null && !StretchStatements.Has(obstacle.Kind, "width")) yield return $"the width {of}";
        if (obstacle.Depth is not null && !StretchStatements.Has(obstacle.Kind, "depth")) yield return $"the depth {of}";
    }

    private static IEnumerable<string> OfWork(SiteWork work)
    {
        var of = $"of the {work.Kind} '{work.Id.Value}'";
        if (work.Kind == SiteWork.Removal && work.Width is not null) yield return $"the width {of}";
        if (work.Kind == SiteWork.Clearing && (work.Posts is not null || work.PostsOut is not null)) yield return $"the old posts {of}";
    }

    private static IEnumerable<string> OfLine(Line line)
    {
        if (line.Ground is not null && !Says(line)) yield return $"the measured ground of '{line.Id.Value}'";
        if (line.Fit?.Gap is { Metres: < 0 }) yield return $"the gap under '{line.Id.Value}', which is below zero";
        foreach (var tie in new[] { line.Start, line.Finish })
            if (tie?.Top is { Metres: < 0 }) yield return $"the height of what '{line.Id.Value}' ties to, which is below zero";
        foreach (var tie in new[] { line.Start, line.Finish })
            if (tie is { Kind: not TieIn.Fence } and not { Section: null, Fabric: null })
                yield return $"the post and fabric of the {tie.Kind} that '{line.Id.Value}' ties to";
    }

    /// <summary>Gates, obstacles, pins and work whose leg no line walks.</summary>
    private static IEnumerable<string> Unplaced(Job job)
    {
        var legs = job.Lines.SelectMany(Walked).Select(v => v.Leg?.Id).OfType<LegId>().ToHashSet();
        foreach (var gate in job.Gates.Where(g => !legs.Contains(g.Leg))) yield return $"the gate '{gate.Id.Value}', whose leg is not walked";
        foreach (var obstacle in job.Obstacles.Where(o => !legs.Contains(o.Leg)))
            yield return $"the obstacle '{obstacle.Id.Value}', whose leg is not walked";
        foreach (var pin in job.Pins.Where(p => p.Top is { Metres: < 0 })) yield return $"the settled top of the pin '{pin.Id.Value}'";
        foreach (var pin in job.Pins.Where(p => !legs.Contains(p.Leg))) yield return $"the pin '{pin.Id.Value}', whose leg is not walked";
        foreach (var work in job.Works.Where(w => !legs.Contains(w.Leg))) yield return $"the work '{work.Id.Value}', whose leg is not walked";
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
        foreach (var pin in job.Pins) yield return (pin.Extra, $"the pin '{pin.Id.Value}'");
        foreach (var work in job.Works) yield return (work.Extra, $"the work '{work.Id.Value}'");
        foreach (var fence in job.Temporary) yield return (fence.Extra, $"the temporary fence '{fence.Id.Value}'");
        foreach (var extra in job.Specs.SelectMany(ExtrasOf)) yield return extra;
        foreach (var extra in job.Lines.SelectMany(ExtrasOf)) yield return extra;
    }

    private static IEnumerable<(IDictionary<string, JsonElement>? Extra, string Owner)> ExtrasOf(Spec spec)
    {
        yield return (spec.Barb?.Extra, $"the barbed wire of '{spec.Id.Value}'");
        yield return (spec.Slats?.Extra, $"the slats of '{spec.Id.Value}'");
        yield return (spec.Screen?.Extra, $"the screen of '{spec.Id.Value}'");
        yield return (spec.Concertina?.Extra, $"the concertina of '{spec.Id.Value}'");
    }

    private static IEnumerable<(IDictionary<string, JsonElement>? Extra, string Owner)> ExtrasOf(Line line)
    {
        yield return (line.Extra, $"the line '{line.Id.Value}'");
        yield return (line.Start?.Extra, $"the tie at the start of '{line.Id.Value}'");
        yield return (line.Finish?.Extra, $"the tie at the finish of '{line.Id.Value}'");
        foreach (var vertex in line.Vertices) yield return (vertex.Extra, $"the vertex '{vertex.Id.Value}'");
        yield return (line.Ground?.Extra, $"the ground of '{line.Id.Value}'");
        yield return (line.Fit?.Extra, $"the fit of '{line.Id.Value}'");
        foreach (var shot in line.Ground?.Shots ?? []) yield return (shot.Extra, $"a shot of '{line.Id.Value}'");
        foreach (var leg in line.Vertices.Select(v => v.Leg).OfType<Leg>())
        {
            yield return (leg.Extra, $"the leg '{leg.Id.Value}'");
            yield return (leg.Curve?.Extra, $"the curve of the leg '{leg.Id.Value}'");
        }
    }
}
