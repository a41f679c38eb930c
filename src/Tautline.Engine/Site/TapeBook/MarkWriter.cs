using System.Globalization;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes what is marked along a leg: gates, stretches, pins, work.</summary>
internal sealed class MarkWriter(Job job, TapePage page, UnitSystem units)
{
    private readonly ILookup<LegId, Gate> gates = job.Gates.ToLookup(g => g.Leg);
    private readonly ILookup<LegId, Obstacle> obstacles = job.Obstacles.ToLookup(o => o.Leg);
    private readonly ILookup<LegId, Pin> pins = job.Pins.ToLookup(p => p.Leg);
    private readonly ILookup<LegId, SiteWork> works = job.Works.ToLookup(w => w.Leg);

    public void Write(LegId leg, IReadOnlyList<GroundShot> shots)
    {
        foreach (var shot in shots.Where(s => s.Leg == leg))
            page.Add($"shot {page.Length(shot.At)}{Measure("height", shot.Height)}{Measure("rod", shot.Rod)}{Measure("again", shot.Again)}");
        foreach (var gate in gates[leg].OrderBy(g => g.NearFace.Metres)) Write(gate);
        foreach (var obstacle in obstacles[leg].OrderBy(o => o.From.Metres)) Write(obstacle);
        foreach (var pin in pins[leg].OrderBy(p => p.At.Metres)) page.Add($"pin {page.Length(pin.At)}{(pin.Stands ? " stands" : "")}{(pin.Top is { Metres: >= 0 } ? Measure("top", pin.Top) : "")}");
        foreach (var work in works[leg].OrderBy(w => w.From.Metres)) Write(work);
    }

    private void Write(Gate gate)
    {
        if (!TapeLimits.Knows(gate)) page.CannotSay($"the gate '{gate.Id.Value}' of kind '{gate.Kind}'");
        else page.Add($"gate {gate.Kind} {page.Length(gate.Opening)} from {page.Length(gate.NearFace)}{Fittings(gate)}");
    }

    private string Fittings(Gate gate)
        => (GateStatement.Has(gate.Kind, "run-back") ? Word("run-back", gate.RunsBack) : "")
           + Word("post", gate.Post)
           + (gate.LeafMass is { } mass && GateStatement.Has(gate.Kind, "leaf") ? $" leaf {TapeWeight.Write(mass, units)}" : "")
           + (GateStatement.Has(gate.Kind, "clearance") ? Measure("clearance", gate.Clearance) : "");

    private void Write(Obstacle obstacle)
    {
        if (!TapeLimits.Knows(obstacle)) page.CannotSay($"the obstacle '{obstacle.Id.Value}' of kind '{obstacle.Kind}'");
        else page.Add($"{obstacle.Kind} {Range(obstacle.From, obstacle.To)}{Clauses(obstacle)}{page.Note(obstacle.Note)}");
    }

    private string Clauses(Obstacle obstacle)
        => (obstacle.Support is { } held && StretchStatements.Has(obstacle.Kind, held == "bracketed" ? held : "cored") ? $" {page.Word(held)}" : "")
           + (StretchStatements.Has(obstacle.Kind, "width") ? Measure("width", obstacle.Width) : "")
           + (StretchStatements.Has(obstacle.Kind, "depth") ? Measure("depth", obstacle.Depth) : "")
           + (obstacle.Clearance.Nanometres == 0 ? "" : Measure("clear", obstacle.Clearance));

    private void Write(SiteWork work)
    {
        if (!TapeLimits.Knows(work)) page.CannotSay($"the work '{work.Id.Value}' of kind '{work.Kind}'");
        else page.Add($"{work.Kind} {Range(work.From, work.To)}{Clauses(work)}{page.Note(work.Note)}");
    }

    private string Clauses(SiteWork work)
        => work.Kind == SiteWork.Clearing ? Measure("width", work.Width)
            : (work.Posts is { } posts ? string.Create(CultureInfo.InvariantCulture, $" posts {posts}") : "")
              + (work.PostsOut is { } way ? $" {page.Word(way)}" : "");

    private string Range(Length from, Length to) => $"{page.Length(from)} to {page.Length(to)}";

    private string Measure(string clause, Length? length) => length is { } value ? $" {clause} {page.Length(value)}" : "";

    private string Word(string clause, string? word) => word is null ? "" : $" {clause} {page.Word(word)}";
}
