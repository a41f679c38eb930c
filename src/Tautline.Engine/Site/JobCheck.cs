using Tautline.Engine.Catalog;
using Tautline.Engine.Jobs;
using Tautline.Engine.Problems;
using Tautline.Engine.Quantities;

namespace Tautline.Engine.Site;

/// <summary>Checks a job document where no geometry is needed: ids, order keys, numbers, references, rules.</summary>
public static class JobCheck
{
    private const double LargestMetres = 1_000_000;

    public static void Check(Job job, Rules rules, ProblemList problems)
    {
        RuleSet(job, rules, problems);
        for (var i = 0; i < job.AsSpecified.Count; i++) Check(job.AsSpecified[i], $"asSpecified[{i}]", problems);
        Ids(job, problems);
        for (var i = 0; i < job.Temporary.Count; i++) Check(job.Temporary[i], $"temporary[{i}]", rules, problems);
        for (var i = 0; i < job.Specs.Count; i++) Finite(job.Specs[i].Height, $"specs[{i}].height", problems);
        for (var i = 0; i < job.Lines.Count; i++) Check(job, job.Lines[i], $"lines[{i}]", problems);
        Siblings(job.Lines.Select(l => l.Order), job.Lines.Count, "lines", problems);
        var legs = job.Lines.SelectMany(l => l.Vertices).Select(v => v.Leg?.Id).OfType<LegId>().ToHashSet();
        for (var i = 0; i < job.Gates.Count; i++) Known(job.Gates[i].Leg, legs, $"gates[{i}].leg", problems);
        for (var i = 0; i < job.Obstacles.Count; i++) Known(job.Obstacles[i].Leg, legs, $"obstacles[{i}].leg", problems);
        for (var i = 0; i < job.Pins.Count; i++) Known(job.Pins[i].Leg, legs, $"pins[{i}].leg", problems);
        for (var i = 0; i < job.Hangs.Count; i++) Known(job.Hangs[i].Leg, legs, $"hangs[{i}].leg", problems);
        for (var i = 0; i < job.Stock.Count; i++) SpecExists(job, job.Stock[i].Spec, $"stock[{i}].spec", problems);
        for (var i = 0; i < job.Works.Count; i++) Known(job.Works[i].Leg, legs, $"works[{i}].leg", problems);
        if (job.Lines.Count == 0 && job.Temporary.Count == 0) problems.Add(ProblemCode.JobEmpty, new("lines"));
    }

    private static void RuleSet(Job job, Rules rules, ProblemList problems)
    {
        if (job.RuleSet == rules.Name) return;
        if (RuleSets.Names.Contains(job.RuleSet)) problems.Add(ProblemCode.RuleSetOther, new("ruleSet"), job.RuleSet, rules.Name);
        else problems.Add(ProblemCode.RuleSetUnknown, new("ruleSet"), job.RuleSet, string.Join(", ", RuleSets.Names.Append(rules.Name).Distinct()));
    }

    private static void Check(RuleOverride own, string path, ProblemList problems)
    {
        if (RuleKeys.Find(own.Rule) is null) problems.Add(ProblemCode.RuleUnknown, new($"{path}.rule"), own.Rule);
        else if (!Rules.IsUsable(own)) problems.Add(ProblemCode.RuleValue, new($"{path}.value"), own.Rule, own.Value);
    }

    private static void Check(Job job, Line line, string path, ProblemList problems)
    {
        SpecExists(job, line.Spec, $"{path}.spec", problems);
        Siblings(line.Vertices.Select(v => v.Order), line.Vertices.Count, $"{path}.vertices", problems);
        if (line.Vertices.Count < (line.Closed ? 3 : 2)) problems.Add(ProblemCode.LineShort, new($"{path}.vertices", line.Id), line.Vertices.Count);
        for (var i = 0; i < line.Vertices.Count; i++)
        {
            Finite(line.Vertices[i].East, $"{path}.vertices[{i}].east", problems);
            Finite(line.Vertices[i].North, $"{path}.vertices[{i}].north", problems);
            if (line.Vertices[i].Leg is { } leg) Check(job, leg, line.Id, $"{path}.vertices[{i}].leg", problems);
        }
    }

    private static void Check(TemporaryFence fence, string path, Rules rules, ProblemList problems)
    {
        var panel = fence.Panel ?? rules.TemporaryPanel.Length;
        if (!(fence.Length.Metres is > 0 and <= 100_000 && panel.Metres >= 0.1)) problems.Add(ProblemCode.TemporaryLength, new(path), fence.Length, panel);
    }

    private static void Check(Job job, Leg leg, LineId line, string path, ProblemList problems)
    {
        if (!(Math.Abs(leg.Grade.Ratio) <= 1)) problems.Add(ProblemCode.GradeSteep, new($"{path}.grade", line), leg.Grade.Ratio * 100);
        if (leg.Spec is { } spec) SpecExists(job, spec, $"{path}.spec", problems);
    }

    private static void SpecExists(Job job, SpecId spec, string path, ProblemList problems)
    {
        if (job.Specs.All(s => s.Id != spec))
            problems.Add(ProblemCode.SpecUnknown, new(path), spec.Value ?? "", string.Join(", ", job.Specs.Select(s => s.Id.Value)));
    }

    private static void Known(LegId leg, HashSet<LegId> legs, string path, ProblemList problems)
    {
        if (!legs.Contains(leg)) problems.Add(ProblemCode.LegUnknown, new(path), leg.Value ?? "");
    }

    private static void Finite(Length length, string path, ProblemList problems)
    {
        if (!(Math.Abs(length.Metres) <= LargestMetres)) problems.Add(ProblemCode.NotFinite, new(path));
    }

    private static void Siblings(IEnumerable<OrderKey> keys, int count, string path, ProblemList problems)
    {
        if (count < 2) return; // an only child needs no key
        HashSet<string> seen = new(StringComparer.Ordinal);
        var i = 0;
        foreach (var key in keys)
        {
            var text = key.Value ?? "";
            if (!key.IsWellFormed || !seen.Add(text)) problems.Add(ProblemCode.OrderKeyBad, new($"{path}[{i}].order"), text);
            i++;
        }
    }

    private static void Ids(Job job, ProblemList problems)
    {
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var (id, path) in AllIds(job))
            if (string.IsNullOrEmpty(id)) problems.Add(ProblemCode.IdMissing, new(path));
            else if (!seen.Add(id)) problems.Add(ProblemCode.IdTwice, new(path), id);
    }

    private static IEnumerable<(string? Id, string Path)> AllIds(Job job)
    {
        yield return (job.Id.Value, "id");
        for (var i = 0; i < job.Specs.Count; i++) yield return (job.Specs[i].Id.Value, $"specs[{i}].id");
        for (var i = 0; i < job.Gates.Count; i++) yield return (job.Gates[i].Id.Value, $"gates[{i}].id");
        for (var i = 0; i < job.Obstacles.Count; i++) yield return (job.Obstacles[i].Id.Value, $"obstacles[{i}].id");
        for (var i = 0; i < job.Pins.Count; i++) yield return (job.Pins[i].Id.Value, $"pins[{i}].id");
        for (var i = 0; i < job.Works.Count; i++) yield return (job.Works[i].Id.Value, $"works[{i}].id");
        for (var i = 0; i < job.Stock.Count; i++) yield return (job.Stock[i].Id.Value, $"stock[{i}].id");
        for (var i = 0; i < job.Hangs.Count; i++) yield return (job.Hangs[i].Id.Value, $"hangs[{i}].id");
        for (var i = 0; i < job.Temporary.Count; i++) yield return (job.Temporary[i].Id.Value, $"temporary[{i}].id");
        for (var i = 0; i < job.Lines.Count; i++)
        {
            yield return (job.Lines[i].Id.Value, $"lines[{i}].id");
            for (var v = 0; v < job.Lines[i].Vertices.Count; v++)
            {
                var vertex = job.Lines[i].Vertices[v];
                yield return (vertex.Id.Value, $"lines[{i}].vertices[{v}].id");
                if (vertex.Leg is { } leg) yield return (leg.Id.Value, $"lines[{i}].vertices[{v}].leg.id");
            }
        }
    }
}
