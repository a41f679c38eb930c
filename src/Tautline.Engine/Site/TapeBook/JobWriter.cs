using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes the parts of a job in the order a book has them.</summary>
internal sealed class JobWriter(Job job, TapePage page)
{
    private readonly TapeNames specs = new();
    private readonly TapeNames lines = new();
    private readonly ILookup<LegId, Gate> gates = job.Gates.ToLookup(g => g.Leg);
    private readonly ILookup<LegId, Obstacle> obstacles = job.Obstacles.ToLookup(o => o.Leg);

    public string Write(UnitSystem units)
    {
        if (job.Name.Length > 0) page.Add($"job {page.Quoted(job.Name)}");
        page.Add(units == UnitSystem.Metric ? "units metric" : "units us");
        if (job.RuleSet != RuleSets.BaseName) page.Add($"rules {page.Quoted(job.RuleSet)}");
        foreach (var own in job.AsSpecified) Limit(own, units);
        foreach (var spec in job.Specs) Spec(spec);
        Calibrations();
        if (job.Lines.SelectMany(l => l.Vertices).Any(v => v.Leg is { Grade.Ratio: not 0 })) page.Add("measured level");
        foreach (var line in job.Lines.OrderBy(l => l.Order)) Line(line);
        foreach (var what in TapeLimits.Of(job)) page.CannotSay(what);
        return page.Text;
    }

    private void Limit(RuleOverride own, UnitSystem units)
    {
        if (RuleKeys.Find(own.Rule) is not { } rule) page.CannotSay($"the rule '{own.Rule}', which is not known");
        else page.Add($"as specified {rule.Key} {TapeRuleValue.Write(rule, own.Value, units)}{Note(own.Source)}");
    }

    private void Spec(Spec spec)
    {
        List<string> parts = ["spec", page.Quoted(specs.Give(spec.Id.Value, spec.Name)), "height", page.Length(spec.Height)];
        if (spec.Mesh is { } mesh) parts.AddRange(["mesh", page.Inches(mesh)]);
        Word(parts, "gauge", spec.Gauge);
        Word(parts, "selvage", spec.Selvage);
        Word(parts, "line-post", spec.LinePost);
        Word(parts, "terminal-post", spec.TerminalPost);
        Word(parts, "rail", spec.RailSection);
        Word(parts, "top", spec.Top);
        Word(parts, "bottom", spec.Bottom == "rail" ? "none" : spec.Bottom); // a bottom rail is told as what the book cannot say
        Word(parts, "brace", spec.Brace);
        if (spec.Roll is { } roll) parts.AddRange(["roll", page.Length(roll)]);
        page.Add(string.Join(' ', parts));
    }

    private void Word(List<string> parts, string clause, string? value)
    {
        if (value is not null) parts.AddRange([clause, page.Word(value)]);
    }

    /// <summary>The plan takes the first calibration of a spec; a book has no second.</summary>
    private void Calibrations()
    {
        foreach (var of in job.Calibrations.GroupBy(c => c.Spec))
            if (specs.Find(of.Key.Value) is not { } name) page.CannotSay($"the ten pickets of '{of.Key.Value}', which is no spec of the job");
            else
            {
                page.Add($"ten pickets {page.Inches(of.First().TenPickets)} of {page.Quoted(name)}");
                if (of.Skip(1).Any()) page.CannotSay($"a second calibration of '{name}'");
            }
    }

    private void Line(Line line)
    {
        page.Add("");
        page.Add($"line {page.Quoted(lines.Give(line.Id.Value, line.Name))}");
        var vertices = line.Vertices.OrderBy(v => v.Order).ToList();
        if (vertices.Count == 0) return;
        var start = PointOf(vertices[0]);
        if (start != default) page.Add($"start {LegWriter.PointText(page, start).Text}");
        var legs = new LegWriter(page, LegWriter.PointText(page, start).Read);
        SpecId? current = job.Specs.Count == 1 ? job.Specs[0].Id : null;
        for (var i = 0; i < vertices.Count - (line.Closed ? 0 : 1); i++)
        {
            current = Choose(current, vertices[i].Leg?.Spec ?? line.Spec);
            legs.Write(PointOf(vertices[(i + 1) % vertices.Count]), vertices[i].Leg?.Grade.Ratio ?? 0);
            if (vertices[i].Leg is { } leg) Marks(leg.Id);
        }
        if (line.Closed) page.Add("close");
    }

    private SpecId Choose(SpecId? current, SpecId wanted)
    {
        if (current != wanted) page.Add($"spec {page.Quoted(specs.Find(wanted.Value) ?? wanted.Value)}");
        return wanted;
    }

    private void Marks(LegId leg)
    {
        foreach (var gate in gates[leg].OrderBy(g => g.NearFace.Metres)) Mark(gate);
        foreach (var obstacle in obstacles[leg].OrderBy(o => o.From.Metres)) Mark(obstacle);
    }

    private void Mark(Gate gate)
    {
        if (gate.Kind is Gate.Walk or Gate.Double)
            page.Add($"gate {gate.Kind} {page.Length(gate.Opening)} from {page.Length(gate.NearFace)}");
        else page.CannotSay($"the gate '{gate.Id.Value}' of kind '{gate.Kind}'");
    }

    private void Mark(Obstacle obstacle)
    {
        var clear = obstacle.Clearance.Nanometres == 0 ? "" : $" clear {page.Length(obstacle.Clearance)}";
        if (obstacle.Kind == Obstacle.NoDig)
            page.Add($"no-dig {page.Length(obstacle.From)} to {page.Length(obstacle.To)}{clear}{Note(obstacle.Note)}");
        else page.CannotSay($"the obstacle '{obstacle.Id.Value}' of kind '{obstacle.Kind}'");
    }

    private string Note(string text) => string.IsNullOrWhiteSpace(text) ? "" : $" {page.Quoted(text)}";

    private static TapePoint PointOf(Vertex vertex) => new(vertex.East.Metres, vertex.North.Metres);
}
