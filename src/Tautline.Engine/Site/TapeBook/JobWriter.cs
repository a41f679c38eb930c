using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site.TapeBook;

/// <summary>Writes the parts of a job in the order a book has them.</summary>
internal sealed class JobWriter(Job job, TapePage page, UnitSystem units)
{
    private readonly TapeNames specs = new();
    private readonly TapeNames lines = new();
    private readonly MarkWriter marks = new(job, page, units);

    public string Write()
    {
        if (job.Name.Length > 0) page.Add($"job {page.Quoted(job.Name)}");
        page.Add(units == UnitSystem.Metric ? "units metric" : "units us");
        if (job.RuleSet != RuleSets.BaseName) page.Add($"rules {page.Quoted(job.RuleSet)}");
        foreach (var own in job.AsSpecified) Limit(own);
        var writer = new SpecWriter(page);
        foreach (var spec in job.Specs) writer.Write(spec, specs.Give(spec.Id.Value, spec.Name));
        Calibrations();
        foreach (var fence in job.Temporary) Temporary(fence);
        if (job.Lines.SelectMany(l => l.Vertices).Any(v => v.Leg is { Grade.Ratio: not 0 })) page.Add("measured level");
        foreach (var line in job.Lines.OrderBy(l => l.Order)) Line(line);
        foreach (var what in TapeLimits.Of(job)) page.CannotSay(what);
        return page.Text;
    }

    private void Limit(RuleOverride own)
    {
        if (RuleKeys.Find(own.Rule) is not { } rule) page.CannotSay($"the rule '{own.Rule}', which is not known");
        else page.Add($"as specified {rule.Key} {TapeRuleValue.Write(rule, own.Value, units)}{page.Note(own.Source)}");
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
        Whole(line);
        if (vertices.Count == 0) return;
        var start = PointOf(vertices[0]);
        if (start != default) page.Add($"start {LegWriter.PointText(page, start).Text}");
        var legs = new LegWriter(page, LegWriter.PointText(page, start).Read);
        SpecId? current = job.Specs.Count == 1 ? job.Specs[0].Id : null;
        for (var i = 0; i < vertices.Count - (line.Closed ? 0 : 1); i++)
        {
            current = Choose(current, vertices[i].Leg?.Spec ?? line.Spec);
            Leg(legs, PointOf(vertices[(i + 1) % vertices.Count]), vertices[i].Leg);
            if (vertices[i].Leg is { } leg) marks.Write(leg.Id, Shots(line));
        }
        if (line.Closed) page.Add("close");
    }

    /// <summary>The shots of a line where a book can say them all.</summary>
    private static IReadOnlyList<GroundShot> Shots(Line line) => TapeLimits.Says(line) ? line.Ground?.Shots ?? [] : [];

    private void Fit(LineFit? fit)
    {
        if (fit is null) return;
        var gap = fit.Gap is { Metres: >= 0 } stated ? $" gap {page.Length(stated)}" : "";
        var remedies = fit.Remedies is not { } named ? "" : named.Count == 0 ? " remedies none" : $" remedies {string.Join(' ', named.Select(page.Word))}";
        page.Add($"fit {page.Word(fit.Mode ?? "smooth")}{gap}{remedies}{(fit.BreakPosts is { } may ? $" break-posts {page.Word(may)}" : "")}");
    }

    /// <summary>What holds for the line from end to end.</summary>
    private void Whole(Line line)
    {
        Tie("start", line.Start);
        Tie("finish", line.Finish);
        Fit(line.Fit);
        if (line.FabricSide is { } side) page.Add($"fabric {page.Word(side)}");
        if (line.Keeps.Count > 0) page.Add($"keeps {string.Join(' ', line.Keeps.Select(page.Word))}");
    }

    private void Tie(string end, TieIn? tie)
    {
        if (tie is null) return;
        var post = tie is { Kind: TieIn.Fence, Section: { } section } ? $" section {page.Word(section)}" : "";
        var fabric = tie is { Kind: TieIn.Fence, Fabric: { } on } ? $" {page.Word(on)}" : "";
        page.Add($"tie {end} to {page.Word(tie.Kind)}{post}{fabric}{(tie.Top is { Metres: >= 0 } top ? $" top {page.Length(top)}" : "")}");
    }

    private void Temporary(TemporaryFence fence)
    {
        var panel = fence.Panel is { } length ? $" panel {page.Length(length)}" : "";
        page.Add($"temporary {page.Length(fence.Length)}{panel}{(fence.Closed ? " closed" : "")}{page.Note(fence.Name)}");
    }

    private static void Leg(LegWriter legs, TapePoint to, Leg? leg)
    {
        if (TapeArc.Of(leg?.Curve) is { } arc) legs.Write(to, leg!.Grade.Ratio, arc);
        else legs.Write(to, leg?.Grade.Ratio ?? 0);
    }

    private SpecId Choose(SpecId? current, SpecId wanted)
    {
        if (current != wanted) page.Add($"spec {page.Quoted(specs.Find(wanted.Value) ?? wanted.Value)}");
        return wanted;
    }

    private static TapePoint PointOf(Vertex vertex) => new(vertex.East.Metres, vertex.North.Metres);
}
